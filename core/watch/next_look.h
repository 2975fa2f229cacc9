// When the next look through the spyhole is worth the walk.
#pragma once

#include "core/base/result.h"
#include "core/cones/forecast.h"
#include "core/firing/records.h"

#include <optional>
#include <string>
#include <vector>

namespace ringhold {

struct NextLook {
    std::string cone;
    Instant at;      ///< not before the last reading
    double hour = 0; ///< where its tip is thought to point then
};

/// The next cone of the pack to pass 1, 3 or 5 o'clock or to go down, by the forecast's median: there it
/// tells most of the offset. At the soonest `leastApart` after the last look at the pack (struck ones do not
/// count); looks overdue are due at the last reading. Nothing while none comes within `horizon`, and once all
/// cones are down.
std::optional<NextLook> nextLook(const PackForecast& pack, const std::vector<Look>& looksAtPack, Instant asOf,
                                 Duration leastApart, Duration horizon = std::chrono::hours(3));

} // namespace ringhold
