#include "core/watch/ring_count.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace test;
using std::chrono::milliseconds;
using std::chrono::minutes;
using std::chrono::seconds;
using Corners = std::vector<std::pair<double, double>>;

const RingLevels levels{celsius(1090), celsius(1050)};

// Growth hold from 60 min; down at 10 °C/min for 10 min, up at 8 °C/min for 9; twice; then it cools.
const Curve twoRings = curveOf({{0, 20},
                                {40, 1260},
                                {57, 1090},
                                {120, 1090},
                                {124, 1050},
                                {134, 1050},
                                {139, 1090},
                                {148, 1090},
                                {152, 1050},
                                {162, 1050},
                                {167, 1090},
                                {176, 1090},
                                {286, 100}});

void expectDwell(const Dwell& dwell, double start_min, double length_min, double mean_C, double within_min) {
    EXPECT_NEAR(minuteOf(dwell.start), start_min, within_min);
    EXPECT_NEAR(inMinutes(dwell.length), length_min, 2 * within_min);
    EXPECT_NEAR(dwell.mean.celsius(), mean_C, 8 * within_min);
}

TEST(CountRings, FindsTheCornersOfTwoRings) {
    for (const auto& [spacing, within_min] :
         {std::pair<Duration, double>{seconds(1), 0.01}, {seconds(10), 0.05}, {seconds(60), 0.3}}) {
        const auto rings = countRings(readEvery(twoRings, spacing), levels);
        ASSERT_EQ(rings.size(), 2u);
        expectDwell(rings[0].low, 124, 10, 1050, within_min);
        expectDwell(rings[0].high, 139, 9, 1090, within_min);
        expectDwell(rings[1].low, 152, 10, 1050, within_min);
        expectDwell(rings[1].high, 167, 9, 1090, within_min); // until the final cooling
    }
    EXPECT_EQ(countRings(twoRings, levels).size(), 2u); // the corners alone
}

TEST(CountRings, NeedsAHighAboveALowAndACurve) {
    EXPECT_TRUE(countRings({}, levels).empty());
    EXPECT_TRUE(countRings(curveOf({{0, 1090}}), levels).empty());
    EXPECT_TRUE(countRings(twoRings, {celsius(1050), celsius(1090)}).empty());
    EXPECT_TRUE(countRings(twoRings, {celsius(1090), celsius(1090)}).empty());
}

struct Case {
    const char* name;
    std::size_t count;
    Corners afterHold; ///< goes on from a growth hold of 1 h at 1090 that ends at minute 120
};

class RingCases : public testing::TestWithParam<Case> {};

TEST_P(RingCases, Count) {
    SCOPED_TRACE(GetParam().name);
    Corners corners{{0, 20}, {40, 1260}, {57, 1090}, {120, 1090}};
    corners.insert(corners.end(), GetParam().afterHold.begin(), GetParam().afterHold.end());
    const Curve curve = curveOf(corners);
    std::mt19937 random(29);
    for (const Duration spacing : {seconds(1), seconds(10), seconds(60), seconds(120)}) {
        EXPECT_EQ(countRings(readEvery(curve, spacing), levels).size(), GetParam().count);
        for (int i = 0; i < (spacing < seconds(10) ? 1 : 4); ++i)
            EXPECT_EQ(countRings(noisy(readEvery(curve, spacing), 1.5, 0, random), levels).size(),
                      GetParam().count);
    }
}

INSTANTIATE_TEST_SUITE_P(
    Practice, RingCases,
    testing::Values(
        Case{"no move", 0, {{200, 1090}, {300, 100}}},
        Case{"one", 1, {{125, 1050}, {135, 1050}, {140, 1090}, {150, 1090}, {250, 100}}},
        Case{"the log ends in the high", 1, {{125, 1050}, {135, 1050}, {140, 1090}, {150, 1090}}},
        Case{"the log ends in the low", 0, {{125, 1050}, {135, 1050}}},
        Case{"a low without a return", 0, {{125, 1050}, {140, 1050}, {240, 100}}},
        Case{"half a return", 0, {{125, 1050}, {135, 1050}, {138, 1068}, {150, 1068}, {250, 100}}},
        Case{"cooling straight down", 0, {{330, 100}}},
        Case{"low too warm by 16 C, a clear dwell", 1, {{123, 1066}, {133, 1066}, {136, 1090}, {146, 1090}}},
        Case{"low too cool by 16 C", 1, {{126, 1034}, {136, 1034}, {144, 1090}, {154, 1090}}},
        Case{"high too cool by 8 C after",
             1,
             {{125, 1050}, {135, 1050}, {139, 1082}, {149, 1082}, {199, 200}}},
        Case{"a slow return", 1, {{125, 1050}, {135, 1050}, {159, 1090}, {169, 1090}, {249, 200}}},
        Case{"twice as long a low", 1, {{125, 1050}, {145, 1050}, {150, 1090}, {160, 1090}, {250, 100}}},
        Case{"a sag of a third, long",
             0,
             {{123, 1076.7}, {150, 1076.7}, {153, 1090}, {200, 1090}, {290, 100}}},
        Case{"a door opened for a moment",
             0,
             {{120.3, 1045}, {122, 1085}, {125, 1090}, {200, 1090}, {290, 100}}},
        Case{"stepping down for good", 0, {{125, 1050}, {185, 1050}, {190, 1010}, {250, 1010}, {300, 100}}},
        Case{"cooled off and fired again", 0, {{300, 100}, {400, 1090}, {460, 1090}, {560, 100}}}));

