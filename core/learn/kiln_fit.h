// This kiln's own constants, from its past firings.
#pragma once

#include "core/base/result.h"
#include "core/kiln/two_node_kiln.h"
#include "core/learn/power_trace.h"
#include "core/units/curve.h"

#include <optional>
#include <span>
#include <vector>

namespace ringhold {

/// A past firing: what went in and how hot it became.
struct KilnHistory {
    Curve control; ///< as the control probe read
    PowerTrace power;
    PowerBasis basis = PowerBasis::voltsAndAmps;
    std::optional<double> load_kg; ///< ware and furniture; of all firings or of none
    Temperature surroundings = Temperature::fromCelsius(22);
};

/// The constants of the two-node kiln, likely and as they may be.
struct KilnFit {
    KilnConstants likely;             ///< for the load of `load_kg`
    std::vector<KilnConstants> draws; ///< sets that may be true, all alike likely
    double load_kg = 0;               ///< mean load of the firings; 0 when they did not tell
    int firings = 0;
    double residualSd_C = 0; ///< how far the kiln is from its model

    /// Constants for another load: the chamber's heat capacity changes by 1050 J/(kg K) of ware and shelves
    /// (remembered, not seen: about that of fired clay and cordierite).
    KilnConstants loaded(const KilnConstants& constants, std::optional<double> today_kg) const;
};

/// Nonlinear least squares over heat capacities, losses and power, in logarithms about `start` (the kiln that
/// its plate tells: core/plan/plan_kiln.h): each within 35 %, losses of the chamber within 50, its radiating
/// area within 60; power within 2 % where volts and amps were read, else 10. Curves are compared each ten
/// minutes, through a probe lag of 45 s. What the kiln deviates from its model, and how long it does so,
/// widens the intervals. At most 24 h of each firing count. Firings whose power is not known for more than 15
/// min in all are left out; badInput when none is left.
Result<KilnFit> fitKiln(std::span<const KilnHistory> firings, const KilnConstants& start);

} // namespace ringhold
