// The kiln that a plan is reckoned for, as far as its plate tells.
#pragma once

#include "core/kiln/two_node_kiln.h"

#include <optional>

namespace ringhold {

/// Where the constants of a kiln's model come from, to be said beside every figure reckoned with them.
enum class KilnBasis {
    typical,            ///< one sound electric kiln of 11 kW, whatever kiln is meant
    scaledByRatedPower, ///< that kiln, made larger or smaller to the rated power of the one meant
};

struct KilnModel {
    KilnConstants constants;
    KilnBasis basis = KilnBasis::typical;
};

/// The typical kiln, its power, heat capacities and losses all multiplied so that its full power is the rated
/// one: it then climbs and cools alike at the same share of power. A figure that is not finite and above 0
/// counts as none; without rated power the kiln stays typical.
KilnModel kilnModelFor(std::optional<Power> ratedPower, std::optional<Volts> ratedVolts);

} // namespace ringhold