TEST(CountRings, ArrivingFromThePeakIsNoRing) {
    // Overshoots downwards: a third of the way for long, or nearly to the low but without a stay.
    for (const Corners& arrival :
         {Corners{{0, 1260}, {20, 1076.7}, {30, 1076.7}, {33, 1090}, {120, 1090}},
          Corners{{0, 1260}, {20, 1060}, {24, 1090}, {120, 1090}}, Corners{{0, 1260}, {120, 1040}}})
        for (const Duration spacing : {seconds(1), seconds(10), seconds(60)})
            EXPECT_TRUE(countRings(readEvery(curveOf(arrival), spacing), levels).empty());
    // Nor is a hold at the low on the way up.
    EXPECT_TRUE(
        countRings(
            readEvery(
                curveOf(
                    {{0, 20}, {300, 1050}, {340, 1050}, {380, 1260}, {400, 1090}, {500, 1090}, {600, 200}}),
                seconds(10)),
            levels)
            .empty());
    // But straight to the low, a clear stay and up to the high is one.
    EXPECT_EQ(countRings(readEvery(curveOf({{0, 1260}, {25, 1050}, {35, 1050}, {40, 1090}, {100, 1090}}),
                                   seconds(10)),
                         levels)
                  .size(),
              1u);
}

TEST(CountRings, IgnoresSpikesOfOneReading) {
    Curve readings = readEvery(twoRings, seconds(60));
    for (const std::size_t i : {100u, 128u, 143u, 155u, 172u})
        readings[i].temperature = celsius(i % 2 ? 20 : 1372);
    const auto rings = countRings(readings, levels);
    ASSERT_EQ(rings.size(), 2u);
    expectDwell(rings[0].low, 124, 10, 1050, 0.5);
    expectDwell(rings[1].high, 167, 9, 1090, 0.5);
}

TEST(CountRings, TypedReadingsFiveMinutesApartWillDo) {
    for (int shift = 0; shift < 5; ++shift) {
        Curve typed = readEvery(twoRings, minutes(1));
        std::erase_if(typed, [shift](const CurvePoint& p) {
            return (static_cast<int>(std::lround(minuteOf(p.at))) + shift) % 5 != 0;
        });
        const auto rings = countRings(typed, levels);
        ASSERT_EQ(rings.size(), 2u) << shift;
        expectDwell(rings[0].low, 124, 10, 1050, 5);
    }
}

TEST(CountRings, CountsEachRingOnceAsTheFiringGoesOn) {
    const Curve readings = readEvery(twoRings, seconds(10));
    std::size_t before = 0;
    for (std::size_t n = 6 * 100; n <= readings.size(); n += 6) {
        const Curve soFar(readings.begin(), readings.begin() + static_cast<std::ptrdiff_t>(n));
        const std::size_t count = countRings(soFar, levels).size();
        const double minute = minuteOf(soFar.back().at);
        EXPECT_GE(count, before) << minute;
        // Three quarters of the way up at minutes 137.75 and 165.75; the high is reached at 139 and 167.
        EXPECT_LE(count, minute < 137.7 ? 0u : minute < 165.7 ? 1u : 2u) << minute;
        EXPECT_GE(count, minute < 139 ? 0u : minute < 167 ? 1u : 2u) << minute;
        before = count;
    }
    EXPECT_EQ(before, 2u);
}

TEST(CountRings, PointsAddedOnTheLineChangeLittle) {
    std::mt19937 random(31);
    const Curve sparse = noisy(readEvery(twoRings, seconds(30)), 1, 0, random);
    const Curve dense = readEvery(sparse, seconds(5));
    const auto before = countRings(sparse, levels), after = countRings(dense, levels);
    ASSERT_EQ(before.size(), 2u);
    ASSERT_EQ(after.size(), 2u);
    for (std::size_t i = 0; i < 2; ++i) {
        expectDwell(after[i].low, minuteOf(before[i].low.start), inMinutes(before[i].low.length),
                    before[i].low.mean.celsius(), 0.3);
        expectDwell(after[i].high, minuteOf(before[i].high.start), inMinutes(before[i].high.length),
                    before[i].high.mean.celsius(), 0.3);
    }
}

} // namespace
} // namespace ringhold
