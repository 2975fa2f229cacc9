#include "core/report/hold_words.h"
#include "core/watch/hold_arrival.h"
#include "tests/core/watch/curve_maker.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace test;
using namespace std::chrono_literals;
using testing::HasSubstr;

struct Case {
    std::vector<std::pair<double, double>> corners; ///< minute, °C
    double arrived_min;
    double overshoot_C;
    std::optional<double> settling_min;
};

class Arrives : public testing::TestWithParam<Case> {};

TEST_P(Arrives, AtAHoldOf1090PlusOrMinus6) {
    const auto& c = GetParam();
    const auto holds = findHolds(readEvery(curveOf(c.corners), 10s), {celsius(1090), degreesC(6)});
    ASSERT_EQ(holds.size(), 1u);
    ASSERT_TRUE(holds[0].arrival);
    const auto& arrival = *holds[0].arrival;
    EXPECT_NEAR(minuteOf(arrival.arrived), c.arrived_min, 0.2);
    EXPECT_NEAR(arrival.overshoot.celsius(), c.overshoot_C, 0.3);
    ASSERT_EQ(arrival.settling.has_value(), c.settling_min.has_value());
    if (c.settling_min) {
        EXPECT_NEAR(inMinutes(*arrival.settling), *c.settling_min, 0.3);
    }
}

INSTANTIATE_TEST_SUITE_P(
    Several, Arrives,
    testing::Values(
        // from above, 4 °C too low after 2 min, back within 3 °C a quarter of the way of 8 min later
        Case{{{0, 1150}, {60, 1090}, {64, 1086}, {72, 1090}, {180, 1090}}, 54, 4, 12},
        Case{{{0, 1030}, {60, 1090}, {180, 1090}}, 54, 0, 3},
        Case{{{0, 1030}, {66, 1096}, {96, 1090}, {180, 1090}}, 54, 6, 27},
        Case{{{0, 1090}, {60, 1090}}, 0, 0, 0},
        // never 10 min in a row near the middle
        Case{{{0, 1085}, {8, 1095}, {16, 1085}, {24, 1095}, {32, 1085}, {40, 1095}}, 0, 5, {}}));

TEST(HoldArrival, IsToldInWords) {
    const auto hold = findHolds(readEvery(curveOf({{0, 1030}, {66, 1096}, {96, 1090}, {180, 1090}}), 10s),
                                {celsius(1090), degreesC(6)})
                          .front();
    // the topmost reading counts as a spike
    EXPECT_EQ(arrivalWords(*hold.arrival, {}),
              "In the band at 00:54, 5.9 °C past the hold, at rest after 27 min.");
    EXPECT_EQ(uniformityWords(hold, {}),
              "Steady within ± 6 °C, class 2 of furnace practice, by this one probe.");
    EXPECT_EQ(fewReadingsWords(hold), "");
}

TEST(HoldArrival, SaysHowFewTypedReadingsWere) {
    const auto hold =
        findHolds(readEvery(curveOf({{0, 1090}, {180, 1090}}), 15min), {celsius(1090), degreesC(6)}).front();
    EXPECT_EQ(
        fewReadingsWords(hold),
        "Known from 13 readings only, as far as 15 min apart: what the kiln did between them is not known.");
}

} // namespace
} // namespace ringhold
