// Thermocouple voltage to temperature and back on the ITS-90 scale, with the cold junction put right.
#pragma once

#include "core/base/result.h"
#include "core/thermocouple/thermocouple_type.h"
#include "core/units/electrical.h"
#include "core/units/temperature.h"

namespace ringhold {

/// Both ends included.
struct TemperatureRange {
    Temperature low;
    Temperature high;
};

/// Where the reference function of a type is defined: -270 to 1372 °C for K, 0 to 1820 °C for B ...
TemperatureRange definedRange(ThermocoupleType type);

/// Where one emf means one temperature: the whole defined range, but for type B, whose emf falls to
/// -0.0026 mV at 21 °C and is back at zero only at 42.13 °C, so that B reads from 42.14 °C upwards. (Below
/// about 100 °C B gives less than 1 uV/°C: defined, but of little use.)
TemperatureRange readableRange(ThermocoupleType type);

/// Emf with the reference junction at 0 °C. badInput outside definedRange() and for NaN.
Result<Millivolts> emf(ThermocoupleType type, Temperature temperature);

/// The temperature whose emf this is, reference junction at 0 °C; to 1e-6 °C of the reference function's own
/// inverse. badInput when it lies outside readableRange(), and for NaN.
Result<Temperature> temperature(ThermocoupleType type, Millivolts emf);

/// The temperature of the hot junction when a meter reads `meter` and its terminals, the cold junction, are
/// at `coldJunction`: E(hot) = meter + E(coldJunction). Temperatures are never added. The cold junction may
/// be anywhere in definedRange(), so 28 °C will do for type B. badInput as for emf() and temperature().
Result<Temperature> measured(ThermocoupleType type, Millivolts meter, Temperature coldJunction);

/// What a meter reads, E(hot) - E(coldJunction). badInput when either is outside definedRange(), and for NaN.
Result<Millivolts> atMeter(ThermocoupleType type, Temperature hot, Temperature coldJunction);

} // namespace ringhold
