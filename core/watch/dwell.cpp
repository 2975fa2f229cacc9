#include "core/watch/dwell.h"

#include <algorithm>
#include <vector>

namespace ringhold {
namespace {

constexpr double half = 0.5, near = 0.2, close = 0.05; // shares of the way from the level to the outer one

struct Weighted {
    Temperature temperature;
    Duration time;
};

/// The curve's points in the range with the time each stands for, coolest first.
std::vector<Weighted> weightedPoints(const Curve& curve, LevelRange range) {
    std::vector<Weighted> points;
    for (std::size_t i = 0; i < curve.size(); ++i) {
        const Instant from = curve[i > 0 ? i - 1 : i].at, to = curve[std::min(i + 1, curve.size() - 1)].at;
        if (curve[i].temperature >= range.lowest && curve[i].temperature <= range.highest)
            points.push_back({curve[i].temperature, to - from});
    }
    std::sort(points.begin(), points.end(),
              [](const Weighted& a, const Weighted& b) { return a.temperature < b.temperature; });
    return points;
}

Temperature weightedMedian(const Weighted* first, const Weighted* end, Duration total) {
    Duration sum{0};
    while (first + 1 != end && (sum += first->time) * 2 < total)
        ++first;
    return first->temperature;
}

/// Stretches of the curve within a share of the way from the level, to either side.
std::vector<Stretch> within(const Curve& curve, Temperature level, Temperature outer, double share) {
    const auto reach = std::max(outer - level, level - outer) * share;
    return stretchesWithin(curve, level - reach, level + reach);
}

/// From the first start to the last end of those that overlap the visit.
std::optional<Stretch> hull(const std::vector<Stretch>& stretches, Stretch visit) {
    std::optional<Stretch> all;
    for (const Stretch& s : stretches)
        if (s.start <= visit.end && s.end >= visit.start)
            all = Stretch{all ? all->start : s.start, s.end};
    return all;
}

/// The corners from where the curve crosses two shares of the way, by straight lines through the crossings.
Stretch extrapolated(Stretch far, double farShare, Stretch inner, double innerShare) {
    const double factor = innerShare / (farShare - innerShare);
    const auto further = [factor](Duration d) { return durationFromSeconds(inSeconds(d) * factor); };
    return {inner.start + further(inner.start - far.start), inner.end - further(far.end - inner.end)};
}

} // namespace

std::optional<Temperature> levelWithin(const Curve& curve, LevelRange range,
                                       TemperatureDifference halfWidth) {
    const auto points = weightedPoints(curve, range);
    if (points.empty())
        return std::nullopt;
    Duration time{0}, most{-1};
    std::size_t first = 0;
    std::pair<std::size_t, std::size_t> fullest;
    for (std::size_t last = 0; last < points.size(); ++last) {
        time += points[last].time;
        for (; points[last].temperature - points[first].temperature > halfWidth * 2; ++first)
            time -= points[first].time;
        if (time > most) {
            most = time;
            fullest = {first, last};
        }
    }
    return weightedMedian(&points[fullest.first], &points[fullest.second] + 1, most);
}

Dwell dwellAt(const Curve& curve, Stretch visit, Temperature level, Temperature outer) {
    const auto nearest = hull(within(curve, level, outer, near), visit);
    if (!nearest)
        return {visit.start, Duration{0}, temperatureAt(curve, visit.start)};
    const auto halfWay = hull(within(curve, level, outer, half), *nearest).value_or(*nearest);
    const auto closest = hull(within(curve, level, outer, close), *nearest).value_or(*nearest);
    const Stretch along = extrapolated(halfWay, half, *nearest, near);
    const Stretch end = extrapolated(*nearest, near, closest, close);
    Stretch dwell{std::min(along.start, end.start), std::max(along.end, end.end)};
    if (dwell.start >= dwell.end)
        return {dwell.start, Duration{0}, temperatureAt(curve, dwell.start)};
    return {dwell.start, dwell.length(), meanOf(cut(curve, dwell.start, dwell.end))};
}

} // namespace ringhold
