// The curves of a record: those of its channels, and the plan's.
#pragma once

#include "core/firing/firing_record.h"
#include "core/report/report_content.h"
#include "core/watch/step_follower.h"

#include <optional>
#include <vector>

namespace ringhold {

/// A temperature channel's readings without the struck ones; of several at one instant the last.
Curve curveOf(const FiringRecord& record, ChannelId channel);

/// What the firing is judged by: the first temperature channel of an instrument that has readings, else that
/// of the readings by hand.
std::optional<ChannelId> controlChannel(const FiringRecord& record);
/// Its probe, if the record knows it.
const Probe* controlProbe(const FiringRecord& record);
/// The other temperature channels with readings, under the names of their probes.
std::vector<NamedCurve> otherCurves(const FiringRecord& record);

/// For following its plan, from its first reading on.
PlanContext planContext(const FiringRecord& record, const Curve& control, ConeDownEstimate coneDown);

/// When a step of the plan was under way.
struct StepRun {
    std::size_t step = 0; ///< index in Plan::steps
    Instant start;
    Instant levelStart; ///< when its first level part began; the start if there is none
    Instant end;
};

/// The plan as the firing went through it.
struct PlanFollowed {
    std::vector<StepRun> runs; ///< in time order, those that had begun by the last reading
    Curve drawn;               ///< re-timed at each real end
};

/// Nothing without a plan that passes check() or without readings.
std::optional<PlanFollowed> followPlan(const FiringRecord& record, const Curve& control,
                                       ConeDownEstimate coneDown);

} // namespace ringhold
