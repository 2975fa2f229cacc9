// What the potter has told about the lines of an instrument.
#pragma once

#include "core/base/result.h"
#include "core/thermocouple/thermocouple_type.h"
#include "core/units/temperature.h"

#include <map>
#include <optional>
#include <string>

namespace ringhold {

/// The unit of a number that comes without one.
enum class BareUnit { celsius, fahrenheit };

enum class DecimalMark {
    automatic, ///< point, or comma where it cannot mean anything else
    point,
    comma
};

struct LineFormat {
    BareUnit bareUnit = BareUnit::celsius;
    DecimalMark decimalMark = DecimalMark::automatic;
    /// Millivolts are understood only when this is set.
    std::optional<ThermocoupleType> thermocouple;
    /// Temperature of the meter's terminals, where it does not correct for them itself.
    Temperature coldJunction = Temperature::fromCelsius(0);
};

/// From the parameters of an instrument's specification: unit=C or F, decimal=point or comma, type=K and so
/// on, cold=22 (°C). Takes those out of the map and leaves the others. badInput for a value that makes no
/// sense.
Result<LineFormat> takeLineFormat(std::map<std::string, std::string>& parameters);

} // namespace ringhold
