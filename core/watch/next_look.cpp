#include "core/watch/next_look.h"

#include "core/cones/bending.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr double hoursToSee[] = {1, 3, 5};

std::optional<Instant> lastLook(const std::vector<Look>& looks) {
    std::optional<Instant> last;
    for (const auto& look : looks)
        if (!look.struck && !look.cold && (!last || look.at > *last))
            last = look.at;
    return last;
}

bool seenDown(const std::vector<Look>& looks, const std::string& cone) {
    return std::ranges::any_of(
        looks, [&](const Look& look) { return !look.struck && look.cone == cone && look.hour >= hourDown; });
}

/// What a cone has still to show after `since`, in order of time.
std::vector<NextLook> showsOf(const ConeForecast& cone, std::optional<Instant> since) {
    std::vector<NextLook> shows;
    const auto add = [&](const TimeInterval& when, double hour) {
        if (when.median && (!since || *when.median > *since))
            shows.push_back({cone.cone, *when.median, hour});
    };
    for (std::size_t i = 0; i < std::size(hoursToSee); ++i)
        add(cone.atHour[i], hoursToSee[i]);
    add(cone.down, hourDown);
    return shows;
}

} // namespace

std::optional<NextLook> nextLook(const PackForecast& pack, const std::vector<Look>& looksAtPack, Instant asOf,
                                 Duration leastApart, Duration horizon) {
    const auto last = lastLook(looksAtPack);
    std::optional<NextLook> next;
    for (const auto& cone : pack.cones) {
        if (seenDown(looksAtPack, cone.cone))
            continue;
        for (const auto& show : showsOf(cone, last))
            if (!next || show.at < next->at)
                next = show;
    }
    if (!next || next->at > asOf + horizon)
        return std::nullopt;
    if (last)
        next->at = std::max(next->at, *last + leastApart);
    next->at = std::max(next->at, asOf);
    return next;
}

} // namespace ringhold
