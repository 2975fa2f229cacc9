// How far a new thermocouple may be from its reference function. Wire that has been in a kiln drifts beyond.
#pragma once

#include "core/thermocouple/thermocouple_type.h"
#include "core/units/temperature.h"

#include <optional>

namespace ringhold {

/// Classes of IEC 60584-1 (limits unchanged since 60584-2:1982) and of ASTM E230.
enum class ToleranceClass { iec1, iec2, iec3, astmStandard, astmSpecial };

struct Tolerance {
    TemperatureDifference limit; ///< plus or minus
    bool extrapolated = false;   ///< above the class's own range: an estimate, not a warranty
};

/// The limit of error of new wire. Above the class's range its formula is carried on to the top of the
/// thermocouple's definedRange() and flagged. Nothing where the standard has no such class for the type,
/// below the class's range, above definedRange(), and for NaN. The classes for cold service alone (IEC class
/// 3 of E, K, N and T, -200 to 40 °C) are not carried on above theirs; ASTM limits below 0 °C are left out.
std::optional<Tolerance> tolerance(ThermocoupleType type, ToleranceClass toleranceClass, Temperature at);

} // namespace ringhold
