// What the plan and the kiln together let the temperature do.
#pragma once

#include "core/cones/levelling.h"
#include "core/watch/step_follower.h"

#include <optional>

namespace ringhold {

/// The climb as the kiln shows it, then the plan's steps, holds included, up to the cone wait, whose set
/// point is soaked; without a cone wait up to the drop, and down with it. Five cases of the rate; where the
/// kiln may run out of power, those of `levelling` too, each by its belief. Once the plan drops, its planned
/// course.
FutureTemperature futureOnPlan(const ClimbShown& shown, const StepFollower& follower,
                               const std::optional<Levelling>& levelling = std::nullopt);

/// The climb going on as shown, or levelling off, without a plan.
FutureTemperature futureWithoutPlan(const ClimbShown& shown, const std::optional<Levelling>& levelling);

/// The climb of the present step alone: what the kiln did in the one before says nothing of it. Until the
/// step has shown enough of itself the plan's rate counts, give or take a tenth. `shown` is the whole
/// curve's, the follower has a position.
ClimbShown climbInStep(const Curve& curve, ClimbShown shown, const StepFollower& follower);

/// How fast the plan's next drop goes; at the kiln's own pace, that of its first three minutes, in which
/// cones still feel it. Nothing when no drop is ahead.
std::optional<Rate> nextDropRate(const StepFollower& follower);

} // namespace ringhold
