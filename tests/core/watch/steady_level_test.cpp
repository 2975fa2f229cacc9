#include "core/watch/steady_level.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

using namespace std::chrono_literals;

Curve read(const std::vector<std::pair<double, double>>& corners, Duration spacing = 10s) {
    return readEvery(curveOf(corners), spacing);
}

TEST(SteadyLevel, IsFoundAfterTwentyMinutesAndNotBefore) {
    const Curve curve = read({{0, 900}, {60, 1090}, {120, 1090}});
    EXPECT_FALSE(steadyLevel(curve, atMinute(75)));
    const auto level = steadyLevel(curve, atMinute(80));
    ASSERT_TRUE(level);
    EXPECT_NEAR(level->target.celsius(), 1090, 0.2);
    EXPECT_EQ(level->halfWidth.celsius(), 6);
}

TEST(SteadyLevel, LooksNoFurtherThanTheInstant) {
    const Curve curve = read({{0, 1090}, {30, 1090}, {40, 1200}});
    EXPECT_TRUE(steadyLevel(curve, atMinute(29)));
    EXPECT_FALSE(steadyLevel(curve, atMinute(35)));
}

TEST(SteadyLevel, IsNoSlowClimbNorAColdKiln) {
    EXPECT_FALSE(steadyLevel(read({{0, 1000}, {60, 1015}}), atMinute(60))) << "15 °C/h, within ± 6 °C";
    EXPECT_TRUE(steadyLevel(read({{0, 1000}, {60, 1008}}), atMinute(60))) << "8 °C/h";
    EXPECT_FALSE(steadyLevel(read({{0, 21}, {60, 21}}), atMinute(60)));
}

TEST(SteadyLevel, ToleratesNoiseAndOneWildReading) {
    std::mt19937 random(5);
    Curve curve = noisy(read({{0, 1090}, {40, 1090}}), 1, 0.8, random);
    curve[200].temperature = celsius(400);
    const auto level = steadyLevel(curve, atMinute(40));
    ASSERT_TRUE(level);
    EXPECT_NEAR(level->target.celsius(), 1090, 1.5);
}

TEST(SteadyLevel, IsFoundFromThreeReadingsByHand) {
    const Curve curve = read({{0, 1088}, {15, 1091}, {30, 1090}}, 15min);
    EXPECT_FALSE(steadyLevel(curve, atMinute(15)));
    const auto level = steadyLevel(curve, atMinute(30));
    ASSERT_TRUE(level);
    EXPECT_NEAR(level->target.celsius(), 1090, 1);
}

TEST(SteadyLevel, BeganWhereTheCurveFirstCameIn) {
    const HoldBand band{celsius(1090), degreesC(6)};
    const Curve curve =
        read({{0, 1090}, {10, 1090}, {11, 1000}, {40, 1000}, {42, 1100}, {45, 1100}, {46, 1090}, {80, 1090}});
    // half an hour away ends a stay, a few minutes too hot do not
    EXPECT_NEAR(minuteOf(firstInside(curve, band, atMinute(80), 20min)), 41.8, 0.2);
    EXPECT_NEAR(minuteOf(firstInside(curve, band, atMinute(80), 40min)), 0, 0.2);
    EXPECT_EQ(firstInside(curve, band, atMinute(30), 5min), atMinute(30)) << "not in it at all";
}

} // namespace
} // namespace ringhold::test
