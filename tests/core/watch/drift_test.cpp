#include "core/watch/drift.h"
#include "tests/core/watch/curve_maker.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_fit.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace test;
using std::chrono::milliseconds;
using std::chrono::minutes;
using std::chrono::seconds;

struct Fit {
    double slope;
    double slopeError;
};

/// The GNU Scientific Library's straight line through readings, hours against °C.
Fit gslFit(const Curve& readings) {
    std::vector<double> hours, degrees;
    for (const auto& point : readings) {
        hours.push_back(minuteOf(point.at) / 60);
        degrees.push_back(point.temperature.celsius());
    }
    double offset = 0, slope = 0, cov00 = 0, cov01 = 0, cov11 = 0, squares = 0;
    gsl_fit_linear(hours.data(), 1, degrees.data(), 1, hours.size(), &offset, &slope, &cov00, &cov01, &cov11,
                   &squares);
    return {slope, std::sqrt(cov11)};
}

TEST(Drift, OfAStraightLineIsItsSlopeForSure) {
    const Drift drift = driftOf(readEvery(curveOf({{0, 1085}, {120, 1091}}), seconds(10)));
    EXPECT_NEAR(drift.rate.celsiusPerHour(), 3, 1e-9);
    ASSERT_TRUE(drift.interval90);
    EXPECT_NEAR(drift.interval90->low.celsiusPerHour(), 3, 1e-4);
    EXPECT_NEAR(drift.interval90->high.celsiusPerHour(), 3, 1e-4);
}

TEST(Drift, OfEvenReadingsIsPlainLeastSquares) {
    std::mt19937 random(3);
    const Curve line = curveOf({{0, 1088}, {240, 1094}});
    for (const Duration spacing : {seconds(1), seconds(10), seconds(60)}) {
        const Curve readings = noisy(readEvery(line, spacing), 1, 0, random);
        EXPECT_NEAR(driftOf(readings).rate.celsiusPerHour(), gslFit(readings).slope, 0.01);
    }
}

TEST(Drift, OfUnevenReadingsIsThatOfTheLineThroughThem) {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> gap(0.1, 9), degrees(1080, 1100);
    Curve curve;
    for (double minute = 0; minute < 180; minute += gap(random))
        curve.push_back({atMinute(minute), celsius(degrees(random))});
    EXPECT_NEAR(driftOf(curve).rate.celsiusPerHour(), gslFit(readEvery(curve, milliseconds(500))).slope,
                2e-3);
}

TEST(Drift, IntervalIsTheTextbookOneForDeviationsThatDoNotHangTogether) {
    // 60 blocks of 4 min, each at its own level (ramps of 1 s between), deviations that change sign from
    // block to block: no positive correlation, hence 58 degrees of freedom.
    Curve curve, blocks;
    for (int i = 0; i < 60; ++i) {
        const double degrees = 1090 + 0.02 * i + (i % 2 ? 1 : -1) * (1 + 0.3 * std::sin(i));
        curve.push_back({atMinute(4 * i) + milliseconds(500), celsius(degrees)});
        for (double minute = 4 * i + 0.5; minute < 4 * i + 4; minute += 0.5)
            curve.push_back({atMinute(minute), celsius(degrees)});
        curve.push_back({atMinute(4 * i + 4) - milliseconds(500), celsius(degrees)});
        blocks.push_back({atMinute(4 * i + 2), celsius(degrees)});
    }
    const Drift drift = driftOf(curve);
    const Fit fit = gslFit(blocks);
    ASSERT_TRUE(drift.interval90);
    const double margin = drift.interval90->high.celsiusPerHour() - drift.rate.celsiusPerHour();
    EXPECT_NEAR(drift.rate.celsiusPerHour(), fit.slope, 1e-3);
    EXPECT_NEAR(margin / (gsl_cdf_tdist_Pinv(0.95, 58) * fit.slopeError), 1, 0.01);
}

TEST(Drift, IntervalWidensWhenDeviationsHangTogether) {
    std::mt19937 random(17);
    const Curve flat = readEvery(curveOf({{0, 1090}, {240, 1090}}), seconds(10));
    const auto meanWidth = [&](double memory) {
        double sum = 0;
        for (int i = 0; i < 20; ++i) {
            const auto interval = driftOf(noisy(flat, 1, memory, random)).interval90;
            sum += interval->high.celsiusPerHour() - interval->low.celsiusPerHour();
        }
        return sum / 20;
    };
    // The variance of a mean of AR(1) values grows by (1 + phi) / (1 - phi): ninefold at 0.8, so 3 times the
    // width.
    EXPECT_NEAR(meanWidth(0.8) / meanWidth(0), 3, 0.4);
}

class DriftInterval : public testing::TestWithParam<double> {};

TEST_P(DriftInterval, HoldsTheTruthInNineOfTen) {
    constexpr int runs = 400;
    std::mt19937 random(23);
    const Curve rising = readEvery(curveOf({{0, 1086}, {240, 1094}}), seconds(10)); // 2 °C/h
    int within = 0;
    for (int i = 0; i < runs; ++i) {
        const auto interval = driftOf(noisy(rising, 1, GetParam(), random)).interval90;
        ASSERT_TRUE(interval);
        within += interval->low.celsiusPerHour() <= 2 && interval->high.celsiusPerHour() >= 2;
    }
    EXPECT_GE(within, 0.84 * runs); // 90 % less four standard errors of 400 runs
    EXPECT_LE(within, 0.96 * runs);
}

INSTANTIATE_TEST_SUITE_P(Memory, DriftInterval, testing::Values(0.0, 0.8, 0.95));

TEST(Drift, SaysNoIntervalWhereItCannotTell) {
    EXPECT_FALSE(driftOf(curveOf({{0, 1090}, {30, 1091}, {60, 1090}})).interval90);
    EXPECT_NEAR(driftOf(curveOf({{0, 1090}, {60, 1092}})).rate.celsiusPerHour(), 2, 1e-9);
    // One slow swing, all of a piece: no way to know whether it goes on.
    Curve arc;
    for (int minute = 0; minute <= 60; ++minute)
        arc.push_back({atMinute(minute), celsius(1090 + 5 * std::sin(minute * 3.14159 / 60))});
    EXPECT_FALSE(driftOf(arc).interval90);
}

} // namespace
} // namespace ringhold
