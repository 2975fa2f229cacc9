// The curve that a plan means the kiln to draw: when each step begins and ends, and how hot it is by then.
#pragma once

#include "core/plan/plan.h"
#include "core/plan/plan_kiln.h"
#include "core/units/curve.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace ringhold {

/// When a cone is down on a curve that goes from before the firing to the end of the cone wait's longest
/// soak, in the probe's degrees; none when it still stands by then. The heat-work model answers it.
using ConeDownEstimate = std::function<std::optional<Instant>(const Curve& whole, const std::string& cone)>;

/// What a plan's curve depends on beside the plan.
struct PlanContext {
    Instant start;
    Temperature startTemperature = Temperature::fromCelsius(20); ///< finite
    KilnModel kiln;
    std::optional<Volts> line; ///< the rated volts without it
    Curve soFar;               ///< the real curve before the start, if any; later points are left out
    ConeDownEstimate coneDown; ///< may be empty
};

enum class Motion { up, level, down };

/// A stretch of one motion within a step. A climb is one leg, each ring four.
struct PlannedLeg {
    std::size_t step = 0;    ///< index in Plan::steps
    std::optional<int> ring; ///< within rings: which one, from 1
    Motion motion = Motion::level;
    bool ownPace = false; ///< as the kiln goes: up at full power, down without any
    Instant start;
    Instant end;
    Temperature from;
    Temperature to;
    std::optional<TemperatureDifference> band; ///< half width, in the level part of a hold
};

/// How the planned end of a cone wait was found.
enum class ConeWaitEnd {
    estimated,     ///< the cone is down by then, says the estimate
    stillStanding, ///< after the longest soak it still stands, says the estimate
    assumed,       ///< no estimate was given: half the longest soak is assumed
};

struct PlannedStep {
    std::size_t step = 0; ///< index in Plan::steps
    Instant start;
    Instant
        end; ///< as the start when there is nothing to do, such as a climb to below the present temperature
    Temperature from;
    Temperature to;
    std::optional<TemperatureDifference> band; ///< of a hold
    std::optional<ConeWaitEnd> coneWaitEnd;    ///< of a cone wait
};

/// Steps follow one another without a gap, and so do the legs; legs take at least 1 ms.
struct PlannedCurve {
    Curve curve; ///< from the start on; a corner at each leg's ends, a point about each minute at the kiln's
                 ///< pace
    std::vector<PlannedStep> steps;
    std::vector<PlannedLeg> legs;
    KilnState begin; ///< of the model kiln, at the start

    Instant start() const { return curve.front().at; }
    Instant end() const { return curve.back().at; }
    Duration length() const { return end() - start(); }
    /// Before the start and after the end it is that of the end.
    Temperature temperatureAt(Instant at) const { return ringhold::temperatureAt(curve, at); }
    /// The leg under way at that instant; none before the start and from the end on.
    const PlannedLeg* legAt(Instant at) const;
    /// Whether the end of a cone wait is only assumed, so that all that comes after may shift.
    bool restsOnAssumption() const;
};

/// The whole plan from its start. The plan must pass check().
/// - Where the plan has a rate, the curve keeps it, whether or not a kiln can.
/// - Where it has none (rings, drops and cooling without a rate, the way to a hold) the kiln moves as its
/// two-node
///   model does, down without power or up at full power, yet not slower than 1 °C/h down and 30 °C/h up, so
///   that every plan has an end: planEnergy() tells what the kiln cannot do.
/// - A cone wait climbs towards its set point and soaks there until the cone is down, at the longest as it
/// says.
///   A cone down on the way ends the step there.
/// The model's brick follows from `soFar`; without it the kiln is as warm in the brick as in the chamber.
PlannedCurve planCurve(const Plan& plan, const PlanContext& context);

/// The rest of the plan, re-timed: step `firstStep` begins at that instant and temperature, instead of the
/// context's start. `firstStep` may be the number of steps: then nothing is left but a point. Without
/// `soFar`, the steps before are taken to have gone as planned.
PlannedCurve planCurveFrom(const Plan& plan, const PlanContext& context, std::size_t firstStep, Instant at,
                           Temperature temperature);

} // namespace ringhold
