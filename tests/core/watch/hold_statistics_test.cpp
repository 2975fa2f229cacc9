#include "core/watch/hold_statistics.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace test;
using std::chrono::minutes;
using std::chrono::seconds;

const HoldBand band{celsius(1090), degreesC(6)};
constexpr double millisecond = 1.01 / 60'000; // in minutes: crossings are rounded to it

// Up at 9 °C/min, a sag of 20 °C with ramps of 10 °C/min, down at 9 °C/min: every figure reckoned by hand.
const Curve sagged = curveOf(
    {{0, 1000}, {10, 1090}, {70, 1090}, {72, 1070}, {80, 1070}, {82, 1090}, {130, 1090}, {140, 1000}});

TEST(FindHolds, FiguresOfASagAreThoseReckonedByHand) {
    const auto holds = findHolds(sagged, band);
    ASSERT_EQ(holds.size(), 1u);
    const auto& hold = holds[0];
    EXPECT_NEAR(minuteOf(hold.start), 84.0 / 9, millisecond); // 1084 on the way up
    EXPECT_NEAR(minuteOf(hold.end), 130 + 6.0 / 9, millisecond);
    const double length = 120 + 12.0 / 9;
    EXPECT_NEAR(hold.minutes(), length, 2 * millisecond);
    // Off the target: 2 °C min at either end (6 °C, 2/3 min, half of it), 8 min of 20 °C and two ramps of 20
    // °C min.
    EXPECT_NEAR(hold.degreeMinutesBelowTarget, 2 + 160 + 40 + 2, 1e-3);
    EXPECT_NEAR(hold.degreeMinutesAboveTarget, 0, 1e-9);
    EXPECT_NEAR(hold.mean.celsius(), 1090 - 204 / length, 1e-3);
    // Squares: ends 6² / 3 for 2/3 min each, 20² for 8 min, 20² / 3 for 4 min.
    const double square = (2 * 8 + 3200 + 1600.0 / 3) / length;
    EXPECT_NEAR(hold.sd.celsius(), std::sqrt(square - std::pow(204 / length, 2)), 1e-3);
    EXPECT_NEAR(hold.min.celsius(), 1070, 1e-9);
    EXPECT_NEAR(hold.max.celsius(), 1090, 1e-9);
    // Below 1084 from 70.6 to 81.4 min, 14 °C deep for 8 min, its ramps 1.4 min each.
    ASSERT_EQ(hold.excursions.size(), 1u);
    EXPECT_NEAR(minuteOf(hold.excursions[0].start), 70.6, millisecond);
    EXPECT_NEAR(minuteOf(hold.excursions[0].end), 81.4, millisecond);
    EXPECT_NEAR(hold.excursions[0].peak.celsius(), 1070, 1e-9);
    EXPECT_NEAR(inMinutes(hold.longestExcursion), 10.8, 2 * millisecond);
    EXPECT_NEAR(hold.insideShare, 1 - 10.8 / length, 1e-6);
    EXPECT_NEAR(hold.degreeMinutesBelow, 14 * 8 + 14 * 1.4, 1e-3);
    EXPECT_EQ(hold.degreeMinutesAbove, 0);
    EXPECT_EQ(hold.readings, 6u);
    EXPECT_EQ(hold.longestGap, minutes(60));
}

TEST(FindHolds, AnOvershootCountsAbove) {
    const auto holds = findHolds(curveOf({{0, 1090}, {30, 1090}, {32, 1110}, {34, 1090}, {60, 1090}}), band);
    ASSERT_EQ(holds.size(), 1u);
    EXPECT_EQ(holds[0].start, atMinute(0)); // where the curve begins and ends inside, so does the hold
    EXPECT_EQ(holds[0].end, atMinute(60));
    ASSERT_EQ(holds[0].excursions.size(), 1u);
    EXPECT_NEAR(holds[0].excursions[0].peak.celsius(), 1110, 1e-9);
    EXPECT_NEAR(holds[0].degreeMinutesAbove, 14 * 2.8 / 2, 1e-3); // triangle from 30.6 to 33.4 min
    EXPECT_EQ(holds[0].degreeMinutesBelow, 0);
}

struct Case {
    const char* name;
    std::vector<std::pair<double, double>> corners;
    std::vector<double> holds_min; ///< lengths expected
};

class HoldsFound : public testing::TestWithParam<Case> {};

