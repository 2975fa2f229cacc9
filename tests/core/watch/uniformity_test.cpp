#include "core/watch/uniformity.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace test;
using std::chrono::seconds;

struct Case {
    double off_C; ///< one short spike in the middle of a level hold of 2 h, between two readings 10 s away
    int furnaceClass; ///< 0 for none
};

class UniformityClass : public testing::TestWithParam<Case> {};

// Classes of AMS2750, ours from its half widths: 1 to 6 are 3, 6, 8, 10, 14, 28 °C either way.
TEST_P(UniformityClass, IsTheNarrowestNotLeft) {
    for (const double sign : {-1.0, 1.0}) {
        Curve curve = readEvery(curveOf({{0, 1090}, {120, 1090}}), seconds(10));
        curve[360].temperature = celsius(1090 + sign * GetParam().off_C);
        const auto uniformity = uniformityOf(curve, celsius(1090), {atMinute(0), atMinute(120)});
        EXPECT_EQ(uniformity ? uniformity->furnaceClass : 0, GetParam().furnaceClass);
    }
}

INSTANTIATE_TEST_SUITE_P(Published, UniformityClass,
                         testing::Values(Case{0, 1}, Case{3, 1}, Case{3.01, 2}, Case{6, 2}, Case{6.01, 3},
                                         Case{8, 3}, Case{8.01, 4}, Case{10, 4}, Case{10.01, 5}, Case{14, 5},
                                         Case{14.01, 6}, Case{28, 6}, Case{28.01, 0}));

TEST(Uniformity, LeavesOutArrivalAndDeparture) {
    const Curve curve = curveOf({{0, 1096}, {6, 1090}, {110, 1090}, {122, 1084}});
    const auto uniformity = uniformityOf(curve, celsius(1090), {atMinute(0), atMinute(122)});
    ASSERT_TRUE(uniformity);
    EXPECT_EQ(uniformity->furnaceClass, 1);
    EXPECT_EQ(uniformity->eitherWay, degreesC(3));
    EXPECT_EQ(uniformity->stay.start, atMinute(3)); // 1093
    EXPECT_EQ(uniformity->stay.end, atMinute(116)); // 1087
}

TEST(Uniformity, DoesNotTakeALongWayOffForAnArrival) {
    const Curve curve = curveOf({{0, 1085}, {180, 1085}, {190, 1090}, {240, 1090}});
    const auto uniformity = uniformityOf(curve, celsius(1090), {atMinute(0), atMinute(240)});
    ASSERT_TRUE(uniformity);
    EXPECT_EQ(uniformity->furnaceClass, 2);
}

} // namespace
} // namespace ringhold
