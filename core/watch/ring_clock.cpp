#include "core/watch/ring_clock.h"

namespace ringhold {

std::optional<RingClock> ringClock(const StepFollower& follower, Instant now, Duration cueBefore) {
    const auto position = follower.position();
    if (!position || !position->ring || !position->target)
        return std::nullopt;
    const auto* rings = std::get_if<Rings>(&follower.plan().steps[position->step]);
    if (!rings)
        return std::nullopt;
    const Temperature middle = rings->low + (rings->high - rings->low) * 0.5;
    const Duration left = position->expectedEnd - now;
    return RingClock{*position->ring,
                     rings->count,
                     position->motion,
                     *position->target < middle,
                     *position->target,
                     position->expectedEnd,
                     left,
                     position->motion == Motion::level && left <= cueBefore};
}

} // namespace ringhold
