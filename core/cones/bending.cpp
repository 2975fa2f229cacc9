#include "core/cones/bending.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace ringhold {

namespace {

constexpr double lean_deg = 8;
constexpr double degreesPerHour = 15;

double lnTanHalf(double degrees) {
    return std::log(std::tan(degrees / 2 * std::numbers::pi / 180));
}

const double atStanding = lnTanHalf(lean_deg);
const double atDown = lnTanHalf(90 + lean_deg);

} // namespace

double BendingLaw::hourAt(double work) const {
    if (work >= 1)
        return hourDown;
    const double V = std::pow(std::max(work, 0.0), m_exponent);
    const double half_rad = std::atan(std::exp(atStanding + V * (atDown - atStanding)));
    const double theta_deg = 2 * half_rad * 180 / std::numbers::pi - lean_deg;
    return std::clamp(theta_deg / degreesPerHour, hourStanding, hourDown);
}

double BendingLaw::workAt(double hour) const {
    const double theta_deg = std::clamp(hour, hourStanding, hourDown) * degreesPerHour;
    const double V = (lnTanHalf(theta_deg + lean_deg) - atStanding) / (atDown - atStanding);
    return std::pow(std::max(V, 0.0), 1 / m_exponent);
}

} // namespace ringhold
