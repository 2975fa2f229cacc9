#include "core/cones/future_temperature.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace ringhold {

namespace {

/// Five-point Gauss-Hermite quadrature for a standard normal variable (Abramowitz and Stegun, Handbook of
/// Mathematical Functions, table 25.10, abscissae times the square root of 2, weights over that of pi).
constexpr std::array normalNodes{
    RateNode{-2.8569700138728056, 0.011257411327720691}, RateNode{-1.3556261799742659, 0.22207592200561266},
    RateNode{0.0, 0.53333333333333333}, RateNode{1.3556261799742659, 0.22207592200561266},
    RateNode{2.8569700138728056, 0.011257411327720691}};

constexpr double coldest_C = 20;
constexpr double hottest_C = 1800;

Curve climbAt(Instant now, Temperature from, double rate_C_per_h, double end_C) {
    Curve curve{{now, from}};
    const Instant horizon = now + forecastHorizon;
    const double hours = rate_C_per_h != 0 ? (end_C - from.celsius()) / rate_C_per_h : 0.0;
    if (hours > 0 && hours < inHours(forecastHorizon)) {
        curve.push_back({now + durationFromHours(hours), Temperature::fromCelsius(end_C)});
        curve.push_back({horizon, Temperature::fromCelsius(end_C)});
    } else {
        const double rise_C = hours > 0 ? rate_C_per_h * inHours(forecastHorizon) : 0.0;
        curve.push_back({horizon, from + TemperatureDifference::fromCelsius(rise_C)});
    }
    return curve;
}

constexpr std::array staysSo{SlowedCourse{1, std::nullopt}};
constexpr std::array mayRecover{SlowedCourse{0.4, std::nullopt}, SlowedCourse{0.3, std::chrono::minutes(5)},
                                SlowedCourse{0.3, std::chrono::minutes(18)}};
constexpr double slowed = 0.9;
constexpr double leastClimb_C_per_h = 10;

} // namespace

std::span<const SlowedCourse> coursesAfter(const ClimbShown& shown) {
    const bool slow = shown.changed && shown.changed->before.celsiusPerHour() > leastClimb_C_per_h &&
                      shown.rate.celsiusPerHour() > -leastClimb_C_per_h &&
                      shown.rate.celsiusPerHour() < slowed * shown.changed->before.celsiusPerHour();
    return slow ? std::span<const SlowedCourse>(mayRecover) : std::span<const SlowedCourse>(staysSo);
}

FutureTemperature climbOnAsShown(const ClimbShown& shown, std::optional<Temperature> top) {
    FutureTemperature future;
    for (const auto& course : coursesAfter(shown)) {
        const auto slow = climbOn(shown.at, shown.temperature, shown.rate, aheadSd(shown), top);
        if (!course.recovers) {
            for (const auto& one : slow.cases)
                future.cases.push_back({one.weight * course.weight, one.curve});
            continue;
        }
        const Instant then = shown.at + *course.recovers;
        const auto there = temperatureAt(slow.cases[slow.cases.size() / 2].curve, then);
        ClimbShown again = shown;
        again.rate = shown.changed->before;
        auto quick = climbOn(then, there, again.rate, aheadSd(again), top);
        for (auto& one : quick.cases) {
            one.curve.insert(one.curve.begin(), {shown.at, shown.temperature});
            future.cases.push_back({one.weight * course.weight, std::move(one.curve)});
        }
    }
    return future;
}

std::span<const RateNode> rateNodes() {
    return normalNodes;
}

FutureTemperature climbOn(Instant now, Temperature from, Rate rate, Rate rateSd,
                          std::optional<Temperature> top) {
    FutureTemperature future;
    for (const auto& node : normalNodes) {
        const double rate_C_per_h = rate.celsiusPerHour() + node.z * rateSd.celsiusPerHour();
        // A top below the present temperature means: no higher than now.
        const double ceiling_C = top ? std::max(top->celsius(), from.celsius()) : hottest_C;
        future.cases.push_back(
            {node.weight, climbAt(now, from, rate_C_per_h, rate_C_per_h < 0 ? coldest_C : ceiling_C)});
    }
    return future;
}

Rate aheadSd(const ClimbShown& shown) {
    return Rate::fromCelsiusPerHour(
        std::hypot(shown.rateSd.celsiusPerHour(), 0.05 * shown.rate.celsiusPerHour()));
}

} // namespace ringhold
