#include "core/thermocouple/tolerance.h"

#include <gtest/gtest.h>

#include <limits>

namespace ringhold {
namespace {

using enum ThermocoupleType;
using enum ToleranceClass;

std::optional<Tolerance> at(ThermocoupleType type, ToleranceClass toleranceClass, double t_C) {
    return tolerance(type, toleranceClass, Temperature::fromCelsius(t_C));
}

struct Case {
    ThermocoupleType type;
    ToleranceClass toleranceClass;
    double t_C;
    double limit_C;
    bool extrapolated = false;
};

class ThermocoupleTolerances : public testing::TestWithParam<Case> {};

TEST_P(ThermocoupleTolerances, AreThoseOfTheStandard) {
    const auto& c = GetParam();
    const auto found = at(c.type, c.toleranceClass, c.t_C);
    ASSERT_TRUE(found) << name(c.type) << ' ' << c.t_C;
    EXPECT_NEAR(found->limit.celsius(), c.limit_C, 1e-9) << name(c.type) << ' ' << c.t_C;
    EXPECT_EQ(found->extrapolated, c.extrapolated) << name(c.type) << ' ' << c.t_C;
}

// IEC 60584-1 and ASTM E230 at stoneware temperatures, as quoted in several makers' tables.
INSTANTIATE_TEST_SUITE_P(Hot, ThermocoupleTolerances,
                         testing::Values(Case{K, iec1, 1000, 4.0}, Case{N, iec1, 1000, 4.0},
                                         Case{K, iec1, 1100, 4.4, true}, Case{K, iec2, 1000, 7.5},
                                         Case{K, iec2, 1100, 8.25}, Case{N, iec2, 1200, 9.0},
                                         Case{K, iec2, 1260, 9.45, true}, Case{K, iec2, 1300, 9.75, true},
                                         Case{K, astmStandard, 1000, 7.5}, Case{K, astmStandard, 1100, 8.25},
                                         Case{N, astmStandard, 1200, 9.0}, Case{K, astmStandard, 1260, 9.45},
                                         Case{K, astmStandard, 1300, 9.75, true},
                                         Case{K, astmSpecial, 1000, 4.0}, Case{K, astmSpecial, 1100, 4.4},
                                         Case{N, astmSpecial, 1200, 4.8}, Case{K, astmSpecial, 1260, 5.04}));
INSTANTIATE_TEST_SUITE_P(
    HotNobleMetal, ThermocoupleTolerances,
    testing::Values(Case{R, iec1, 1000, 1.0}, Case{S, iec1, 1100, 1.0}, Case{R, iec1, 1200, 1.3},
                    Case{S, iec1, 1260, 1.48}, Case{R, iec1, 1300, 1.6}, Case{S, iec2, 1000, 2.5},
                    Case{R, iec2, 1100, 2.75}, Case{S, iec2, 1200, 3.0}, Case{R, iec2, 1260, 3.15},
                    Case{S, iec2, 1300, 3.25}, Case{S, iec2, 1650, 4.125, true},
                    Case{R, astmStandard, 1000, 2.5}, Case{S, astmStandard, 1260, 3.15},
                    Case{R, astmStandard, 1300, 3.25}, Case{R, astmSpecial, 1000, 1.0},
                    Case{S, astmSpecial, 1260, 1.26}, Case{R, astmSpecial, 1300, 1.3},
                    Case{S, astmSpecial, 1500, 1.5, true}, Case{B, iec2, 1000, 2.5},
                    Case{B, iec2, 1260, 3.15}, Case{B, iec2, 1300, 3.25}, Case{B, iec3, 1000, 5.0},
                    Case{B, iec3, 1260, 6.3}, Case{B, iec3, 1300, 6.5}, Case{B, astmStandard, 1260, 6.3},
                    Case{B, astmSpecial, 1260, 3.15}, Case{B, iec2, 1750, 4.375, true}));
// Where the fixed limit is the greater, and the sub-zero side.
INSTANTIATE_TEST_SUITE_P(Cool, ThermocoupleTolerances,
                         testing::Values(Case{K, iec1, 100, 1.5}, Case{K, iec2, 100, 2.5},
                                         Case{K, iec2, -40, 2.5}, Case{K, iec2, 400, 3.0},
                                         Case{K, iec3, -200, 3.0}, Case{N, iec3, 20, 2.5},
                                         Case{K, astmStandard, 200, 2.2}, Case{K, astmSpecial, 200, 1.1},
                                         Case{S, iec1, 20, 1.0}, Case{R, iec2, 500, 1.5},
                                         Case{S, astmStandard, 500, 1.5}, Case{S, astmSpecial, 500, 0.6},
                                         Case{B, iec3, 600, 4.0}, Case{B, iec2, 600, 1.5}));
// E, J and T: IEC 60584-2:1982 and ASTM E230-12 as quoted in makers' tables.
INSTANTIATE_TEST_SUITE_P(OtherBaseMetal, ThermocoupleTolerances,
                         testing::Values(Case{E, iec1, 300, 1.5}, Case{E, iec1, 800, 3.2},
                                         Case{E, iec2, 900, 6.75}, Case{E, iec2, 950, 7.125, true},
                                         Case{E, iec3, -200, 3.0}, Case{E, astmStandard, 200, 1.7},
                                         Case{E, astmStandard, 870, 4.35}, Case{E, astmSpecial, 200, 1.0},
                                         Case{E, astmSpecial, 870, 3.48}, Case{J, iec1, 750, 3.0},
                                         Case{J, iec2, 333, 2.5}, Case{J, iec2, 750, 5.625},
                                         Case{J, astmStandard, 760, 5.7}, Case{J, astmSpecial, 200, 1.1},
                                         Case{T, iec1, 100, 0.5}, Case{T, iec1, 350, 1.4},
                                         Case{T, iec2, 100, 1.0}, Case{T, iec2, 350, 2.625},
                                         Case{T, iec3, -100, 1.5}, Case{T, astmStandard, 100, 1.0},
                                         Case{T, astmStandard, 370, 2.775}, Case{T, astmSpecial, 370, 1.48}));

class NoThermocoupleTolerance : public testing::TestWithParam<Case> {};

TEST_P(NoThermocoupleTolerance, WhereTheStandardHasNone) {
    const auto& c = GetParam();
    EXPECT_FALSE(at(c.type, c.toleranceClass, c.t_C)) << name(c.type) << ' ' << c.t_C;
}

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

INSTANTIATE_TEST_SUITE_P(All, NoThermocoupleTolerance,
                         testing::Values(Case{B, iec1, 1000, 0}, Case{R, iec3, 1000, 0},
                                         Case{S, iec3, 1000, 0}, Case{J, iec3, 0, 0}, Case{K, iec3, 1000, 0},
                                         Case{K, iec2, -41, 0}, Case{B, iec2, 599, 0},
                                         Case{B, astmStandard, 800, 0}, Case{K, astmStandard, -1, 0},
                                         Case{K, iec2, 1373, 0}, Case{K, iec2, nan, 0}));

} // namespace
} // namespace ringhold
