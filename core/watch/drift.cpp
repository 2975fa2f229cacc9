#include "core/watch/drift.h"

#include "core/watch/curve_parts.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace ringhold {
namespace {

// 60 blocks hold the truth in nine of ten on white and autocorrelated noise, in more on a controller's
// cycling.
constexpr std::size_t mostBlocks = 60;
constexpr std::size_t fewestBlocks = 4;

struct Line {
    Instant middle;
    double mean_C;
    double slope_C_per_h;

    double at(Instant t) const { return mean_C + slope_C_per_h * inHours(t - middle); }
};

Line leastSquaresLine(const Curve& curve) {
    const Duration length = curve.back().at - curve.front().at;
    const Instant middle = curve.front().at + length / 2;
    const double mean_C = meanOf(curve).celsius();
    double products = 0; // integral of (time from the middle) (temperature from the mean), h2 °C
    for (std::size_t i = 1; i < curve.size(); ++i) {
        const double s = inHours(curve[i - 1].at - middle), t = inHours(curve[i].at - middle);
        const double u = curve[i - 1].temperature.celsius() - mean_C;
        const double v = curve[i].temperature.celsius() - mean_C;
        products += (t - s) * (2 * s * u + s * v + t * u + 2 * t * v) / 6;
    }
    return {middle, mean_C, products * 12 / std::pow(inHours(length), 3)};
}

std::vector<double> blockResiduals_C(const Curve& curve, const Line& line, std::size_t count) {
    std::vector<double> residuals;
    const Duration length = curve.back().at - curve.front().at;
    Instant start = curve.front().at;
    for (std::size_t i = 1; i <= count; ++i) {
        const Instant end = curve.front().at + length * static_cast<int>(i) / static_cast<int>(count);
        residuals.push_back(meanOf(cut(curve, start, end)).celsius() - line.at(start + (end - start) / 2));
        start = end;
    }
    return residuals;
}

double sumOfSquares(const std::vector<double>& values) {
    double sum = 0;
    for (const double v : values)
        sum += v * v;
    return sum;
}

double lag1(const std::vector<double>& values) {
    double sum = 0;
    for (std::size_t i = 1; i < values.size(); ++i)
        sum += values[i] * values[i - 1];
    return sum / sumOfSquares(values);
}

/// Student's t that 95 % lie below, by its expansion in 1/freedom (Abramowitz & Stegun 26.7.5): 0.4 % low at
/// 2 degrees of freedom, 5 % at 1.
double studentT95(double freedom) {
    return 1.644854 + (1.523795 + (1.420206 + (0.983016 + 0.433887 / freedom) / freedom) / freedom) / freedom;
}

/// Half the width of the slope's 90 % interval.
std::optional<double> margin_C_per_h(const std::vector<double>& residuals_C, double length_h) {
    const double squares = sumOfSquares(residuals_C);
    if (squares < 1e-12) // °C2: a straight line but for rounding
        return 0.0;
    const auto count = static_cast<double>(residuals_C.size());
    const double correlation = std::max(0.0, lag1(residuals_C));
    const double freedom = count * (1 - correlation) / (1 + correlation) - 2;
    if (freedom < 1)
        return std::nullopt;
    const double spread = (count - 1 / count) * length_h * length_h / 12; // of the blocks' middles, h2
    return studentT95(freedom) * std::sqrt(squares / freedom / spread);
}

RateInterval around(double rate, double margin) {
    return {Rate::fromCelsiusPerHour(rate - margin), Rate::fromCelsiusPerHour(rate + margin)};
}

} // namespace

Drift driftOf(const Curve& curve) {
    const Line line = leastSquaresLine(curve);
    Drift drift{Rate::fromCelsiusPerHour(line.slope_C_per_h), {}};
    if (curve.size() < fewestBlocks + 2)
        return drift;
    const std::size_t blocks = std::min(mostBlocks, curve.size() - 2);
    const double length_h = inHours(curve.back().at - curve.front().at);
    if (const auto margin = margin_C_per_h(blockResiduals_C(curve, line, blocks), length_h))
        drift.interval90 = around(line.slope_C_per_h, *margin);
    return drift;
}

} // namespace ringhold
