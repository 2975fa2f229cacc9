// Whether a kiln stands still: the level that a curve has been at of late, when no plan tells one.
#pragma once

#include "core/watch/hold_statistics.h"

#include <optional>

namespace ringhold {

/// What makes a stay a hold. Band and length are the definition of a hold in a curve without a plan; the
/// other two keep a slow climb and a cold kiln from being one (our own choice, no source).
struct SteadyRules {
    Duration least = std::chrono::minutes(20);
    TemperatureDifference halfWidth = TemperatureDifference::fromCelsius(6);
    Rate steadiest = Rate::fromCelsiusPerHour(12);       ///< it changes no faster than that
    Temperature coldest = Temperature::fromCelsius(150); ///< no hold below
    Duration longestAbsence = std::chrono::minutes(20);  ///< out of the band, before a hold is over
};

/// The mean of the last `least` up to that instant, when all of it lay within the band about it, single wild
/// readings left out. Needs three readings; where they are sparse the stretch of the last three, if longer,
/// counts. Later points of the curve are left out.
std::optional<HoldBand> steadyLevel(const Curve& curve, Instant until, const SteadyRules& rules = {});

/// When the curve first came into the band, of the stay that it is in at that instant: going back from there,
/// absences up to the longest allowed are part of it. The readings' own instants.
Instant firstInside(const Curve& curve, const HoldBand& band, Instant until, Duration longestAbsence);

} // namespace ringhold
