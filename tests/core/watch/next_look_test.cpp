#include "core/watch/next_look.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace ringhold::test {
namespace {

constexpr Duration quarter = std::chrono::minutes(15);

TimeInterval around(double minute) {
    return {atMinute(minute - 3), atMinute(minute), atMinute(minute + 3)};
}

/// Cone 8 at 1, 3, 5 o'clock and down at minutes 30, 42, 48, 50; cone 9 twenty-five minutes later.
PackForecast twoCones() {
    PackForecast pack;
    for (const auto& [name, later] : {std::pair{"8", 0.0}, std::pair{"9", 25.0}}) {
        ConeForecast cone;
        cone.cone = name;
        cone.atHour[0] = around(30 + later);
        cone.atHour[1] = around(42 + later);
        cone.atHour[2] = around(48 + later);
        cone.down = around(50 + later);
        pack.cones.push_back(cone);
    }
    return pack;
}

Look lookAt(double minute, const char* cone, double hour, bool struck = false) {
    return {LookId{1}, PackId{1}, atMinute(minute), cone, hour, false, struck};
}

struct NextCase {
    double now;
    std::vector<Look> looks;
    const char* cone;
    double at;
    double hour;
};

class NextLookFor : public testing::TestWithParam<NextCase> {};

TEST_P(NextLookFor, IsWhereAConeTellsMost) {
    const auto& c = GetParam();
    const auto next = nextLook(twoCones(), c.looks, atMinute(c.now), quarter);
    ASSERT_TRUE(next);
    EXPECT_EQ(next->cone, c.cone);
    EXPECT_NEAR(minuteOf(next->at), c.at, 1e-6);
    EXPECT_EQ(next->hour, c.hour);
}

INSTANTIATE_TEST_SUITE_P(
    Times, NextLookFor,
    testing::Values(NextCase{0, {}, "8", 30, 1},                    // nobody has looked: at its first lean
                    NextCase{33, {}, "8", 33, 1},                   // overdue is due now
                    NextCase{33, {lookAt(32, "8", 1)}, "8", 47, 3}, // not more often than was set
                    NextCase{33, {lookAt(32, "8", 1, true)}, "8", 33, 1}, // a struck one is none
                    NextCase{52, {lookAt(51, "8", 6)}, "9", 66, 1},       // 8 is down: it tells no more
                    NextCase{70, {lookAt(69, "8", 6), lookAt(69, "9", 3)}, "9", 84, 5}));

TEST(NextLook, IsNoneWhileNothingMovesAndWhenAllAreDown) {
    EXPECT_FALSE(nextLook(twoCones(), {}, atMinute(-400), quarter));
    EXPECT_FALSE(nextLook(twoCones(), {lookAt(80, "8", 6), lookAt(80, "9", 6)}, atMinute(81), quarter));
    EXPECT_FALSE(nextLook(PackForecast{}, {}, atMinute(0), quarter));
}

/// 60 °C/h from 1100 °C; the probe is known to 10 °C.
class MostTellingLook : public testing::Test {
  protected:
    FiringForecast at(double lastMinute, const std::vector<Look>& looks = {}) const {
        Pack pack;
        pack.id = PackId{1};
        pack.cones = {"8", "9", "10"};
        auto made = *FiringForecast::make({pack}, {{TemperatureDifference{}, degreesC(10)}});
        EXPECT_TRUE(made.restart(readEvery(curveOf({{0, 1100}, {lastMinute, 1100 + lastMinute}}),
                                           std::chrono::minutes(1)),
                                 atMinute(0), looks)
                        .ok());
        return made;
    }
    std::optional<NextLook> next(double now, const std::vector<Look>& looks = {},
                                 Duration apart = quarter) const {
        return mostTelling(at(now, looks), 0, "9", looks, apart);
    }
    static std::optional<NextLook> mostTelling(const FiringForecast& forecaster, std::size_t pack,
                                               const char* cone, const std::vector<Look>& looks,
                                               Duration apart) {
        return mostTellingLook(forecaster, *forecaster.forecast(nullptr), nullptr, pack, cone, looks, apart);
    }
    static double widthOf(const FiringForecast& forecaster) {
        const auto down = forecaster.forecast(nullptr)->packs[0].cones[1].down;
        return minuteOf(*down.p95) - minuteOf(*down.p05);
    }
};

TEST_F(MostTellingLook, IsAtTheGuideConeAsItMoves) {
    const auto look = next(120);
    ASSERT_TRUE(look);
    EXPECT_EQ(look->cone, "8");
    EXPECT_GT(look->hour, 0.5);
    EXPECT_LT(look->hour, 5);
    EXPECT_LT(look->narrowsTo, 0.7) << "of what is unknown of cone 9";
}

/// Of looks at its time and half an hour sooner, both as the forecast's middle expects them, its own narrows
/// more.
TEST_F(MostTellingLook, NarrowsMoreThanOneTooSoon) {
    const auto look = next(120);
    ASSERT_TRUE(look);
    const double best = minuteOf(look->at);
    const auto widthAfter = [&](double minute, const char* cone) {
        const auto told = at(minute).forecast(nullptr)->packs[0];
        const auto& its = *std::ranges::find(told.cones, cone, &ConeForecast::cone);
        const double hour = std::round(its.hourNow.median * 2) / 2;
        return widthOf(at(best, {lookAt(minute, cone, hour)}));
    };
    EXPECT_LT(widthAfter(best, "8"), widthAfter(best - 30, "8") - 3);
    EXPECT_LT(widthAfter(best, "8"), widthAfter(best, "10") - 3);
}

/// It does not recede before the potter who waits for it.
TEST_F(MostTellingLook, ComesDueAsTimeGoesOn) {
    bool due = false;
    for (double now = 110; now <= 165 && !due; now += 1) {
        const auto look = next(now);
        ASSERT_TRUE(look) << now;
        due = look->at <= atMinute(now);
    }
    EXPECT_TRUE(due);
}

TEST_F(MostTellingLook, GoesToTheFiringConeOnceTheGuideHasToldAllItCan) {
    const std::vector<Look> looks{lookAt(150, "8", 2), lookAt(154, "8", 4), lookAt(158, "8", 6)};
    const auto look = next(159, looks, std::chrono::minutes(3));
    ASSERT_TRUE(look);
    EXPECT_EQ(look->cone, "9");
}

TEST_F(MostTellingLook, IsNeverSoonerThanThePotterSet) {
    const std::vector<Look> looks{lookAt(149, "8", 2)};
    const auto often = next(150, looks, std::chrono::minutes(4));
    const auto seldom = next(150, looks, std::chrono::minutes(40));
    ASSERT_TRUE(often && seldom);
    EXPECT_GE(minuteOf(often->at), 153);
    EXPECT_LT(often->at, seldom->at);
    EXPECT_GE(minuteOf(seldom->at), 189);
}

TEST_F(MostTellingLook, IsTheSimpleRulesWhereNothingIsKnownOfTheCone) {
    const auto forecaster = at(150);
    const auto look = mostTelling(forecaster, 0, "7", {}, quarter);
    const auto simple = nextLook(forecaster.forecast(nullptr)->packs[0], {}, atMinute(150), quarter);
    ASSERT_TRUE(look && simple);
    EXPECT_EQ(look->at, simple->at);
    EXPECT_EQ(look->narrowsTo, 1);
    EXPECT_FALSE(mostTelling(forecaster, 3, "9", {}, quarter)) << "no such pack";
}

} // namespace
} // namespace ringhold::test
