// The growth rings that a firing drew, counted from its curve.
#pragma once

#include "core/units/curve.h"
#include "core/watch/dwell.h"

#include <vector>

namespace ringhold {

/// What the moves were meant to go between: high above low.
struct RingLevels {
    Temperature high;
    Temperature low;
};

struct Ring {
    Dwell low;
    Dwell high; ///< until the next move down, the final cooling or the curve's end; may be short
};

/// The rings in time order. A ring is a dwell at the low and the return to the high: a low without a return
/// is not counted, nor is one whose fall the curve does not show.
///
/// With the move being high - low: the curve is down below the middle less a twentieth of the move, up above
/// the middle plus a twentieth. It must be down 2.5 min at least and spend 1.5 min of that, and a sixth, near
/// one level no more than 0.6 moves below the low and at least 0.4 moves below the highs about it; so lows
/// may be off by four tenths of the move, while sags of a third, spikes of a reading
/// (core/watch/spike_filter.h) and the kiln cooling off and being fired again are no rings. A return must
/// come within four tenths of the move of the high; one that has only just begun where the curve ends, within
/// a quarter. A fall straight from above the high, as from the peak, must be followed by 5 min at a level
/// within a quarter of the move of the low, or else it is an overshoot on arrival. Readings 5 min apart will
/// do if no dwell is shorter than about two of them.
///
/// Levels and dwells are those that the curve shows, spikes removed. Empty unless high is above low.
std::vector<Ring> countRings(const Curve& curve, const RingLevels& levels);

} // namespace ringhold
