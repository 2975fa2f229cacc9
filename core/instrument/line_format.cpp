#include "core/instrument/line_format.h"

#include <charconv>
#include <cmath>

namespace ringhold {

namespace {

Error badParameter(const std::string& name, const std::string& value, const std::string& wanted) {
    return {ErrorKind::badInput, name + "=" + value + ": " + wanted};
}

std::optional<double> finiteNumber(const std::string& text) {
    double number = 0;
    const char* end = text.data() + text.size();
    const auto [stopped, error] = std::from_chars(text.data(), end, number);
    const bool whole = error == std::errc() && stopped == end && std::isfinite(number);
    return whole ? std::optional(number) : std::nullopt;
}

/// Sets what one parameter tells; false when its value makes no sense.
bool set(LineFormat& format, const std::string& name, const std::string& value) {
    if (name == "unit") {
        format.bareUnit = value == "F" ? BareUnit::fahrenheit : BareUnit::celsius;
        return value == "F" || value == "C";
    }
    if (name == "decimal") {
        format.decimalMark = value == "comma" ? DecimalMark::comma : DecimalMark::point;
        return value == "comma" || value == "point";
    }
    if (name == "type") {
        format.thermocouple = thermocoupleTypeNamed(value);
        return format.thermocouple.has_value();
    }
    const auto cold_C = finiteNumber(value);
    format.coldJunction = Temperature::fromCelsius(cold_C.value_or(0));
    return cold_C && *cold_C > -50 && *cold_C < 120;
}

} // namespace

Result<LineFormat> takeLineFormat(std::map<std::string, std::string>& parameters) {
    struct Known {
        const char* name;
        const char* wanted;
    };
    LineFormat format;
    for (const Known& known :
         {Known{"unit", "C or F is wanted"}, Known{"decimal", "point or comma is wanted"},
          Known{"type", "a thermocouple's letter is wanted: B, E, J, K, N, R, S or T"},
          Known{"cold", "a temperature in °C is wanted, of the meter's terminals"}}) {
        const auto parameter = parameters.find(known.name);
        if (parameter == parameters.end())
            continue;
        if (!set(format, known.name, parameter->second))
            return badParameter(known.name, parameter->second, known.wanted);
        parameters.erase(parameter);
    }
    return format;
}

} // namespace ringhold
