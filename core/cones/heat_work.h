// The heat-work law of one cone: the rate at which heat works on it, and its exact integral.
#pragma once

#include "core/units/temperature.h"
#include "core/units/time.h"

#include <optional>

namespace ringhold {

/// Molar gas constant, J/(mol K), exact in the SI of 2019.
inline constexpr double gasConstant_J_per_mol_K = 8.314462618;

/// dW/dt = A exp(-E / (R T)), T in kelvin. A cone is down when W reaches 1. At a constant rate this is
/// Kissinger's relation (Analytical Chemistry 29, 1957, 1702).
class HeatWorkLaw {
  public:
    /// Both from a fit to published end points; E above 0.
    HeatWorkLaw(double activation_J_per_mol, double lnA_per_s)
        : m_activation_K(activation_J_per_mol / gasConstant_J_per_mol_K), m_lnA(lnA_per_s) {}

    double activation_J_per_mol() const { return m_activation_K * gasConstant_J_per_mol_K; }
    double lnA_per_s() const { return m_lnA; }

    /// W per second at that temperature, above 0 K.
    double rate_per_s(double kelvin) const;

    /// W gained while the temperature goes in a straight line from one to the other within `seconds` (at
    /// least 0). Exact but for rounding: relative error below 1e-8 for any two temperatures above 200 K.
    double gained(double from_K, double to_K, double seconds) const;

    /// When, in seconds from the start of such a straight line, `work` (above 0) has been gained; nothing if
    /// the line ends before.
    std::optional<double> secondsToGain(double work, double from_K, double to_K, double seconds) const;

    /// Where a steady climb from cold ends the cone (W = 1). The rate must be above 0.
    Temperature endPoint(Rate climb) const;

    /// How much W grows, as a fraction, for each °C more: E / (R T^2).
    double sensitivity_per_C(double kelvin) const { return m_activation_K / (kelvin * kelvin); }

  private:
    double m_activation_K; ///< E / R
    double m_lnA;
};

/// ln of the integral of exp(-theta / T) dT from 0 to `kelvin`, theta = E / R, both in K: the temperature
/// integral of kinetics, through the continued fraction of the exponential integral E1 (NIST Digital Library
/// of Mathematical Functions 6.9.1). Relative error of the integral below 1e-10 while theta / T is above 10.
double lnTemperatureIntegral(double theta_K, double kelvin);

} // namespace ringhold
