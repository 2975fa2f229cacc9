#include "core/watch/curve_parts.h"

#include <algorithm>
#include <cmath>

namespace ringhold {
namespace {

constexpr double unbounded = 1e9; // °C, beyond any temperature
// °C by which edges are widened, so that a value on one is inside whatever binary fractions make of it.
constexpr double edge = 1e-9;

Instant along(const CurvePoint& a, const CurvePoint& b, double share) {
    return a.at + Duration(std::llround(share * static_cast<double>((b.at - a.at).count())));
}

/// The shares of the way from a to b between which the line is within [low, high]; first above second if it
/// never is.
std::pair<double, double> sharesWithin(double a, double b, double low, double high) {
    if (low > high)
        return {1.0, 0.0};
    if (a == b)
        return a < low || a > high ? std::pair(1.0, 0.0) : std::pair(0.0, 1.0);
    const double atLow = (low - a) / (b - a), atHigh = (high - a) / (b - a);
    return {std::max(0.0, std::min(atLow, atHigh)), std::min(1.0, std::max(atLow, atHigh))};
}

void append(std::vector<Stretch>& stretches, Stretch next) {
    if (!stretches.empty() && next.start <= stretches.back().end)
        stretches.back().end = std::max(stretches.back().end, next.end);
    else
        stretches.push_back(next);
}

/// The integral over time, in °C min, of a function of the two ends of each segment that is its mean there.
template <class SegmentMean>
double integral(const Curve& curve, SegmentMean mean) {
    double sum = 0;
    for (std::size_t i = 1; i < curve.size(); ++i)
        sum += inMinutes(curve[i].at - curve[i - 1].at) *
               mean(curve[i - 1].temperature.celsius(), curve[i].temperature.celsius());
    return sum;
}

double minutesOf(const Curve& curve) {
    return inMinutes(curve.back().at - curve.front().at);
}

} // namespace

Curve cut(const Curve& curve, Instant from, Instant to) {
    const auto before = [](const CurvePoint& p, Instant t) { return p.at < t; };
    const auto after = [](Instant t, const CurvePoint& p) { return t < p.at; };
    const auto first = std::upper_bound(curve.begin(), curve.end(), from, after);
    const auto last = std::lower_bound(first, curve.end(), to, before);
    Curve part{{from, temperatureAt(curve, from)}};
    part.insert(part.end(), first, last);
    part.push_back({to, temperatureAt(curve, to)});
    return part;
}

std::vector<Stretch> stretchesWithin(const Curve& curve, Temperature low, Temperature high) {
    std::vector<Stretch> stretches;
    for (std::size_t i = 1; i < curve.size(); ++i) {
        const auto& a = curve[i - 1];
        const auto& b = curve[i];
        const auto [first, last] = sharesWithin(a.temperature.celsius(), b.temperature.celsius(),
                                                low.celsius() - edge, high.celsius() + edge);
        if (first <= last)
            append(stretches, {along(a, b, first), along(a, b, last)});
    }
    std::erase_if(stretches, [](const Stretch& s) { return s.start == s.end; });
    return stretches;
}

std::vector<Stretch> remainder(Stretch whole, const std::vector<Stretch>& stretches) {
    std::vector<Stretch> rest;
    Instant done = whole.start;
    for (const auto& stretch : stretches) {
        if (stretch.start > done)
            rest.push_back({done, stretch.start});
        done = stretch.end;
    }
    if (whole.end > done)
        rest.push_back({done, whole.end});
    return rest;
}

Duration totalLength(const std::vector<Stretch>& stretches) {
    Duration sum{0};
    for (const auto& stretch : stretches)
        sum += stretch.length();
    return sum;
}

Temperature meanOf(const Curve& curve) {
    if (minutesOf(curve) <= 0)
        return curve.front().temperature;
    const double sum = integral(curve, [](double a, double b) { return (a + b) / 2; });
    return Temperature::fromCelsius(sum / minutesOf(curve));
}

TemperatureDifference standardDeviationOf(const Curve& curve) {
    if (minutesOf(curve) <= 0)
        return {};
    const double mean_C = meanOf(curve).celsius();
    const double sum = integral(curve, [mean_C](double a, double b) {
        const double u = a - mean_C, v = b - mean_C;
        return (u * u + u * v + v * v) / 3;
    });
    return TemperatureDifference::fromCelsius(std::sqrt(sum / minutesOf(curve)));
}

std::pair<Temperature, Temperature> rangeOf(const Curve& curve) {
    const auto [least, greatest] =
        std::minmax_element(curve.begin(), curve.end(), [](const CurvePoint& a, const CurvePoint& b) {
            return a.temperature < b.temperature;
        });
    return {least->temperature, greatest->temperature};
}

double degreeMinutesAbove(const Curve& curve, Temperature level) {
    const double level_C = level.celsius();
    return integral(curve, [level_C](double a, double b) {
        const auto [first, last] = sharesWithin(a, b, level_C, unbounded);
        return first > last ? 0.0 : (last - first) * (a + (b - a) * (first + last) / 2 - level_C);
    });
}

double degreeMinutesBelow(const Curve& curve, Temperature level) {
    const double level_C = level.celsius();
    return integral(curve, [level_C](double a, double b) {
        const auto [first, last] = sharesWithin(a, b, -unbounded, level_C);
        return first > last ? 0.0 : (last - first) * (level_C - a - (b - a) * (first + last) / 2);
    });
}

} // namespace ringhold
