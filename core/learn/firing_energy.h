// What electricity a firing took, and how that is known: the one place that reckons it for the report, for
// past firings, for cost and for the kiln's health. (A live firing is added up by the same EnergyMeter.)
#pragma once

#include "core/firing/firing_record.h"
#include "core/units/electrical.h"

#include <optional>
#include <vector>

namespace ringhold {

/// How it is known, the most trusted first.
enum class EnergySource {
    meterStands,       ///< the newest stand of the electricity meter less the oldest
    voltsAndAmps,      ///< volts times amps as they were read, the channels of amps added up
    ratedVoltsAndAmps, ///< amps times the plate's volts
    dutyAndRatedPower  ///< duty times the plate's power, by the square of the volts where they were read
};

struct KnownEnergy {
    Energy energy;
    EnergySource source = EnergySource::meterStands;

    /// As a share of it. Assumptions of ours, no measurement: 2 % for a meter (whole units, its class), 5 %
    /// for volts and amps (clamp, power factor), 8 % with the plate's volts, 10 % for the duty (elements
    /// age).
    double relativeError() const;
};

/// By each source that the record has, in the order of trust; struck lines and gaps of more than 10 min
/// between readings are left out. What comes to nothing is not told.
std::vector<KnownEnergy> energiesKnown(const FiringRecord& record);

/// The most trusted of them.
std::optional<KnownEnergy> electricityOf(const FiringRecord& record);

} // namespace ringhold
