// What a plan takes from the mains, and whether the kiln can follow it.
#pragma once

#include "core/plan/planned_curve.h"
#include "core/units/electrical.h"

#include <cstddef>
#include <vector>

namespace ringhold {

/// A stretch in which the model kiln is off the planned curve by more than 2 °C.
struct CannotFollow {
    std::size_t step = 0; ///< index in Plan::steps; a longer stretch is told step by step
    Instant start;
    Instant end;
    TemperatureDifference worst; ///< kiln minus plan: below 0 at full power, above 0 with the power off
};

struct StepEnergy {
    std::size_t step = 0; ///< index in Plan::steps
    Energy energy;
    double peakShare = 0; ///< of full power at the line's volts, 0 to 1
};

/// The model kiln at an instant.
struct KilnTracePoint {
    Instant at;
    KilnState kiln;
};

/// Figures of a model, not of a meter: they stand and fall with `basis`. A gas kiln's are of no use.
struct PlanEnergy {
    Energy total;
    std::vector<StepEnergy> steps;
    double peakShare = 0;
    std::vector<CannotFollow> cannotFollow;
    std::vector<KilnTracePoint> trace; ///< what the kiln would really do, about each minute
    KilnBasis basis = KilnBasis::typical;
    Volts line; ///< that it was reckoned for

    /// In the currency of the price.
    double cost(double pricePerKilowattHour) const { return total.kilowattHours() * pricePerKilowattHour; }
};

/// Runs the two-node kiln along a curve that was planned in that context. Each second the power is what
/// brings the chamber back to the curve, between none and full at the line's volts. The clock does not wait
/// for a kiln that falls behind.
PlanEnergy planEnergy(const PlannedCurve& planned, const PlanContext& context);

} // namespace ringhold
