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

constexpr Duration meanOver = std::chrono::minutes(1);
constexpr std::size_t fewestOfALine = 4; ///< minute means
constexpr double plainly = 9;            ///< in ln of the likelihood
constexpr double leastChange = 0.1;      ///< of a rate
constexpr double leastChange_C_per_h = 5;
constexpr double wobble_C2 = 0.1 * 0.1; ///< of a minute mean, of any kiln

Curve minuteMeans(std::span<const CurvePoint> points) {
    Curve means;
    for (std::size_t i = 0; i < points.size();) {
        const Instant begin = points[i].at;
        double sum_C = 0;
        double seconds = 0;
        double count = 0;
        for (; i < points.size() && points[i].at < begin + meanOver; ++i, ++count) {
            sum_C += points[i].temperature.celsius();
            seconds += inSeconds(points[i].at - begin);
        }
        means.push_back(
            {begin + durationFromSeconds(seconds / count), Temperature::fromCelsius(sum_C / count)});
    }
    return means;
}

/// Sum of the squares of what a line leaves of points, from sums that can be subtracted.
struct Sums {
    double n = 0, t = 0, y = 0, tt = 0, ty = 0, yy = 0;
    void add(double at, double value) {
        n += 1;
        t += at;
        y += value;
        tt += at * at;
        ty += at * value;
        yy += value * value;
    }
    Sums operator-(const Sums& o) const {
        return {n - o.n, t - o.t, y - o.y, tt - o.tt, ty - o.ty, yy - o.yy};
    }
    double spread() const { return tt - t * t / n; }
    double slope() const { return (ty - t * y / n) / spread(); }
    double left() const { return std::max(0.0, yy - y * y / n - slope() * slope() * spread()); }
    double at(double when) const { return y / n + slope() * (when - t / n); }
};

/// Two lines through minute means.
struct TwoLines {
    Instant change;
    Sums before;
    Sums after; ///< hours from the last reading, degrees from the last mean
    double squares = 0;
};

std::optional<TwoLines> twoLines(std::span<const CurvePoint> points) {
    const Curve means = minuteMeans(points);
    if (means.size() < 3 * fewestOfALine)
        return std::nullopt;
    const Instant end = points.back().at;
    std::vector<Sums> upTo(1);
    for (const auto& mean : means) {
        upTo.push_back(upTo.back());
        upTo.back().add(inHours(mean.at - end), (mean.temperature - means.back().temperature).celsius());
    }
    const Sums& whole = upTo.back();
    std::optional<TwoLines> best;
    for (std::size_t i = fewestOfALine; i + fewestOfALine <= means.size(); ++i) {
        const Sums after = whole - upTo[i];
        const double squares = upTo[i].left() + after.left();
        if (!best || squares < best->squares)
            best = TwoLines{means[i].at, upTo[i], after, squares};
    }
    // neighbours err together: each mean counts for a half
    const double gain =
        whole.n / 4 * std::log((whole.left() / whole.n + wobble_C2) / (best->squares / whole.n + wobble_C2));
    const double change = std::abs(best->after.slope() - best->before.slope());
    const bool plain = gain > plainly &&
                       change > std::max(leastChange_C_per_h, leastChange * std::abs(best->before.slope()));
    return plain ? best : std::nullopt;
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

std::optional<ClimbShown> climbShownSinceChange(const Curve& curve, Duration window) {
    if (curve.size() < 2)
        return std::nullopt;
    auto two = twoLines(lastOf(curve, 3 * window));
    for (auto again = two; again; again = twoLines(lastOf(curve, curve.back().at - again->change)))
        two = again; // a stall has two ends
    if (!two)
        return climbShownAtEnd(curve, window);
    const auto since = lastOf(curve, curve.back().at - two->change);
    const Line line = fitted(since);
    return ClimbShown{curve.back().at,
                      Temperature::fromCelsius(line.atEnd_C),
                      Rate::fromCelsiusPerHour(line.slope_C_per_h),
                      Rate::fromCelsiusPerHour(line.slopeSd_C_per_h),
                      static_cast<int>(since.size()),
                      RateChange{two->change, Rate::fromCelsiusPerHour(two->before.slope())}};
}

} // namespace ringhold
