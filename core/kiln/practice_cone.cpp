#include "core/kiln/practice_cone.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace ringhold {

namespace {

constexpr double gasConstant_J_per_molK = 8.314462618;

double radians(double degrees) {
    return degrees * std::numbers::pi / 180.0;
}

} // namespace

PracticeCone::PracticeCone(PracticeConeNature nature) : m_nature(std::move(nature)) {}

double PracticeCone::rate_per_s(Temperature felt) const {
    const double kelvin = (felt - m_nature.deviation).kelvin();
    return std::exp(m_nature.lnA_per_s - m_nature.activation_J_per_mol / (gasConstant_J_per_molK * kelvin));
}

void PracticeCone::advance(Temperature felt, Duration step) {
    const double rate = rate_per_s(felt);
    m_work += (m_lastRate_per_s.value_or(rate) + rate) / 2.0 * inSeconds(step);
    m_lastRate_per_s = rate;
}

double PracticeCone::hour() const {
    constexpr double lean_deg = 8.0;
    constexpr double downAngle_deg = 90.0;
    const double bend = std::pow(std::min(m_work, 1.0), m_nature.bendExponent);
    const double standing = std::log(std::tan(radians(lean_deg / 2)));
    const double down = std::log(std::tan(radians((downAngle_deg + lean_deg) / 2)));
    const double half = std::atan(std::exp(standing + (down - standing) * bend));
    const double angle_deg = 2.0 * half * 180.0 / std::numbers::pi - lean_deg;
    return std::clamp(angle_deg / 15.0, 0.0, 6.0);
}

} // namespace ringhold
