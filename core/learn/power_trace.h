// What a firing took from the mains, from its own readings.
#pragma once

#include "core/firing/firing_record.h"
#include "core/units/electrical.h"

#include <optional>
#include <vector>

namespace ringhold {

/// From this instant until the next point.
struct PowerPoint {
    Instant at;
    Power power;
    std::optional<Volts> line; ///< the volts then, where they were read
};

/// In time order.
using PowerTrace = std::vector<PowerPoint>;

/// How the power is known.
enum class PowerBasis {
    voltsAndAmps,   ///< volts times amps, the channels of amps added up
    ratedVoltsAmps, ///< amps times the plate's volts
    dutyOfRated,    ///< duty times the plate's power, with the square of the volts where they were read
};

struct FiringPower {
    PowerTrace trace;
    PowerBasis basis = PowerBasis::voltsAndAmps;
};

/// From the record's channels, struck readings left out; nothing where neither amps nor duty were read, or
/// the plate's figures are missing that they need.
std::optional<FiringPower> powerOf(const FiringRecord& record);

/// The gaps of more than 10 min between points, in which nobody knows the power. (How much a firing took is
/// core/learn/firing_energy.h's to say.)
Duration missingIn(const PowerTrace& trace);

/// The mean volts within [from, to], every minute counting alike; nothing where none were read.
std::optional<Volts> meanLine(const PowerTrace& trace, Instant from, Instant to);
/// Likewise the mean power.
std::optional<Power> meanPower(const PowerTrace& trace, Instant from, Instant to);

} // namespace ringhold
