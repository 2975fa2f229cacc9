#include "core/watch/control_chart.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <vector>

namespace ringhold {
namespace {

// NIST/SEMATECH e-Handbook 6.3.2.4, the worked example: its values, its averages, its limits.
TEST(EwmaChart, GoesThroughThePublishedExample) {
    constexpr std::array x{52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5,
                           49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};
    constexpr std::array z{50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33,
                           50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99};
    EwmaChart chart({.target = 50, .sd = 2.0539, .weight = 0.3, .width = 3});
    EXPECT_NEAR(chart.limits().high, 52.5884, 5e-5);
    EXPECT_NEAR(chart.limits().low, 47.4115, 1.5e-4); // printed .4115, symmetrical would be .4116
    for (std::size_t i = 0; i < x.size(); ++i) {
        EXPECT_TRUE(chart.take(x[i])) << i;
        EXPECT_NEAR(chart.average(), z[i], 0.0051) << i;
    }
}

TEST(EwmaChart, LimitsWidenToTheSettledOnes) {
    EwmaChart chart({.target = 50, .sd = 2, .weight = 0.3, .width = 3});
    EXPECT_EQ(chart.limitsSoFar().high, 50);
    chart.take(50);
    EXPECT_NEAR(chart.limitsSoFar().high, 50 + 3 * 2 * 0.3, 1e-9); // the first z has sd weight x sd
    chart.take(50);
    EXPECT_NEAR(chart.limitsSoFar().low, 50 - 3 * 2 * std::hypot(0.3, 0.3 * 0.7), 1e-9);
    for (int i = 0; i < 50; ++i)
        chart.take(50);
    EXPECT_NEAR(chart.limitsSoFar().high, chart.limits().high, 1e-9);
    chart.reset();
    EXPECT_EQ(chart.limitsSoFar().high, 50);
}

TEST(EwmaChart, SignalsAShift) {
    EwmaChart chart({.target = 0, .sd = 1, .weight = 0.2, .width = 3});
    EXPECT_TRUE(chart.take(4.9)); // 0.98 of 1
    EXPECT_FALSE(chart.take(4.9));
    chart.reset();
    EXPECT_EQ(chart.average(), 0);
    EXPECT_FALSE(chart.take(-5.1));
}

// NIST/SEMATECH e-Handbook 6.3.2.3, the worked example: out from observation 14 on.
TEST(CusumChart, GoesThroughThePublishedExample) {
    constexpr std::array x{324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125,
                           324.525, 325.225, 324.600, 324.625, 325.150, 328.325, 327.250,
                           327.825, 328.500, 326.675, 327.775, 326.875, 328.350};
    CusumChart chart({.target = 325, .slack = 0.3175, .limit = 4.1959});
    for (std::size_t i = 0; i < x.size(); ++i) {
        EXPECT_EQ(chart.take(x[i]), i + 1 < 14) << i + 1;
        EXPECT_FALSE(chart.isLow()) << i + 1;
        if (i + 1 == 14) {
            EXPECT_NEAR(chart.upper(), 4.9400, 1e-9);
        }
    }
}

TEST(CusumChart, WatchesBothSides) {
    CusumChart chart({.target = 0, .slack = 0.5, .limit = 4});
    EXPECT_TRUE(chart.take(-3));
    EXPECT_NEAR(chart.lower(), 2.5, 1e-12);
    EXPECT_EQ(chart.upper(), 0);
    EXPECT_FALSE(chart.take(-3));
    EXPECT_TRUE(chart.isLow());
    chart.reset();
    EXPECT_TRUE(chart.take(0));
}

/// Mean number of normal values of standard deviation 1, each keeping `memory` of the one before, until the
/// chart signals.
template <class Chart>
double meanRun(Chart chart, double memory, int runs, std::mt19937& random) {
    std::normal_distribution<double> normal;
    double values = 0;
    for (int i = 0; i < runs; ++i) {
        chart.reset();
        double value = normal(random);
        for (++values; chart.take(value); ++values)
            value = memory * value + std::sqrt(1 - memory * memory) * normal(random);
    }
    return values / runs;
}

/// The same for one side, by the Markov chain of Brook and Evans (Biometrika 59, 1972, 539), cells of equal
/// width.
double chainRun(double slack, double limit, int cells) {
    const auto below = [](double v) { return 0.5 * std::erfc(-v / std::sqrt(2.0)); };
    const double width = 2 * limit / (2 * cells - 1);
    std::vector<double> run(static_cast<std::size_t>(cells), 1);
    for (double change = 1; change > 1e-7;) { // run = 1 + P run, iterated
        change = 0;
        for (int i = 0; i < cells; ++i) {
            double next = 1 + run[0] * below((0.5 - i) * width + slack);
            for (int j = 1; j < cells; ++j)
                next += run[static_cast<std::size_t>(j)] *
                        (below((j - i + 0.5) * width + slack) - below((j - i - 0.5) * width + slack));
            change = std::max(change, std::abs(next - run[static_cast<std::size_t>(i)]));
            run[static_cast<std::size_t>(i)] = next;
        }
    }
    return run[0];
}

struct FalseAlarm {
    double limit;
    double run; ///< values to a false alarm, both sides watched, slack 0.5
};

class CusumRunLength : public testing::TestWithParam<FalseAlarm> {};

TEST_P(CusumRunLength, IsThePublishedOne) {
    constexpr int runs = 8000;
    std::mt19937 random(1954);
    const double simulated = meanRun(CusumChart({0, 0.5, GetParam().limit}), 0, runs, random);
    EXPECT_NEAR(simulated / GetParam().run, 1, 4 / std::sqrt(runs)); // four standard errors
    EXPECT_NEAR(chainRun(0.5, GetParam().limit, 40) / 2 / GetParam().run, 1, 0.01);
}

// The published run lengths for slack 0.5: 168 with limit 4, 465 with limit 5.
INSTANTIATE_TEST_SUITE_P(Published, CusumRunLength, testing::Values(FalseAlarm{4, 168}, FalseAlarm{5, 465}));

// An EWMA tuned to 500 falls to 33 when values hang together with phi 0.8 (the width 2.962 for weight 0.2 is
// remembered, not seen; the run of 500 confirms it).
TEST(EwmaChart, RunsShortOnAutocorrelatedValues) {
    constexpr int runs = 4000;
    std::mt19937 random(7);
    const EwmaChart chart({.target = 0, .sd = 1, .weight = 0.2, .width = 2.962});
    EXPECT_NEAR(meanRun(chart, 0, runs, random) / 500, 1, 4 / std::sqrt(runs));
    EXPECT_NEAR(meanRun(chart, 0.8, runs, random) / 33, 1, 4 / std::sqrt(runs));
}

} // namespace
} // namespace ringhold
