#include "tests/support/live_climb.h"
#include "ui/common/forecast_words.h"
#include "ui/session/firing_cone.h"

#include <cmath>

namespace ringhold::test {
namespace {

Instant clock(int hours, int minutes) {
    return LiveClimb::at(60 * (hours - 12) + minutes);
}

struct DownCase {
    std::optional<Instant> p05, median, p95;
    bool isDown;
    const char* when;
    const char* between;
    const char* sentence;
};

class ConeDownTold : public testing::TestWithParam<DownCase> {};

TEST_P(ConeDownTold, AlwaysWithItsInterval) {
    const auto& c = GetParam();
    LiveClimb firing(20);
    ConeForecast cone;
    cone.cone = "9";
    cone.down = {c.p05, c.median, c.p95};
    cone.isDown = c.isDown;
    const auto words = coneDownWords(cone, firing.session(), firing.preferences());
    EXPECT_EQ(words.when.toStdString(), c.when);
    EXPECT_EQ(words.between.toStdString(), c.between);
    EXPECT_EQ(coneDownSentence(cone, firing.session(), firing.preferences()).toStdString(), c.sentence);
}

INSTANTIATE_TEST_SUITE_P(
    Ends, ConeDownTold,
    testing::Values(DownCase{clock(18, 11), clock(18, 17), clock(18, 25), false, "18:17", "18:11 to 18:25",
                             "Cone 9 down 18:17 (18:11 to 18:25)."},
                    DownCase{clock(18, 11),
                             clock(18, 17),
                             {},
                             false,
                             "18:17",
                             "18:11 or later",
                             "Cone 9 down 18:17 (18:11 or later)."},
                    DownCase{clock(18, 11),
                             {},
                             {},
                             false,
                             "hardly at this rate",
                             "not before 18:11",
                             "Cone 9: hardly at this rate (not before 18:11)."},
                    DownCase{{}, {}, {}, false, "not at this rate", "", "Cone 9: not at this rate."},
                    DownCase{clock(18, 11), clock(18, 17), clock(18, 25), true, "should be down",
                             "18:11 to 18:25", "Cone 9 should be down (18:11 to 18:25): look."}));

TEST(ForecastWords, AConeSeenDownIsDown) {
    LiveClimb firing;
    firing.look(149, "8", 6);
    const auto& cone = firing.session().forecast()->packs[0].cones[0];
    EXPECT_EQ(coneDownSentence(cone, firing.session(), firing.preferences()).toStdString(),
              "Cone 8 is down.");
}

TEST(ForecastWords, SayWhereAKilnWithoutPowerLevelsOff) {
    LiveClimb firing(20);
    const auto celsius = [](double d) { return Temperature::fromCelsius(d); };
    const Interval<Temperature> ceiling{celsius(1255), celsius(1262), celsius(1270)};
    EXPECT_EQ(plainWords(levelsOffWords(ceiling, firing.preferences())),
              "levels off near 1 262 °C (1255 to 1270)");
    ASSERT_TRUE(firing.preferences().setUnit(TemperatureUnit::fahrenheit).ok());
    EXPECT_EQ(plainWords(levelsOffWords(ceiling, firing.preferences())),
              "levels off near 2 304 °F (2291 to 2318)");
}

/// From 60 °C/h the climb dies away towards 1140 °C: too cold for cone 10 in a day, and for the set point of
/// 1290.
TEST(ForecastWords, SayThatAConeIsNotDownBecauseTheKilnLevelsOff) {
    std::vector<std::pair<int, double>> corners{{0, 1000}, {60, 1060}};
    for (int m = 65; m <= 180; m += 5)
        corners.emplace_back(m, 1060 + 80 * -std::expm1(-(m - 60) / 80.0));
    LiveClimb firing(corners);
    ASSERT_TRUE(firing.session().forecast());
    ASSERT_TRUE(firing.session().forecast()->levelsOff);
    const auto& ten = firing.session().forecast()->packs[0].cones[2];
    const auto words = plainWords(coneDownSentence(ten, firing.session(), firing.preferences()));
    EXPECT_NE(words.find("at this rate: it levels off near 1 1"), std::string::npos) << words;
}

struct OffsetCase {
    double p05, median, p95;
    const char* words;
};

class OffsetTold : public testing::TestWithParam<OffsetCase> {};

TEST_P(OffsetTold, SaysTheSideAndTheInterval) {
    const auto& c = GetParam();
    const auto degrees = [](double d) { return TemperatureDifference::fromCelsius(d); };
    LiveClimb firing(5);
    EXPECT_EQ(
        plainWords(offsetWords({degrees(c.p05), degrees(c.median), degrees(c.p95)}, firing.preferences())),
        c.words);
}

INSTANTIATE_TEST_SUITE_P(Sides, OffsetTold,
                         testing::Values(OffsetCase{4, 7, 10, "7 °C high (4 to 10)"},
                                         OffsetCase{-10, -7, -4, "7 °C low (4 to 10)"},
                                         OffsetCase{-1, 4, 9, "4 °C high (1 low to 9 high)"},
                                         OffsetCase{-3, 0.2, 3, "right (3 low to 3 high)"}));

/// Cone 10 cannot be at 5 o'clock while 8 only leans: it was another cone.
TEST(ForecastWords, ALookThatDoesNotFitIsPointedOutWithWhatItWouldMean) {
    LiveClimb firing;
    firing.look(130, "8", 1);
    const auto wrong = firing.look(132, "10", 5);
    firing.look(138, "8", 2);
    firing.look(148, "8", 4);
    ASSERT_EQ(firing.session().lookDoubts().size(), 1U);
    const auto& doubt = firing.session().lookDoubts()[0];
    EXPECT_EQ(doubt.look.id, wrong);
    const auto words =
        plainWords(doubtInFull(doubt, firingConeForecast(firing.session()), firing.preferences()));
    EXPECT_EQ(
        words.rfind(
            "Look 14:12, 10 at 5 o’clock, does not fit the rest. For it the probe would have to read ", 0),
        0U)
        << words;
    EXPECT_NE(words.find(" low; by the rest it reads "), std::string::npos) << words;
    EXPECT_NE(words.find("With it cone 9 is down 14:"), std::string::npos) << words;
    EXPECT_NE(words.find(", without it 14:"), std::string::npos) << words;
    ASSERT_TRUE(firing.session().firing().strike(wrong, LiveClimb::at(150)).ok());
    EXPECT_TRUE(firing.session().lookDoubts().empty()) << "once struck it is no longer told";
}

TEST(FiringCone, IsTheOneThatThePlanWaitsFor) {
    LiveClimb firing;
    ASSERT_TRUE(firingConeForecast(firing.session()));
    EXPECT_EQ(firingConeForecast(firing.session())->cone, "9");
    firing.look(149, "9", 6);
    EXPECT_EQ(firingConeForecast(firing.session()), nullptr) << "the wait is over";
}

} // namespace
} // namespace ringhold::test
