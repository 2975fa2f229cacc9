#include "core/cones/climb_shown.h"
#include "core/cones/future_temperature.h"
#include "core/kiln/chance.h"

#include <gsl/gsl_fit.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace ringhold {
namespace {

const Instant start{std::chrono::hours(492000)};

TEST(ClimbShown, IsTheLeastSquaresSlopeOfTheLastTwentyMinutes) {
    std::mt19937_64 random(5);
    Curve curve;
    std::vector<double> hours;
    std::vector<double> celsius;
    for (int i = 0; i <= 360; ++i) { // an hour, a reading each 10 s
        const double noise = static_cast<double>(random() % 1000) / 500 - 1;
        const double t_C = 1000 + 70.0 * (i - 200) / 360 + noise;
        curve.push_back({start + std::chrono::seconds(10 * i), Temperature::fromCelsius(t_C)});
        if (i >= 240) {
            hours.push_back(i / 360.0);
            celsius.push_back(t_C);
        }
    }
    double c0 = 0;
    double c1 = 0;
    double cov00 = 0;
    double cov01 = 0;
    double cov11 = 0;
    double sum = 0;
    gsl_fit_linear(hours.data(), 1, celsius.data(), 1, hours.size(), &c0, &c1, &cov00, &cov01, &cov11, &sum);
    const auto shown = climbShownAtEnd(curve);
    ASSERT_TRUE(shown);
    EXPECT_NEAR(shown->rate.celsiusPerHour(), c1, 1e-6);
    EXPECT_GE(shown->rateSd.celsiusPerHour(), std::sqrt(cov11) * 0.999);
    EXPECT_LT(shown->rateSd.celsiusPerHour(), std::sqrt(cov11) * 1.5); // white noise: little autocorrelation
    EXPECT_EQ(shown->readings, 121);
    EXPECT_NEAR(shown->temperature.celsius(), 1000 + 70.0 * 160 / 360, 0.7);
}

/// A stall of 15 min in a climb at 60 °C/h, read each 10 s with 0.7 °C of noise.
Curve stalled(double lastMinute) {
    Chance noise(3);
    Curve curve;
    for (double m = 0; m <= lastMinute; m += 1 / 6.0)
        curve.push_back(
            {Instant{std::chrono::hours(492000)} + durationFromMinutes(m),
             Temperature::fromCelsius(1100 + m - std::clamp(m - 60, 0.0, 15.0) + 0.7 * noise.normal())});
    return curve;
}

TEST(ClimbShown, KnowsARateThatHasJustChanged) {
    const auto before = climbShownSinceChange(stalled(59));
    ASSERT_TRUE(before);
    EXPECT_FALSE(before->changed);
    EXPECT_NEAR(before->rate.celsiusPerHour(), 60, 3);
    const auto within = climbShownSinceChange(stalled(71));
    ASSERT_TRUE(within && within->changed);
    EXPECT_NEAR(within->rate.celsiusPerHour(), 0, 8);
    EXPECT_NEAR(within->changed->before.celsiusPerHour(), 60, 3);
    EXPECT_NEAR(inMinutes(within->changed->at - stalled(0)[0].at), 60, 3);
    const auto after = climbShownSinceChange(stalled(84));
    ASSERT_TRUE(after && after->changed);
    EXPECT_NEAR(after->rate.celsiusPerHour(), 60, 10) << "the stall is over: it must not count";
}

TEST(ClimbShown, DoesNotTakeNoiseForAChange) {
    int changed = 0;
    for (unsigned seed = 1; seed <= 100; ++seed) {
        Chance noise(seed);
        Curve curve;
        double wander = 0;
        for (double m = 0; m <= 60; m += 0.5) {
            wander = 0.8 * wander + 0.42 * noise.normal(); // neighbours err together, sd 0.7 °C
            curve.push_back({Instant{std::chrono::hours(492000)} + durationFromMinutes(m),
                             Temperature::fromCelsius(1100 + m + wander)});
        }
        changed += climbShownSinceChange(curve)->changed.has_value();
    }
    EXPECT_LE(changed, 3);
}

TEST(FutureTemperature, OfAKilnThatHasSlowedMayRecover) {
    const Instant now{std::chrono::hours(492000)};
    ClimbShown shown{now, Temperature::fromCelsius(1200), Rate::fromCelsiusPerHour(10),
                     Rate::fromCelsiusPerHour(1), 60};
    EXPECT_EQ(climbOnAsShown(shown, std::nullopt).cases.size(), 5U);
    shown.changed = RateChange{now - std::chrono::minutes(10), Rate::fromCelsiusPerHour(60)};
    const auto future = climbOnAsShown(shown, std::nullopt);
    double weight = 0, mean_C = 0;
    for (const auto& one : future.cases) {
        weight += one.weight;
        mean_C += one.weight * temperatureAt(one.curve, now + std::chrono::hours(1)).celsius();
        EXPECT_EQ(one.curve.front().at, now);
        EXPECT_GE(one.curve.back().at, now + forecastHorizon);
    }
    EXPECT_NEAR(weight, 1, 1e-9);
    EXPECT_GT(mean_C, 1225);
    EXPECT_LT(mean_C, 1255);
    shown.changed->before = Rate::fromCelsiusPerHour(5); // it has quickened
    EXPECT_EQ(climbOnAsShown(shown, std::nullopt).cases.size(), 5U);
}

TEST(ClimbShown, MakesDoWithTwoTypedReadings) {
    const Curve curve{{start, Temperature::fromCelsius(1000)},
                      {start + std::chrono::minutes(45), Temperature::fromCelsius(1045)}};
    const auto shown = climbShownAtEnd(curve);
    ASSERT_TRUE(shown);
    EXPECT_NEAR(shown->rate.celsiusPerHour(), 60, 1e-9);
    EXPECT_EQ(shown->temperature.celsius(), 1045);
    EXPECT_FALSE(climbShownAtEnd({curve.front()}));
    EXPECT_FALSE(climbShownAtEnd({}));
}

TEST(FutureTemperature, KeepsMeanAndSpreadOfTheRate) {
    const auto future = climbOn(start, Temperature::fromCelsius(1200), Rate::fromCelsiusPerHour(60),
                                Rate::fromCelsiusPerHour(5), std::nullopt);
    double weight = 0;
    double mean = 0;
    double square = 0;
    for (const auto& c : future.cases) {
        const double rate = temperatureAt(c.curve, start + std::chrono::hours(1)).celsius() - 1200;
        weight += c.weight;
        mean += c.weight * rate;
        square += c.weight * rate * rate;
    }
    EXPECT_NEAR(weight, 1, 1e-12);
    EXPECT_NEAR(mean, 60, 1e-3);
    EXPECT_NEAR(std::sqrt(square - mean * mean), 5, 1e-3);
}

TEST(FutureTemperature, StopsAtTheTopAndNeverClimbsBack) {
    const auto top = climbOn(start, Temperature::fromCelsius(1250), Rate::fromCelsiusPerHour(60), {},
                             Temperature::fromCelsius(1262));
    const auto above = climbOn(start, Temperature::fromCelsius(1270), Rate::fromCelsiusPerHour(60), {},
                               Temperature::fromCelsius(1262));
    const auto falling = climbOn(start, Temperature::fromCelsius(1270), Rate::fromCelsiusPerHour(-200), {},
                                 Temperature::fromCelsius(1262));
    const Instant later = start + std::chrono::hours(20);
    EXPECT_NEAR(temperatureAt(top.cases[2].curve, later).celsius(), 1262, 1e-9);
    EXPECT_NEAR(temperatureAt(above.cases[2].curve, later).celsius(), 1270, 1e-9);
    EXPECT_NEAR(temperatureAt(falling.cases[2].curve, later).celsius(), 20, 1e-9);
}

} // namespace
} // namespace ringhold
