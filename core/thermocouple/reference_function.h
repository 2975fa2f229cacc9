// The ITS-90 reference functions of the letter-designated thermocouples, as numbers.
// Source: NIST Monograph 175 (1993); the same functions stand in IEC 60584-1 and ASTM E230.
#pragma once

#include "core/thermocouple/thermocouple_type.h"

#include <array>
#include <span>

namespace ringhold {

/// One range of a reference function: E = sum of c[i] t^i, in mV with t in °C and the reference junction at
/// 0 °C. Type K above 0 °C adds a bell a0 exp(a1 (t - a2)^2) for the ordering of its alloy.
struct ReferencePiece {
    ThermocoupleType type = ThermocoupleType::K;
    double low_C = 0;
    double high_C = 0;
    std::array<double, 15> c{};
    double bellHeight_mV = 0; ///< a0
};

struct EmfAndSlope {
    double emf_mV = 0;
    double slope_mV_per_C = 0;
};

/// The pieces of a type, adjoining, in rising order; never empty. Where two meet they agree to 1e-7 mV.
std::span<const ReferencePiece> referencePieces(ThermocoupleType type);

/// Value and first derivative. Meant for t_C within the piece, not checked.
EmfAndSlope evaluate(const ReferencePiece& piece, double t_C);

} // namespace ringhold
