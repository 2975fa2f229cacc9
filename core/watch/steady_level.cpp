#include "core/watch/steady_level.h"

#include "core/watch/spike_filter.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr std::ptrdiff_t fewestReadings = 3;

Curve::const_iterator after(const Curve& curve, Instant until) {
    return std::ranges::upper_bound(curve, until, {}, &CurvePoint::at);
}

bool isInside(const CurvePoint& point, const HoldBand& band) {
    return point.temperature >= band.low() && point.temperature <= band.high();
}

} // namespace

std::optional<HoldBand> steadyLevel(const Curve& curve, Instant until, const SteadyRules& rules) {
    const auto end = after(curve, until);
    if (end - curve.begin() < fewestReadings)
        return std::nullopt;
    const Instant from = std::min(until - rules.least, (end - fewestReadings)->at);
    if (curve.front().at > from)
        return std::nullopt;
    const auto first = std::ranges::upper_bound(curve.begin(), end, from, {}, &CurvePoint::at) - 1;
    const auto change = (end - 1)->temperature - first->temperature;
    if (std::abs(change.celsius()) > 2 * rules.halfWidth.celsius())
        return std::nullopt; // most of a firing is told by that
    const Curve stay = withoutSpikes(Curve(first, end));
    if (stay.back().at <= stay.front().at)
        return std::nullopt;
    const HoldBand band{meanOf(stay), rules.halfWidth};
    const double rate = std::abs(driftOf(stay).rate.celsiusPerHour());
    const bool steady = std::ranges::all_of(stay, [&](const auto& p) { return isInside(p, band); });
    return steady && rate <= rules.steadiest.celsiusPerHour() && band.target >= rules.coldest
               ? std::optional(band)
               : std::nullopt;
}

Instant firstInside(const Curve& curve, const HoldBand& band, Instant until, Duration longestAbsence) {
    Instant inside = until;
    for (auto point = after(curve, until); point != curve.begin();) {
        --point;
        if (isInside(*point, band))
            inside = point->at;
        else if (inside - point->at > longestAbsence)
            break;
    }
    return inside;
}

} // namespace ringhold
