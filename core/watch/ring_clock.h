// The clock of the growth rings: which ring, which dwell, how long still.
#pragma once

#include "core/watch/step_follower.h"

#include <optional>

namespace ringhold {

struct RingClock {
    int ring = 1; ///< from 1
    int count = 1;
    Motion motion = Motion::level; ///< level in a dwell, up and down on the way to the next
    bool atLow = false;            ///< the level of the dwell, or where the way leads
    Temperature level;
    Instant ends;     ///< of this dwell or way, as planned from its real beginning
    Duration left{0}; ///< until then, negative when overdue
    bool cue = false; ///< a dwell with at most the cue's time left: the next move is near

    bool dwelling() const { return motion == Motion::level; }
};

/// Nothing while no rings are under way.
std::optional<RingClock> ringClock(const StepFollower& follower, Instant now,
                                   Duration cueBefore = std::chrono::minutes(1));

} // namespace ringhold
