#include "ui/plot/decimation.h"

#include <algorithm>
#include <array>
#include <cstdint>

namespace ringhold {

namespace {

using Points = std::span<const CurvePoint>;

/// What is between the two instants, and a point more on either side.
Points inSight(Points curve, Instant from, Instant to) {
    auto first = std::ranges::lower_bound(curve, from, {}, &CurvePoint::at);
    auto last = std::ranges::upper_bound(curve, to, {}, &CurvePoint::at);
    if (first != curve.begin())
        --first;
    if (last != curve.end())
        ++last;
    return first < last ? Points(first, last) : Points();
}

void keepExtremes(Points column, Curve& kept) {
    const auto [low, high] = std::ranges::minmax_element(column, {}, &CurvePoint::temperature);
    std::array chosen{column.begin(), low, high, std::prev(column.end())};
    std::ranges::sort(chosen);
    const auto repeated = std::ranges::unique(chosen);
    for (auto point = chosen.begin(); point != repeated.begin(); ++point)
        kept.push_back(**point);
}

} // namespace

Curve decimated(Points curve, Instant from, Instant to, int columns) {
    const Points seen = inSight(curve, from, to);
    constexpr std::size_t perColumn = 4;
    if (columns < 1 || to <= from || seen.size() <= perColumn * static_cast<std::size_t>(columns))
        return {seen.begin(), seen.end()};
    const auto columnOf = [&](const CurvePoint& point) -> std::int64_t {
        return point.at < from ? -1 : (point.at - from) * columns / (to - from);
    };
    Curve kept;
    kept.reserve(perColumn * static_cast<std::size_t>(columns) + 2);
    for (auto start = seen.begin(); start != seen.end();) {
        const auto column = columnOf(*start);
        const auto end = std::find_if(start, seen.end(),
                                      [&](const CurvePoint& point) { return columnOf(point) > column; });
        keepExtremes(Points(start, end), kept);
        start = end;
    }
    return kept;
}

} // namespace ringhold
