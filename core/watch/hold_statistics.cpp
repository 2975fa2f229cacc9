#include "core/watch/hold_statistics.h"

#include <algorithm>
#include <chrono>

namespace ringhold {
namespace {

constexpr Duration rounding{1}; // of the crossings
constexpr Duration leastInside = std::chrono::minutes(20) - rounding;
constexpr Duration longestAbsence = std::chrono::minutes(20) + rounding;

Excursion excursionIn(const Curve& curve, const HoldBand& band, Stretch away) {
    const auto [min, max] = rangeOf(cut(curve, away.start, away.end));
    return {away.start, away.end, max - band.target > band.target - min ? max : min};
}

std::size_t readingsIn(const Curve& curve, Stretch hold) {
    return static_cast<std::size_t>(std::count_if(curve.begin(), curve.end(), [hold](const CurvePoint& p) {
        return p.at >= hold.start && p.at <= hold.end;
    }));
}

Duration longestGapIn(const Curve& curve, Stretch hold) {
    Duration longest{0};
    for (std::size_t i = 1; i < curve.size(); ++i)
        if (curve[i].at > hold.start && curve[i - 1].at < hold.end)
            longest = std::max(longest, curve[i].at - curve[i - 1].at);
    return longest;
}

/// `visits` are the stretches inside the band that make up the hold.
HoldStatistics judge(const Curve& curve, const HoldBand& band, Stretch hold,
                     const std::vector<Stretch>& visits) {
    const Curve part = cut(curve, hold.start, hold.end);
    const auto [min, max] = rangeOf(part);
    HoldStatistics figures{.start = hold.start,
                           .end = hold.end,
                           .mean = meanOf(part),
                           .sd = standardDeviationOf(part),
                           .min = min,
                           .max = max,
                           .insideShare = inSeconds(totalLength(visits)) / inSeconds(hold.length()),
                           .degreeMinutesAbove = degreeMinutesAbove(part, band.high()),
                           .degreeMinutesBelow = degreeMinutesBelow(part, band.low()),
                           .degreeMinutesAboveTarget = degreeMinutesAbove(part, band.target),
                           .degreeMinutesBelowTarget = degreeMinutesBelow(part, band.target),
                           .drift = driftOf(part),
                           .excursions = {},
                           .readings = readingsIn(curve, hold),
                           .longestGap = longestGapIn(curve, hold),
                           .arrival = arrivalOf(curve, band.target, band.halfWidth, hold),
                           .uniformity = uniformityOf(curve, band.target, hold)};
    for (const Stretch& away : remainder(hold, visits)) {
        figures.excursions.push_back(excursionIn(curve, band, away));
        figures.longestExcursion = std::max(figures.longestExcursion, away.length());
    }
    return figures;
}

/// Visits to the band that belong together, as no absence between them is too long.
std::vector<std::vector<Stretch>> grouped(const std::vector<Stretch>& visits) {
    std::vector<std::vector<Stretch>> groups;
    for (const Stretch& visit : visits) {
        if (groups.empty() || visit.start - groups.back().back().end > longestAbsence)
            groups.emplace_back();
        groups.back().push_back(visit);
    }
    return groups;
}

} // namespace

std::vector<HoldStatistics> findHolds(const Curve& curve, const HoldBand& band) {
    std::vector<HoldStatistics> holds;
    for (const auto& visits : grouped(stretchesWithin(curve, band.low(), band.high())))
        if (totalLength(visits) >= leastInside)
            holds.push_back(judge(curve, band, {visits.front().start, visits.back().end}, visits));
    return holds;
}

HoldStatistics judgeHold(const Curve& curve, const HoldBand& band, Stretch hold) {
    return judge(curve, band, hold,
                 stretchesWithin(cut(curve, hold.start, hold.end), band.low(), band.high()));
}

} // namespace ringhold
