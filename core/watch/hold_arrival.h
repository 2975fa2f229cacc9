// How a kiln came to a hold: when, how far it ran past, and how long it took to come to rest.
#pragma once

#include "core/units/curve.h"
#include "core/watch/curve_parts.h"

#include <optional>

namespace ringhold {

struct HoldArrival {
    Instant arrived;                 ///< first inside the band
    TemperatureDifference overshoot; ///< past the target, as it came; 0 when it never ran past; not signed
    std::optional<Instant> farthest; ///< when
    /// From the arrival until it was within half the band and stayed so for 10 min; nothing when it never
    /// was.
    std::optional<Duration> settling;
};

/// The arrival at a hold of the curve, single wild readings removed. Overshoot is looked for until the kiln
/// has settled, at most for an hour. From where it came the curve before the hold tells; without any, from
/// below. The hold must last longer than 0.
HoldArrival arrivalOf(const Curve& curve, Temperature target, TemperatureDifference halfWidth, Stretch hold);

} // namespace ringhold
