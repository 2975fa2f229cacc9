// When the next look through the spyhole is worth the walk.
#pragma once

#include "core/base/result.h"
#include "core/firing/records.h"
#include "core/watch/firing_forecast.h"

#include <optional>
#include <string>
#include <vector>

namespace ringhold {

struct NextLook {
    std::string cone;
    Instant at;           ///< not before the last reading
    double hour = 0;      ///< where its tip is thought to point then
    double narrowsTo = 1; ///< to which share of its width it is expected to narrow what is unknown of the
                          ///< firing cone; 1 where that was not asked
};

/// The next cone of the pack to pass 1, 3 or 5 o'clock or to go down, by the forecast's median: there it
/// tells most of the offset. At the soonest `leastApart` after the last look at the pack (struck ones do not
/// count); looks overdue are due at the last reading. Nothing while none comes within `horizon`, and once all
/// cones are down.
std::optional<NextLook> nextLook(const PackForecast& pack, const std::vector<Look>& looksAtPack, Instant asOf,
                                 Duration leastApart, Duration horizon = std::chrono::hours(3));

/// The look that narrows the forecast of `firingCone` most, by expectation: for each cone of the pack that is
/// not down and each of thirty instants up to the firing cone's 95 % point (at most three hours ahead), the
/// variance left of that cone's shift over all hours that may be told, and what of the firing cone's that
/// takes away through the offset they share (normal beliefs). Of all looks that narrow at least 80 % as much
/// as the best the first counts, so that it does not recede as time goes on, and looks come closer together
/// as the cones begin to move. Where no look tells a twentieth, or nothing is known of that cone, nextLook's.
/// `told` is the forecaster's own newest forecast. O(ms); `looksAtPack` and `leastApart` as there. Nothing
/// without two readings.
std::optional<NextLook> mostTellingLook(const FiringForecast& forecaster, const Forecast& told,
                                        const StepFollower* follower, std::size_t pack,
                                        const std::string& firingCone, const std::vector<Look>& looksAtPack,
                                        Duration leastApart);

} // namespace ringhold
