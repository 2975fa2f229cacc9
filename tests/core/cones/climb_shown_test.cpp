#include "core/cones/climb_shown.h"
#include "core/cones/future_temperature.h"

#include <gsl/gsl_fit.h>
#include <gtest/gtest.h>

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
    for (int i = 0; i <= 360; ++i) { // an hour, a reading each 10 s; flat at first, then 70 °C/h
        const double noise = static_cast<double>(random() % 1000) / 500 - 1;
        const double t_C = 1000 + (i > 200 ? 70.0 * (i - 200) / 360 : 0.0) + noise;
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
