#include "tests/support/live_climb.h"
#include "ui/spread/advice_words.h"

namespace ringhold::test {
namespace {

std::optional<Instant> inMinutesFrom(int minutes) {
    return LiveClimb::at(minutes);
}

struct HoldingCase {
    std::optional<Instant> p05, median, p95;
    const char* words;
};

class HoldingTold : public testing::TestWithParam<HoldingCase> {};

TEST_P(HoldingTold, InMinutesWithItsInterval) {
    const auto& c = GetParam();
    NotebookOnDisk disk;
    ASSERT_TRUE(disk->preferences().setZone("UTC").ok());
    EXPECT_EQ(plainWords(holdingWords("10", TimeInterval{c.p05, c.median, c.p95}, LiveClimb::at(0),
                                      disk->preferences())),
              c.words);
}

INSTANTIATE_TEST_SUITE_P(
    Ends, HoldingTold,
    testing::Values(
        HoldingCase{inMinutesFrom(29), inMinutesFrom(38), inMinutesFrom(51),
                    "Cone 10 is down in 38 min (29 to 51)."},
        HoldingCase{inMinutesFrom(50), inMinutesFrom(80), inMinutesFrom(130),
                    "Cone 10 is down in 1 h 20 (50 min to 2 h 10)."},
        HoldingCase{inMinutesFrom(29), inMinutesFrom(38), {}, "Cone 10 is down in 38 min (29 or longer)."},
        HoldingCase{inMinutesFrom(29), {}, {}, "Cone 10 is hardly down within a day, not before 12:29."},
        HoldingCase{{}, {}, {}, "Cone 10 is not down within a day."},
        HoldingCase{inMinutesFrom(-9), inMinutesFrom(-3), inMinutesFrom(4),
                    "Cone 10 should be down already: look."}));

TEST(AdviceWords, AClimbIsToldInThePottersUnit) {
    NotebookOnDisk disk;
    const auto rate = [](double r) { return Rate::fromCelsiusPerHour(r); };
    const Interval<Rate> climb{rate(65), rate(72), rate(80)};
    EXPECT_EQ(plainWords(climbingWords(climb, disk->preferences())), "Climb at 72 °C/h (65 to 80).");
    ASSERT_TRUE(disk->preferences().setUnit(TemperatureUnit::fahrenheit).ok());
    EXPECT_EQ(plainWords(climbingWords(climb, disk->preferences())), "Climb at 130 °F/h (117 to 144).");
    EXPECT_EQ(plainWords(climbingWords(std::nullopt, disk->preferences())),
              "No climb up to 720 °F/h does it.");
    EXPECT_EQ(plainWords(climbingWords(Interval<Rate>{rate(0), rate(0), rate(0)}, disk->preferences())),
              "Staying as it is does it.");
}

TEST(AdviceWords, SayFromWhenADropWouldDo) {
    NotebookOnDisk disk;
    ASSERT_TRUE(disk->preferences().setZone("UTC").ok());
    const DropAdvice advice{{inMinutesFrom(25), inMinutesFrom(32), inMinutesFrom(40)},
                            {inMinutesFrom(30), inMinutesFrom(37), inMinutesFrom(45)}};
    const auto said = [&](const std::optional<DropAdvice>& told, int now) {
        return plainWords(earliestDropWords("9", told, LiveClimb::at(now), disk->preferences()));
    };
    EXPECT_EQ(said(advice, 0),
              "Dropped from 12:32 on (12:25 to 12:40), cone 9 still goes down while the kiln cools; "
              "kept on, it is down at 12:37.");
    EXPECT_EQ(said(advice, 32), "Dropped now, cone 9 would likely still go down while the kiln cools.");
    EXPECT_EQ(said(DropAdvice{{inMinutesFrom(25), inMinutesFrom(32), {}}, {}}, 0),
              "Dropped from 12:32 on (12:25 or later), cone 9 still goes down while the kiln cools.");
    EXPECT_EQ(said(std::nullopt, 0), "");
}

TEST(AdviceWords, TellHours) {
    EXPECT_EQ(stayingWords("11", Interval<double>{1.6, 2.1, 2.6}).toStdString(),
              "Cone 11 would come to 2 o’clock (1½ to 2½).");
    EXPECT_EQ(stayingWords("11", Interval<double>{0.1, 0.4, 0.6}).toStdString(),
              "Cone 11 would be just leaning (standing to just leaning).");
    EXPECT_EQ(stayingWords("11", Interval<double>{5.9, 6, 6}).toStdString(), "Cone 11 would be down.");
    EXPECT_EQ(stayingWords("11", std::nullopt).toStdString(), "");
    EXPECT_EQ(
        droppingWords({{"9", {3.5, 4, 4.5}, {4.5, 5, 5.5}}, {"10", {0, 0, 0}, {0, 0.1, 0.2}}}).toStdString(),
        "Cooling takes 9 from 4 to 5 o’clock (4½ to 5½); 10 stays standing.");
    EXPECT_EQ(droppingWords({}).toStdString(), "No cone is left to move.");
}

} // namespace
} // namespace ringhold::test
