#include "core/watch/dwell.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace test;
using std::chrono::seconds;

const Curve dip =
    readEvery(curveOf({{0, 1090}, {10, 1090}, {14, 1050}, {24, 1050}, {32, 1090}, {60, 1090}}), seconds(10));
const Stretch visit{atMinute(12), atMinute(28)}; // below the middle

TEST(Level, IsWhereTheCurveSpentMostTime) {
    const LevelRange low{celsius(1026), celsius(1070)}, high{celsius(1070), celsius(1114)};
    EXPECT_NEAR(levelWithin(dip, low, degreesC(2.4))->celsius(), 1050, 1e-9);
    EXPECT_NEAR(levelWithin(dip, high, degreesC(2.4))->celsius(), 1090, 1e-9);
    EXPECT_FALSE(levelWithin(dip, {celsius(900), celsius(1000)}, degreesC(2.4)));
}

TEST(Level, CountsTimeNotReadings) {
    // Forty readings within a minute at 1060, two of them 20 min apart at 1050.
    Curve curve = curveOf({{0, 1050}, {20, 1050}});
    for (int i = 1; i <= 40; ++i)
        curve.push_back({atMinute(21 + i / 40.0), celsius(1060)});
    EXPECT_EQ(levelWithin(curve, {celsius(1026), celsius(1070)}, degreesC(2)), celsius(1050));
}

TEST(DwellAt, LastsFromCornerToCorner) {
    const Dwell dwell = dwellAt(dip, visit, celsius(1050), celsius(1090));
    EXPECT_NEAR(minuteOf(dwell.start), 14, 1e-3);
    EXPECT_NEAR(inMinutes(dwell.length), 10, 2e-3);
    EXPECT_NEAR(dwell.mean.celsius(), 1050, 0.01);
}

TEST(DwellAt, OfATurnWithoutAStayIsEmpty) {
    const Curve turn = readEvery(curveOf({{0, 1090}, {10, 1050}, {30, 1090}}), seconds(10));
    const Dwell dwell = dwellAt(turn, {atMinute(5), atMinute(20)}, celsius(1050), celsius(1090));
    EXPECT_NEAR(minuteOf(dwell.start), 10, 0.01);
    EXPECT_NEAR(inMinutes(dwell.length), 0, 0.01);
}

TEST(DwellAt, OfALevelNeverComeNearIsEmpty) {
    const Dwell dwell = dwellAt(dip, visit, celsius(900), celsius(940));
    EXPECT_EQ(dwell.start, visit.start);
    EXPECT_EQ(dwell.length, Duration{0});
}

TEST(DwellAt, OfAnExponentialArrivalBeginsWithATenthOfTheWayLeft) {
    Curve curve;
    for (int second = 0; second <= 3600; second += 5)
        curve.push_back({atMinute(second / 60.0), celsius(1050 + 40 * std::exp(-second / 180.0))});
    const Dwell dwell = dwellAt(curve, {atMinute(2), atMinute(60)}, celsius(1050), celsius(1090));
    // Half way at 0.693 and four fifths at 1.609 time constants of 3 min, extrapolated.
    EXPECT_NEAR(minuteOf(dwell.start), 3 * (1.6094 + (1.6094 - 0.6931) * 2 / 3), 0.01);
    EXPECT_EQ(dwell.start + dwell.length, atMinute(60));
}

} // namespace
} // namespace ringhold
