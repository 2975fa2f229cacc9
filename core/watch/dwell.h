// A stay of a curve at one level, between the ramps that lead there and away.
#pragma once

#include "core/units/curve.h"
#include "core/watch/curve_parts.h"

#include <optional>

namespace ringhold {

/// From the corner where the ramp in ends to the corner where the ramp out begins.
struct Dwell {
    Instant start;
    Duration length{0}; ///< 0 where the curve only turned
    Temperature mean;   ///< time-weighted
};

/// Between which temperatures a dwell's level is looked for.
struct LevelRange {
    Temperature lowest;
    Temperature highest;
};

/// The temperature at which the curve spent most of the time, give or take `halfWidth`; absent when it never
/// was in the range.
std::optional<Temperature> levelWithin(const Curve& curve, LevelRange range, TemperatureDifference halfWidth);

/// The dwell at `level` during `visit`, a stretch of the curve that has ramps to and from the level `outer`
/// about it. It goes from the first time to the last within a fifth of the way of the level; its corners are
/// where straight lines along the ramps, from half way to four fifths of it, meet the level: a ramp's length
/// is not part of the dwell, and a controller that settles in exponentially has arrived when about a tenth of
/// the way is left. Without a time near the level it is empty.
Dwell dwellAt(const Curve& curve, Stretch visit, Temperature level, Temperature outer);

} // namespace ringhold
