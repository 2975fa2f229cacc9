#include "core/kiln/practice_potter.h"

#include <gtest/gtest.h>

#include <cmath>

namespace ringhold {
namespace {

using std::chrono::minutes;

class StillPack final : public PracticeSpyhole {
  public:
    StillPack(double guide, double firing, double display_C) {
        m_pack = {{"8", guide}, {"9", firing}};
        m_display = Temperature::fromCelsius(display_C);
    }
    std::vector<ConeSeen> pack() const override { return m_pack; }
    std::optional<Temperature> display() const override { return m_display; }
    bool coneDown(std::string_view cone) override {
        m_told.emplace_back(cone);
        return true;
    }

    std::vector<ConeSeen> m_pack;
    std::optional<Temperature> m_display;
    std::vector<std::string> m_told;
};

PotterHabits sharpEyes() {
    PotterHabits habits;
    habits.firingCone = "9";
    habits.hourSd = 0.0;
    return habits;
}

TEST(PracticePotter, StaysAwayWhileTheKilnIsCool) {
    PracticePotter potter(sharpEyes(), 1);
    StillPack spyhole(0, 0, 1150);
    EXPECT_TRUE(potter.watch(Instant(minutes(1)), spyhole).empty());
    spyhole.m_display.reset(); // an open probe tells nothing
    EXPECT_TRUE(potter.watch(Instant(minutes(2)), spyhole).empty());
    spyhole.m_display = Temperature::fromCelsius(1201);
    EXPECT_EQ(potter.watch(Instant(minutes(3)), spyhole).size(), 2U);
    spyhole.m_display.reset(); // having begun, goes on without it
    EXPECT_EQ(potter.watch(Instant(minutes(30)), spyhole).size(), 2U);
}

struct PauseCase {
    double guide;
    double firing;
    int minutes;
};

class PotterPauses : public testing::TestWithParam<PauseCase> {};

TEST_P(PotterPauses, ByWhatWasSeen) {
    PracticePotter potter(sharpEyes(), 1);
    StillPack spyhole(GetParam().guide, GetParam().firing, 1250);
    ASSERT_FALSE(potter.watch(Instant(minutes(0)), spyhole).empty());
    int minute = 1;
    while (minute < 60 && potter.watch(Instant(minutes(minute)), spyhole).empty())
        ++minute;
    EXPECT_EQ(minute, GetParam().minutes);
}

INSTANTIATE_TEST_SUITE_P(Potter, PotterPauses,
                         testing::Values(PauseCase{0, 0, 20}, PauseCase{0.5, 0, 20}, PauseCase{2, 0, 8},
                                         PauseCase{2, 0.5, 8}, PauseCase{5, 1, 3}, PauseCase{2, 4, 3}));

TEST(PracticePotter, TellsOfTheFiringConeOnceAndStops) {
    PracticePotter potter(sharpEyes(), 1);
    StillPack spyhole(6, 5, 1250);
    EXPECT_EQ(potter.watch(Instant(minutes(0)), spyhole).size(), 2U);
    EXPECT_TRUE(spyhole.m_told.empty()); // the guide cone moves nothing
    spyhole.m_pack[1].hour = 6;
    const auto looks = potter.watch(Instant(minutes(3)), spyhole);
    ASSERT_EQ(looks.size(), 1U); // the guide cone was seen down before
    EXPECT_EQ(looks[0].cone, "9");
    EXPECT_EQ(looks[0].hour, 6.0);
    EXPECT_EQ(looks[0].at, Instant(minutes(3)));
    EXPECT_EQ(spyhole.m_told, std::vector<std::string>{"9"});
    EXPECT_TRUE(potter.sawFiringConeDown());
    EXPECT_TRUE(potter.watch(Instant(minutes(60)), spyhole).empty());
    EXPECT_EQ(potter.lookNow(Instant(minutes(900)), spyhole).size(), 2U); // the cold pack
}

struct EyeCase {
    double hour;
    double mean;
    double sd;
};

class PotterEyes : public testing::TestWithParam<EyeCase> {};

TEST_P(PotterEyes, ReadInHalvesWithAnError) {
    PotterHabits habits;
    PracticePotter potter(habits, 11);
    const StillPack spyhole(GetParam().hour, 0, 1250);
    double sum = 0;
    double squares = 0;
    constexpr int count = 20'000;
    for (int i = 0; i < count; ++i) {
        const double read = potter.lookNow(Instant{}, spyhole).front().hour;
        ASSERT_EQ(read * 2.0, std::round(read * 2.0));
        ASSERT_FALSE(std::signbit(read));
        ASSERT_LE(read, 6.0);
        sum += read;
        squares += read * read;
    }
    const double mean = sum / count;
    EXPECT_NEAR(mean, GetParam().mean, 0.01);
    EXPECT_NEAR(std::sqrt(squares / count - mean * mean), GetParam().sd, 0.01);
}

// In the middle: error 0.3 h and rounding to halves (variance 1/48) in quadrature. At the ends the normal's
// upper half, by its shares beyond 0.25 and 0.75 h: 0.2023 and 0.0062.
INSTANTIATE_TEST_SUITE_P(Potter, PotterEyes,
                         testing::Values(EyeCase{3.0, 3.0, 0.333}, EyeCase{2.7, 2.7, 0.333},
                                         EyeCase{0.0, 0.104, 0.210}, EyeCase{6.0, 5.896, 0.210}));

TEST(PracticePotter, TakesHabitsFromTheFirstConeWait) {
    Plan plan;
    EXPECT_FALSE(habitsFor(plan));
    plan.steps = {Climb{Temperature::fromCelsius(1100), Rate::fromCelsiusPerHour(150)},
                  ConeWait{"6", Rate::fromCelsiusPerHour(60), Temperature::fromCelsius(1230),
                           Temperature::fromCelsius(1250), minutes(40)}};
    const auto habits = habitsFor(plan);
    ASSERT_TRUE(habits);
    EXPECT_EQ(habits->firingCone, "6");
    EXPECT_NEAR(habits->looksFrom.celsius(), 1170, 1e-9);
}

} // namespace
} // namespace ringhold
