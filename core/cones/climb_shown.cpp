#include "core/cones/climb_shown.h"

#include <algorithm>
#include <cmath>
#include <span>
#include <vector>

namespace ringhold {

namespace {

struct Line {
    double atEnd_C = 0;
    double slope_C_per_h = 0;
    double slopeSd_C_per_h = 0;
};

/// First autocorrelation of the residuals, 0 to 0.98.
double firstAutocorrelation(const std::vector<double>& residuals) {
    double squares = 0;
    double products = 0;
    for (std::size_t i = 0; i < residuals.size(); ++i) {
        squares += residuals[i] * residuals[i];
        if (i > 0)
            products += residuals[i] * residuals[i - 1];
    }
    return squares > 0 ? std::clamp(products / squares, 0.0, 0.98) : 0.0;
}

/// At least two points.
Line fitted(std::span<const CurvePoint> points) {
    const Instant end = points.back().at;
    const auto n = static_cast<double>(points.size());
    double meanT = 0;
    double meanY = 0;
    for (const auto& p : points) {
        meanT += inHours(p.at - end) / n;
        meanY += p.temperature.celsius() / n;
    }
    double tt = 0;
    double ty = 0;
    for (const auto& p : points) {
        const double t = inHours(p.at - end) - meanT;
        tt += t * t;
        ty += t * (p.temperature.celsius() - meanY);
    }
    Line line;
    line.slope_C_per_h = ty / tt;
    line.atEnd_C = meanY - line.slope_C_per_h * meanT;
    if (points.size() > 2) {
        std::vector<double> residuals;
        double squares = 0;
        for (const auto& p : points) {
            residuals.push_back(p.temperature.celsius() - line.atEnd_C -
                                line.slope_C_per_h * inHours(p.at - end));
            squares += residuals.back() * residuals.back();
        }
        const double r = firstAutocorrelation(residuals);
        line.slopeSd_C_per_h = std::sqrt(squares / (n - 2) / tt * (1 + r) / (1 - r));
    }
    return line;
}

std::span<const CurvePoint> lastOf(const Curve& curve, Duration window) {
    const Instant begin = curve.back().at - window;
    const auto first = std::ranges::lower_bound(curve, begin, {}, &CurvePoint::at);
    return std::span(curve).last(std::max<std::size_t>(2, static_cast<std::size_t>(curve.end() - first)));
}

/// The temperature at the end of a few points.
double levelOf(std::span<const CurvePoint> end) {
    return end.size() >= 5 ? fitted(end).atEnd_C : end.back().temperature.celsius();
}

/// Whether the last points leave the line by more than their noise explains: it would miss the present
/// temperature.
bool bendsAtEnd(const Line& line, std::span<const CurvePoint> whole, std::span<const CurvePoint> end) {
    const Instant last = whole.back().at;
    double squares = 0;
    double endSum = 0;
    for (const auto& p : whole) {
        const double off = p.temperature.celsius() - line.atEnd_C - line.slope_C_per_h * inHours(p.at - last);
        squares += off * off;
        if (p.at >= end.front().at)
            endSum += off;
    }
    if (whole.size() < 8)
        return true;
    const double sd = std::sqrt(squares / static_cast<double>(whole.size() - 2));
    const auto n = static_cast<double>(end.size());
    return std::abs(endSum / n) > 1.5 * sd / std::sqrt(n);
}

} // namespace

std::optional<ClimbShown> climbShownAtEnd(const Curve& curve, Duration window) {
    if (curve.size() < 2)
        return std::nullopt;
    const auto whole = lastOf(curve, window);
    const auto end = lastOf(curve, window / 4);
    const Line line = fitted(whole);
    const double level_C = bendsAtEnd(line, whole, end) ? levelOf(end) : line.atEnd_C;
    return ClimbShown{curve.back().at, Temperature::fromCelsius(level_C),
                      Rate::fromCelsiusPerHour(line.slope_C_per_h),
                      Rate::fromCelsiusPerHour(line.slopeSd_C_per_h), static_cast<int>(whole.size())};
}

} // namespace ringhold
