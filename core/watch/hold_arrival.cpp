#include "core/watch/hold_arrival.h"

#include "core/watch/spike_filter.h"

#include <algorithm>
#include <chrono>

namespace ringhold {

namespace {

constexpr Duration lookBack = std::chrono::minutes(10);
constexpr Duration atRest = std::chrono::minutes(10);
constexpr Duration longestLook = std::chrono::hours(1);

std::optional<Instant> settledAt(const Curve& part, Temperature target, TemperatureDifference halfWidth) {
    for (const auto& stay : stretchesWithin(part, target - halfWidth * 0.5, target + halfWidth * 0.5))
        if (stay.length() >= atRest)
            return stay.start;
    return std::nullopt;
}

} // namespace

HoldArrival arrivalOf(const Curve& curve, Temperature target, TemperatureDifference halfWidth, Stretch hold) {
    const Curve part = withoutSpikes(cut(curve, hold.start, hold.end));
    HoldArrival arrival{hold.start, {}, {}, {}};
    const auto settled = settledAt(part, target, halfWidth);
    if (settled)
        arrival.settling = *settled - hold.start;
    const bool fromAbove = curve.front().at < hold.start &&
                           temperatureAt(curve, std::max(curve.front().at, hold.start - lookBack)) > target;
    const Instant until = std::min(settled.value_or(hold.end), hold.start + longestLook);
    for (const auto& point : part) {
        const auto past = fromAbove ? target - point.temperature : point.temperature - target;
        if (point.at <= until && past > arrival.overshoot) {
            arrival.overshoot = past;
            arrival.farthest = point.at;
        }
    }
    return arrival;
}

} // namespace ringhold
