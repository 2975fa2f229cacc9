// What an oxygen probe says of the kiln's atmosphere, and when zinc is lost to it. Estimates: the probe must
// be hot (700 °C and more) and tight, its temperature that of the ware, and zinc oxide in a glaze is less
// active than pure. It warns of ware, not of fumes: no gas detector.
#pragma once

#include "core/units/electrical.h"
#include "core/units/temperature.h"

namespace ringhold {

/// Share of oxygen by volume, 0 to 0.2095, from E = (R T / 4 F) ln(0.2095 / pO2) against air at 1 atm
/// (Nernst).
double oxygenShareFrom(Millivolts probe, Temperature at);
/// The probe's voltage for a share of oxygen above 0.
Millivolts oxygenProbeAt(double oxygenShare, Temperature at);

/// Zinc vapour over pure zinc oxide, atm: p = exp(-dG / R T) / sqrt(pO2), dG = 466.46 - 0.20111 T kJ/mol of
/// ZnO = Zn(g) + 1/2 O2 (reckoned from CODATA key values).
double zincPressure_atm(Millivolts probe, Temperature at);

enum class Atmosphere { oxidising, between, reducing };

/// By the probe's voltage: below about 100 mV oxidising, above 450 mV reducing, steep between (at 1200 °C).
Atmosphere atmosphereFrom(Millivolts probe);

/// The probe is hot enough to be believed.
bool oxygenProbeIsHot(Temperature at);

/// From here on zinc is said to be at risk: an assumption, a tenth of a thousandth of the air.
inline constexpr double zincRisk_atm = 1e-4;

} // namespace ringhold
