#include "core/kiln/atmosphere.h"

#include <cmath>

namespace ringhold {

namespace {

constexpr double gasConstant_J_per_molK = 8.314462618;
constexpr double faraday_C_per_mol = 96485.33212;
constexpr double oxygenInAir = 0.2095;
constexpr double oxidisingBelow_mV = 100, reducingAbove_mV = 450;
constexpr double hot_C = 700;
constexpr double zincEnthalpy_J_per_mol = 466.46e3, zincEntropy_J_per_molK = 201.11;

} // namespace

double oxygenShareFrom(Millivolts probe, Temperature at) {
    const double volts = probe.millivolts / 1000;
    return oxygenInAir * std::exp(-4 * faraday_C_per_mol * volts / (gasConstant_J_per_molK * at.kelvin()));
}

Millivolts oxygenProbeAt(double oxygenShare, Temperature at) {
    const double volts =
        gasConstant_J_per_molK * at.kelvin() / (4 * faraday_C_per_mol) * std::log(oxygenInAir / oxygenShare);
    return {1000 * volts};
}

double zincPressure_atm(Millivolts probe, Temperature at) {
    const double dG_J_per_mol = zincEnthalpy_J_per_mol - zincEntropy_J_per_molK * at.kelvin();
    return std::exp(-dG_J_per_mol / (gasConstant_J_per_molK * at.kelvin())) /
           std::sqrt(oxygenShareFrom(probe, at));
}

Atmosphere atmosphereFrom(Millivolts probe) {
    return probe.millivolts < oxidisingBelow_mV  ? Atmosphere::oxidising
           : probe.millivolts > reducingAbove_mV ? Atmosphere::reducing
                                                 : Atmosphere::between;
}

bool oxygenProbeIsHot(Temperature at) {
    return at >= Temperature::fromCelsius(hot_C);
}

} // namespace ringhold
