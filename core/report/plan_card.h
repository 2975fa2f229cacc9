// What a plan card says: the plan as segments to key into the kiln's controller, and when to step on by hand.
#pragma once

#include "core/cones/offset_prior.h"
#include "core/plan/planned_curve.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace ringhold {

/// Which set points the probe's offset moves.
enum class CardCorrection {
    none,      ///< the plan's temperatures are this probe's own throughout
    coneWaits, ///< only where a cone is waited for; the others were found to work as this probe reads them
    all        ///< every temperature of the plan is what the ware shall feel
};

/// A temperature to key in, moved by an offset that is known within an interval.
struct SetPoint {
    Temperature planned; ///< as the plan says
    Temperature keyed;   ///< as the probe should read
    Temperature low;     ///< `keyed` where the offset is at the 5 % end of its belief,
    Temperature high;    ///< and at the 95 % end; all three as `planned` where nothing is corrected

    /// What the potter adds to the plan.
    TemperatureDifference correction() const { return keyed - planned; }
};

/// One segment of a controller: a ramp and the dwell at its end.
struct CardSegment {
    std::size_t step = 0;     ///< index in Plan::steps, of its ramp
    std::optional<int> ring;  ///< within rings: which one, from 1
    std::optional<Rate> rate; ///< without: as fast as the kiln goes
    Motion motion = Motion::level;
    SetPoint set;
    Duration dwell{0};
    bool holds = false;             ///< a hold of the plan lies in it
    std::optional<Duration> begins; ///< after the start, if the planned curve is known
};

/// Where the card leaves it to the potter: no controller sees a cone.
struct StepOnByHand {
    std::size_t segment = 0;         ///< index in PlanCard::segments, the one to be left
    std::optional<std::size_t> next; ///< the one to go to; none when the programme then ends
    std::string cone;
    Duration longestSoak{0};   ///< after which the controller steps on by itself, cone down or not
    Temperature ceiling;       ///< never above it, by this probe
    bool cutToCeiling = false; ///< the corrected set point would lie above the ceiling, and is cut to it
    std::optional<Duration> expected;         ///< when the cone is down, after the start
    ConeWaitEnd basis = ConeWaitEnd::assumed; ///< of `expected`
};

struct PlanCard {
    std::string name;
    std::vector<CardSegment> segments;
    std::vector<StepOnByHand> byHand;
    /// The plan's last step when it is to cool as the kiln does: the programme ends before it.
    std::optional<Temperature> coolsByItselfTo;
    OffsetPrior offset; ///< at the cones' temperature
    CardCorrection correction = CardCorrection::coneWaits;
    std::optional<Duration> length; ///< of the whole firing
};

/// The plan must pass check(). `offsetAtCones` is probe minus what the cones feel, hence what is felt plus
/// the offset is keyed in; elsewhere it is carried down from the hottest cone wait's set point. `planned` is
/// the plan's own curve, for the times; none may be given.
PlanCard planCard(const Plan& plan, const OffsetPrior& offsetAtCones, CardCorrection correction,
                  const PlannedCurve* planned = nullptr);

} // namespace ringhold
