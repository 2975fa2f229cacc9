#include "core/watch/ring_count.h"

#include "core/watch/curve_parts.h"
#include "core/watch/spike_filter.h"

#include <algorithm>
#include <chrono>
#include <optional>

namespace ringhold {
namespace {

using std::chrono::minutes;
using std::chrono::seconds;

constexpr Duration leastDown = seconds(150), leastUp = minutes(2), leastNear = seconds(90);
constexpr Duration leastBeforeFall = minutes(2), leastAfterPeak = minutes(5), leastFreshUp = minutes(10);
constexpr double leastShareNear = 1.0 / 6;
constexpr auto coldest = Temperature::fromCelsius(-300), hottest = Temperature::fromCelsius(1e5);

/// Temperatures by which moves are judged, as shares of the move from low to high: 0 is the low, 1 the high.
struct Scale {
    Temperature low;
    TemperatureDifference move;

    explicit Scale(const RingLevels& levels) : low(levels.low), move(levels.high - levels.low) {}
    Temperature at(double share) const { return low + move * share; }
    LevelRange lows() const { return {at(-0.6), at(0.5)}; }
    LevelRange highs() const { return {at(0.5), at(1.6)}; }
    TemperatureDifference levelWidth() const {
        return std::max(move * 0.06, TemperatureDifference::fromCelsius(2));
    }
};

/// A time that the curve is down, or up.
struct Visit {
    bool down = false;
    Stretch time;
};

std::vector<Visit> joined(const std::vector<Visit>& visits) {
    std::vector<Visit> result;
    for (const Visit& visit : visits)
        if (!result.empty() && result.back().down == visit.down)
            result.back().time.end = visit.time.end;
        else
            result.push_back(visit);
    return result;
}

/// Shortest first, all that are too short go, but for those at the curve's ends.
std::vector<Visit> withoutShort(std::vector<Visit> visits) {
    while (visits.size() > 2) {
        const auto shortest =
            std::min_element(visits.begin() + 1, visits.end() - 1, [](const Visit& a, const Visit& b) {
                return a.time.length() < b.time.length();
            });
        if (shortest->time.length() >= (shortest->down ? leastDown : leastUp))
            break;
        visits.erase(shortest);
        visits = joined(visits);
    }
    return visits;
}

/// Down and up by turns, in time order.
std::vector<Visit> visitsOf(const Curve& curve, const Scale& scale) {
    std::vector<Visit> visits;
    for (const Stretch& time : stretchesWithin(curve, coldest, scale.at(0.45)))
        visits.push_back({true, time});
    for (const Stretch& time : stretchesWithin(curve, scale.at(0.55), hottest))
        visits.push_back({false, time});
    std::sort(visits.begin(), visits.end(),
              [](const Visit& a, const Visit& b) { return a.time.start < b.time.start; });
    return withoutShort(joined(visits));
}

Curve during(const Curve& curve, Stretch time) {
    return cut(curve, time.start, time.end);
}

/// The low's level if the visit dwells at one.
std::optional<Temperature> lowLevel(const Curve& curve, Stretch down, const Scale& scale) {
    const Curve part = during(curve, down);
    const auto level = levelWithin(part, scale.lows(), scale.levelWidth());
    if (!level)
        return std::nullopt;
    const auto reach = scale.move * 0.2;
    const Duration near = totalLength(stretchesWithin(part, *level - reach, *level + reach));
    const bool dwells = near >= leastNear && inSeconds(near) >= leastShareNear * inSeconds(down.length());
    return dwells ? level : std::nullopt;
}

Temperature highLevel(const Curve& curve, Stretch up, const Scale& scale) {
    return levelWithin(during(curve, up), scale.highs(), scale.levelWidth()).value_or(scale.at(1));
}

/// The last of a visit: what came long before says nothing of the level that a fall began at.
Stretch lastOf(Stretch time) {
    return {std::max(time.start, time.end - minutes(20)), time.end};
}

bool isReturn(const Curve& curve, Stretch up, bool isLast, const Scale& scale) {
    const Temperature top = rangeOf(during(curve, up)).second;
    const bool isFresh = isLast && up.length() < leastFreshUp;
    return top >= scale.at(isFresh ? 0.75 : 0.6);
}

/// Whether the kiln came from above the high without a stay at it.
bool fellFromAbove(const Curve& curve, Stretch up, Temperature low, const Scale& scale) {
    const auto above = stretchesWithin(during(curve, up), scale.at(1.5), hottest);
    if (above.empty())
        return false;
    const Stretch since{above.back().end, up.end};
    return dwellAt(curve, since, highLevel(curve, since, scale), low).length < leastBeforeFall;
}

bool isClear(const Dwell& low, Temperature level, const Scale& scale) {
    return low.length >= leastAfterPeak && level >= scale.at(-0.25) && level <= scale.at(0.25);
}

std::optional<Ring> ringOf(const Curve& curve, const Visit& before, const Visit& down, const Visit& after,
                           const Scale& scale) {
    const auto level = lowLevel(curve, down.time, scale);
    if (!level)
        return std::nullopt;
    const Temperature previous = highLevel(curve, lastOf(before.time), scale);
    const Temperature next = highLevel(curve, after.time, scale);
    if (std::max(previous, next) - *level < scale.move * 0.4)
        return std::nullopt;
    const Ring ring{dwellAt(curve, down.time, *level, previous), dwellAt(curve, after.time, next, *level)};
    if (fellFromAbove(curve, before.time, *level, scale) && !isClear(ring.low, *level, scale))
        return std::nullopt;
    return ring;
}

} // namespace

std::vector<Ring> countRings(const Curve& curve, const RingLevels& levels) {
    std::vector<Ring> rings;
    if (levels.high <= levels.low)
        return rings;
    const Scale scale(levels);
    const Curve steady = withoutSpikes(curve);
    const auto visits = visitsOf(steady, scale);
    for (std::size_t i = 1; i + 1 < visits.size(); ++i) {
        if (!visits[i].down || !isReturn(steady, visits[i + 1].time, i + 2 == visits.size(), scale))
            continue;
        if (const auto ring = ringOf(steady, visits[i - 1], visits[i], visits[i + 1], scale))
            rings.push_back(*ring);
    }
    return rings;
}

} // namespace ringhold
