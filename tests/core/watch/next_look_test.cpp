#include "core/watch/next_look.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

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

} // namespace
} // namespace ringhold::test