TEST_P(HoldsFound, AreThese) {
    SCOPED_TRACE(GetParam().name);
    const Curve curve = curveOf(GetParam().corners);
    for (const Curve& readings : {curve, readEvery(curve, seconds(10)), readEvery(curve, seconds(60))}) {
        const auto holds = findHolds(readings, band);
        ASSERT_EQ(holds.size(), GetParam().holds_min.size());
        for (std::size_t i = 0; i < holds.size(); ++i)
            EXPECT_NEAR(holds[i].minutes(), GetParam().holds_min[i], 2 * millisecond);
    }
}

INSTANTIATE_TEST_SUITE_P(
    Rule, HoldsFound,
    testing::Values(Case{"climb at 60 C/h passes in 12 min", {{0, 1000}, {180, 1180}}, {}},
                    Case{"climb at 30 C/h stays 24 min", {{0, 1000}, {360, 1180}}, {24}},
                    Case{"20 min to the dot", {{0, 1090}, {20, 1090}, {21, 1200}}, {20 + 6.0 / 110}},
                    Case{"36 C/h takes 20 min", {{0, 1000}, {300, 1180}}, {20}},
                    Case{"too short", {{0, 1000}, {1, 1090}, {19, 1090}, {20, 1000}}, {}},
                    Case{"an absence of 20 min goes on",
                         {{0, 1090}, {30, 1090}, {31, 1078}, {50, 1078}, {51, 1090}, {90, 1090}},
                         {90}},
                    Case{"an absence of 21 min ends it",
                         {{0, 1090}, {30, 1090}, {31, 1078}, {51, 1078}, {52, 1090}, {90, 1090}},
                         {30.5, 38.5}},
                    Case{"two visits of 13 min, 8 min apart, are one hold",
                         {{0, 1090}, {13, 1090}, {14, 1078}, {21, 1078}, {22, 1090}, {35, 1090}},
                         {35}},
                    Case{"two visits of 13 min, half an hour apart, are none",
                         {{0, 1090}, {13, 1090}, {14, 1078}, {43, 1078}, {44, 1090}, {57, 1090}},
                         {}},
                    Case{"up, over and down again within 20 min",
                         {{0, 1090}, {15, 1090}, {16, 1102}, {26, 1102}, {27, 1090}, {42, 1090}},
                         {42}},
                    Case{"rings of 10 min stay within the hold",
                         {{0, 1090},
                          {60, 1090},
                          {64, 1050},
                          {74, 1050},
                          {78, 1090},
                          {88, 1090},
                          {92, 1050},
                          {102, 1050},
                          {106, 1090},
                          {116, 1090},
                          {126, 990}},
                         {116.6}},
                    Case{"never there", {{0, 20}, {60, 900}, {120, 900}}, {}}));

TEST(FindHolds, OfNothingIsNothing) {
    EXPECT_TRUE(findHolds({}, band).empty());
    EXPECT_TRUE(findHolds(curveOf({{0, 1090}}), band).empty());
}

TEST(FindHolds, AReadingOnTheEdgeIsInside) {
    // 1090.4 + 5.7 is a little less than 1096.1 in binary fractions.
    const auto holds = findHolds(curveOf({{0, 1096.1}, {60, 1096.1}}), {celsius(1090.4), degreesC(5.7)});
    ASSERT_EQ(holds.size(), 1u);
    EXPECT_EQ(holds[0].insideShare, 1);
}

TEST(FindHolds, SaysHowFewTheTypedReadingsWere) {
    const auto holds = findHolds(
        curveOf({{0, 1180}, {15, 1090}, {30, 1092}, {45, 1080}, {60, 1090}, {75, 1088}, {90, 1089}}), band);
    ASSERT_EQ(holds.size(), 1u);
    EXPECT_EQ(holds[0].readings, 6u);
    EXPECT_EQ(holds[0].longestGap, minutes(15));
    EXPECT_NEAR(minuteOf(holds[0].start), 14, millisecond); // 1096 on the way from 1180 to 1090
    // One reading at 1080 stands for the time below 1084 on the straight lines to its neighbours.
    EXPECT_NEAR(inMinutes(holds[0].longestExcursion), 15 * 4 / 12.0 + 15 * 4 / 10.0, 2 * millisecond);
}

TEST(JudgeHold, CountsTimeOffTheBandAtItsEnds) {
    const auto hold = judgeHold(sagged, band, {atMinute(5), atMinute(65)});
    ASSERT_EQ(hold.excursions.size(), 1u);
    EXPECT_EQ(hold.excursions[0].start, atMinute(5));
    EXPECT_NEAR(hold.excursions[0].peak.celsius(), 1045, 1e-9);
    EXPECT_NEAR(hold.insideShare, 1 - (84.0 / 9 - 5) / 60, 1e-6);
}

