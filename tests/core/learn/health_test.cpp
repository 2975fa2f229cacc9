#include "core/kiln/chance.h"
#include "core/learn/health.h"

#include <gtest/gtest.h>

#include <cmath>

namespace ringhold {
namespace {

const Instant lit{std::chrono::hours(490000)};

Instant minute(double minutes) {
    return lit + durationFromMinutes(minutes);
}

Temperature celsius(double degrees) {
    return Temperature::fromCelsius(degrees);
}

/// 600 °C at minute 0, 1000 at 100, 1200 after the climb, a touch higher for half an hour, down.
Curve climbing(double climb_min) {
    return {{minute(0), celsius(600)},
            {minute(100), celsius(1000)},
            {minute(100 + climb_min), celsius(1200)},
            {minute(110 + climb_min), celsius(1210)},
            {minute(140 + climb_min), celsius(1210)},
            {minute(160 + climb_min), celsius(1000)},
            {minute(300 + climb_min), celsius(700)}};
}

/// Each minute, at full power while it climbs, at a third before and after.
PowerTrace powered(double climb_min, double volts, double ohm, double shareInClimb = 1) {
    PowerTrace trace;
    for (int i = 0; i < 400; ++i) {
        const bool climbs = i >= 95 && i < 105 + climb_min;
        trace.push_back({minute(i),
                         {volts * volts / ohm * (climbs ? (i < 120 ? 1.0 : shareInClimb) : 0.33)},
                         Volts{volts}});
    }
    return trace;
}

TEST(Health, ReadsTheClimbBetween1000And1200) {
    const auto climb = fixedClimbOf(climbing(80), powered(80, 236, 5));
    ASSERT_TRUE(climb);
    EXPECT_NEAR(climb->minutes, 80, 1e-6);
    EXPECT_NEAR(climb->line->volts, 236, 1e-9);
    EXPECT_EQ(climb->atFullPower, true);
    EXPECT_EQ(fixedClimbOf(climbing(80), powered(80, 236, 5, 0.7))->atFullPower, false);
    EXPECT_EQ(fixedClimbOf(climbing(80), {})->atFullPower, std::nullopt);
    EXPECT_FALSE(fixedClimbOf({{minute(0), celsius(20)}, {minute(100), celsius(1100)}}, {}));
    // 10 min up from 1200 to 1210, 30 min there, 10/210 of 20 min down
    EXPECT_NEAR(hoursAbove1200(climbing(80)), (10 + 30 + 20.0 / 21) / 60, 1e-6);
    EXPECT_EQ(hoursAbove1200({}), 0);
}

TEST(Health, ReadsTheElementsResistance) {
    const auto ohm = resistanceOf(powered(80, 236, 5.2));
    ASSERT_TRUE(ohm);
    EXPECT_NEAR(ohm->value, 5.2, 1e-9);
    PowerTrace unread = powered(80, 236, 5.2);
    for (auto& point : unread)
        point.line.reset();
    EXPECT_FALSE(resistanceOf(unread));
    EXPECT_FALSE(resistanceOf({}));
}

/// Firings whose climb takes `percent` longer each time, at these volts.
std::vector<FiringHealth> ageing(int count, double percent, double volts = 236) {
    Chance chance(5);
    std::vector<FiringHealth> firings;
    for (int i = 0; i < count; ++i) {
        const double worse = 1 + percent / 100 * i;
        auto health =
            healthOf(climbing(std::round(80 * worse) + chance.normal()), powered(90, volts, 5 * worse),
                     OffsetFound{TemperatureDifference::fromCelsius(4 - 0.6 * i + chance.normal()),
                                 TemperatureDifference::fromCelsius(2)});
        health.at = lit + std::chrono::hours(24 * 7 * i);
        firings.push_back(health);
    }
    return firings;
}

TEST(Health, FewFiringsAreNotEnough) {
    const auto health = kilnHealth(ageing(4, 3), {});
    EXPECT_EQ(health.climb_min.word, TrendWord::notEnough);
    EXPECT_EQ(health.climb_min.firings, 4);
    EXPECT_EQ(health.elements, ElementState::notEnough);
    EXPECT_EQ(kilnHealth({}, {}).climb_min.word, TrendWord::notEnough);
    EXPECT_EQ(probeHealth(ageing(2, 0), {}).offset_C.word, TrendWord::notEnough);
}

TEST(Health, TellsHowMuchLongerThanTenFiringsAgo) {
    const auto health = kilnHealth(ageing(15, 1.25), {});
    EXPECT_EQ(health.climb_min.word, TrendWord::rising);
    EXPECT_EQ(health.climb_min.firingsAgo, 10);
    // from 1 + 4 * 1.25 % to 1 + 14 * 1.25 %
    EXPECT_NEAR(*health.climb_min.changePercent, (1.175 / 1.05 - 1) * 100, 1.5);
    EXPECT_TRUE(health.sameVolts);
    EXPECT_EQ(health.leftOut, 0);
    EXPECT_NEAR(*health.rise_percent, 17.5, 1);
    EXPECT_EQ(health.elements, ElementState::replace);
    EXPECT_EQ(kilnHealth(ageing(12, 0.7), {}).elements, ElementState::worn);
    EXPECT_EQ(kilnHealth(ageing(12, 0.2), {}).elements, ElementState::sound);
}

TEST(Health, SteadyIsSaidOnlyWhenItIsKnown) {
    EXPECT_EQ(kilnHealth(ageing(15, 0), {}).climb_min.word, TrendWord::steady);
    const std::vector<HealthPoint> wild{{80}, {99}, {70}, {95}, {78}, {101}};
    EXPECT_EQ(healthTrend(wild, 4).word, TrendWord::notEnough);
}

TEST(Health, ClimbsAtOtherVoltsAndBeforeNewElementsAreLeftOut) {
    auto firings = ageing(12, 1);
    for (const auto& low : ageing(3, 1, 220))
        firings.insert(firings.begin(), low);
    const auto health = kilnHealth(firings, {});
    EXPECT_EQ(health.leftOut, 3);
    EXPECT_EQ(health.climb_min.firings, 12);
    EXPECT_EQ(kilnHealth(ageing(12, 1), lit + std::chrono::hours(24 * 7 * 6)).climb_min.firings, 6);
}

TEST(Health, AProbeThatReadsLowerAndLower) {
    const auto health = probeHealth(ageing(12, 0), {});
    EXPECT_EQ(health.firings, 12);
    EXPECT_NEAR(health.hoursAbove1200, 12 * 0.6825, 0.1);
    EXPECT_EQ(health.offset_C.word, TrendWord::falling);
    EXPECT_NEAR(*health.offset_C.change, -6, 2);
    EXPECT_LT(health.offset_C.change90->low, -6);
    EXPECT_LT(health.offset_C.change90->high, -3);
    EXPECT_FALSE(health.offset_C.changePercent);
}

} // namespace
} // namespace ringhold
