#include "core/watch/curve_parts.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace test;
using std::chrono::minutes;

const Curve tent = curveOf({{0, 1000}, {10, 1100}, {20, 1000}});

TEST(Cut, HasAPointAtEitherEnd) {
    const Curve part = cut(tent, atMinute(5), atMinute(12));
    ASSERT_EQ(part.size(), 3u);
    EXPECT_EQ(part[0].at, atMinute(5));
    EXPECT_NEAR(part[0].temperature.celsius(), 1050, 1e-9);
    EXPECT_EQ(part[1].at, atMinute(10));
    EXPECT_EQ(part[2].at, atMinute(12));
    EXPECT_NEAR(part[2].temperature.celsius(), 1080, 1e-9);
}

TEST(Cut, AtPointsOfTheCurveRepeatsNone) {
    EXPECT_EQ(cut(tent, atMinute(0), atMinute(20)).size(), 3u);
    EXPECT_EQ(cut(tent, atMinute(0), atMinute(10)).size(), 2u);
}

TEST(Cut, GoesOnAtTheEndTemperatureWhereTheCurveDoesNotReach) {
    const Curve part = cut(tent, atMinute(15), atMinute(30));
    ASSERT_EQ(part.size(), 3u);
    EXPECT_NEAR(part[2].temperature.celsius(), 1000, 1e-9);
}

TEST(StretchesWithin, AreBoundedByInterpolatedCrossings) {
    const auto within = stretchesWithin(tent, celsius(1030), celsius(1070));
    ASSERT_EQ(within.size(), 2u);
    EXPECT_EQ(within[0].start, atMinute(3));
    EXPECT_EQ(within[0].end, atMinute(7));
    EXPECT_EQ(within[1].start, atMinute(13));
    EXPECT_EQ(within[1].end, atMinute(17));
    EXPECT_EQ(totalLength(within), minutes(8));
}

TEST(StretchesWithin, GoAcrossPointsAndLeaveOutATouch) {
    const auto top = stretchesWithin(tent, celsius(1090), celsius(2000));
    ASSERT_EQ(top.size(), 1u);
    EXPECT_EQ(top[0].length(), minutes(2));
    EXPECT_TRUE(stretchesWithin(tent, celsius(1100), celsius(1200)).empty());
    EXPECT_TRUE(stretchesWithin(tent, celsius(1070), celsius(1030)).empty());
}

TEST(Remainder, IsWhatTheStretchesLeave) {
    const Stretch whole{atMinute(0), atMinute(20)};
    const auto rest = remainder(whole, {{atMinute(0), atMinute(5)}, {atMinute(8), atMinute(12)}});
    ASSERT_EQ(rest.size(), 2u);
    EXPECT_EQ(rest[0].start, atMinute(5));
    EXPECT_EQ(rest[0].end, atMinute(8));
    EXPECT_EQ(rest[1].start, atMinute(12));
    EXPECT_EQ(rest[1].end, atMinute(20));
    EXPECT_EQ(remainder(whole, {}).size(), 1u);
    EXPECT_TRUE(remainder(whole, {whole}).empty());
}

TEST(CurveParts, IntegrateExactly) {
    EXPECT_NEAR(meanOf(tent).celsius(), 1050, 1e-9);
    // Evenly spread over 100 °C: a hundredth of the square over twelve.
    EXPECT_NEAR(standardDeviationOf(tent).celsius(), 100 / std::sqrt(12.0), 1e-9);
    EXPECT_NEAR(degreeMinutesAbove(tent, celsius(1080)), 4 * 20 / 2.0, 1e-9);
    EXPECT_NEAR(degreeMinutesBelow(tent, celsius(1020)), 2 * (2 * 20 / 2.0), 1e-9);
    EXPECT_EQ(degreeMinutesAbove(tent, celsius(1100)), 0);
    EXPECT_NEAR(degreeMinutesAbove(tent, celsius(900)), 20 * 150, 1e-9);
    EXPECT_EQ(rangeOf(tent), std::pair(celsius(1000), celsius(1100)));
}

TEST(CurveParts, OfASinglePointAreThatPoint) {
    const Curve point = curveOf({{0, 1090}});
    EXPECT_EQ(meanOf(point), celsius(1090));
    EXPECT_EQ(standardDeviationOf(point).celsius(), 0);
    EXPECT_EQ(degreeMinutesAbove(point, celsius(1000)), 0);
}

} // namespace
} // namespace ringhold