/// Three hours that swing by 4 °C in 25 min, sag once and drift up, as a kiln's curve may.
Curve livelyHold() {
    Curve curve = curveOf({{0, 1250}, {15, 1090}});
    for (int second = 901; second <= 900 + 3 * 3600; ++second) {
        const double minute = second / 60.0;
        const double sag = 12 * std::exp(-std::pow((minute - 100) / 5, 2));
        const double degrees = 1089 + 4 * std::sin(minute / 4) + 0.01 * minute - sag;
        curve.push_back({atMinute(minute), celsius(degrees)});
    }
    return curve;
}

TEST(FindHolds, HowOftenItWasReadChangesLittle) {
    const auto fine = findHolds(livelyHold(), band).at(0);
    for (const Duration spacing : {seconds(10), seconds(60)}) {
        const auto holds = findHolds(readEvery(livelyHold(), spacing), band);
        ASSERT_EQ(holds.size(), 1u);
        const auto& hold = holds[0];
        EXPECT_NEAR(inMinutes(hold.start - fine.start), 0, 0.1);
        EXPECT_NEAR(hold.minutes(), fine.minutes(), 0.2);
        EXPECT_NEAR(hold.mean.celsius(), fine.mean.celsius(), 0.01);
        EXPECT_NEAR(hold.sd.celsius(), fine.sd.celsius(), 0.03);
        EXPECT_NEAR(hold.min.celsius(), fine.min.celsius(), 0.1);
        EXPECT_NEAR(hold.max.celsius(), fine.max.celsius(), 0.1);
        EXPECT_NEAR(hold.insideShare, fine.insideShare, 0.003);
        EXPECT_NEAR(inMinutes(hold.longestExcursion), inMinutes(fine.longestExcursion), 0.1);
        EXPECT_NEAR(hold.degreeMinutesBelow, fine.degreeMinutesBelow, 0.6);
        EXPECT_NEAR(hold.degreeMinutesAboveTarget, fine.degreeMinutesAboveTarget, 1.5);
        EXPECT_NEAR(hold.drift.rate.celsiusPerHour(), fine.drift.rate.celsiusPerHour(), 0.02);
        ASSERT_TRUE(hold.drift.interval90 && fine.drift.interval90);
        EXPECT_NEAR(hold.drift.interval90->high.celsiusPerHour(),
                    fine.drift.interval90->high.celsiusPerHour(), 0.05);
        EXPECT_EQ(hold.excursions.size(), fine.excursions.size());
    }
}

TEST(FindHolds, PointsAddedOnTheLineChangeNothing) {
    std::mt19937 random(11);
    const Curve sparse = noisy(readEvery(livelyHold(), seconds(60)), 1.5, 0, random);
    Curve dense;
    for (const auto& point : sparse) {
        const int extra = dense.empty() ? 0 : static_cast<int>(random() % 4);
        const Instant last = dense.empty() ? point.at : dense.back().at;
        for (int i = 1; i <= extra; ++i) {
            const Instant at = last + (point.at - last) * i / (extra + 1);
            dense.push_back({at, temperatureAt(sparse, at)});
        }
        dense.push_back(point);
    }
    ASSERT_GT(dense.size(), 2 * sparse.size());
    const auto before = findHolds(sparse, band), after = findHolds(dense, band);
    ASSERT_EQ(before.size(), 1u);
    ASSERT_EQ(after.size(), 1u);
    EXPECT_NEAR(inSeconds(after[0].start - before[0].start), 0, 0.002);
    EXPECT_NEAR(inSeconds(after[0].end - before[0].end), 0, 0.002);
    EXPECT_NEAR(after[0].mean.celsius(), before[0].mean.celsius(), 1e-5);
    EXPECT_NEAR(after[0].sd.celsius(), before[0].sd.celsius(), 1e-4);
    EXPECT_NEAR(after[0].insideShare, before[0].insideShare, 1e-5);
    EXPECT_NEAR(after[0].degreeMinutesAbove, before[0].degreeMinutesAbove, 1e-3);
    EXPECT_NEAR(after[0].degreeMinutesBelow, before[0].degreeMinutesBelow, 1e-3);
    EXPECT_NEAR(after[0].drift.rate.celsiusPerHour(), before[0].drift.rate.celsiusPerHour(), 1e-4);
    EXPECT_EQ(after[0].excursions.size(), before[0].excursions.size());
}

} // namespace
} // namespace ringhold
