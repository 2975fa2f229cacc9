// Curves to test with: from corners, read at a spacing, with noise.
#pragma once

#include "core/units/curve.h"

#include <cmath>
#include <random>
#include <utility>
#include <vector>

namespace ringhold::test {

inline const Instant midnight = Instant(std::chrono::hours(24 * 365 * 56));

inline Instant atMinute(double minute) {
    return midnight + durationFromMinutes(minute);
}
inline double minuteOf(Instant at) {
    return inMinutes(at - midnight);
}
inline Temperature celsius(double degrees) {
    return Temperature::fromCelsius(degrees);
}
inline TemperatureDifference degreesC(double degrees) {
    return TemperatureDifference::fromCelsius(degrees);
}

/// Through the corners (minute, °C).
inline Curve curveOf(const std::vector<std::pair<double, double>>& corners) {
    Curve curve;
    for (const auto& [minute, degrees] : corners)
        curve.push_back({atMinute(minute), celsius(degrees)});
    return curve;
}

/// The curve as an instrument reads it every so often, from its first point to its last.
inline Curve readEvery(const Curve& curve, Duration spacing) {
    Curve readings;
    for (Instant at = curve.front().at; at <= curve.back().at; at += spacing)
        readings.push_back({at, temperatureAt(curve, at)});
    return readings;
}

/// With noise of a standard deviation added to each reading, each keeping `memory` of the one before (AR(1)).
inline Curve noisy(Curve readings, double sd_C, double memory, std::mt19937& random) {
    std::normal_distribution<double> normal;
    double noise = normal(random);
    for (auto& point : readings) {
        point.temperature = point.temperature + degreesC(sd_C * noise);
        noise = memory * noise + std::sqrt(1 - memory * memory) * normal(random);
    }
    return readings;
}

} // namespace ringhold::test
