// A plan run on this kiln before it is lit.
#pragma once

#include "core/learn/kiln_fit.h"
#include "core/plan/plan.h"

#include <optional>
#include <vector>

namespace ringhold {

/// The 5 %, 50 % and 95 % points of a quantity; nothing where so many runs never came there.
struct RehearsedRange {
    std::optional<double> p05;
    std::optional<double> median;
    std::optional<double> p95;
};

struct RehearsalSettings {
    Volts line{240};
    std::optional<double> load_kg;
    Temperature start = Temperature::fromCelsius(22); ///< of the kiln all through
    Temperature surroundings = Temperature::fromCelsius(22);
    /// What the control probe reads above what the cones feel, for cone waits.
    double offset_C = 0;
    double offsetSd_C = 8;
};

struct RehearsedStep {
    std::size_t step = 0;      ///< index in Plan::steps
    RehearsedRange end_h;      ///< since lighting
    RehearsedRange behind_C;   ///< how far the kiln falls behind the rate of a climb or drop, at the worst
    RehearsedRange energy_kWh; ///< of the step
    double stalledShare = 0; ///< of runs in which the kiln gets no farther here, or its cone never goes down
};

struct RehearsedPoint {
    double hour = 0;
    double p05_C = 0;
    double median_C = 0;
    double p95_C = 0;
};

struct Rehearsal {
    std::vector<RehearsedStep> steps;
    std::vector<RehearsedPoint> band; ///< each five minutes, until most runs have ended
    RehearsedRange energy_kWh;
    RehearsedRange length_h;
    double stalledShare = 0;
};

/// Each of the fit's draws is run under an ideal controller that keeps the plan's rates as far as the power
/// goes, and goes on to the next step once the temperature is there; a way without a rate is gone at full
/// power or none. A cone wait ends when its cone is down by the heat-work law, the offset drawn too; a cone
/// that stands after the longest soak stalls the run, and so does a climb that gains less than 2 °C in half
/// an hour at full power. At each arrival probe and controller take up to 2.5 min to see that they are there
/// (an assumption, drawn too). The band is all that is drawn; what else a controller does is not in it. The
/// plan must pass check().
Rehearsal rehearse(const Plan& plan, const KilnFit& kiln, const RehearsalSettings& settings);

} // namespace ringhold
