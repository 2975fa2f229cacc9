#include "core/cones/heat_work.h"

#include <cmath>

namespace ringhold {

namespace {

/// 1 - x e^x E1(x), without cancellation, by 20 levels of the continued fraction
/// e^x E1(x) = 1 / (x+1 - 1 / (x+3 - 4 / (x+5 - 9 / ...))).
double oneMinusScaledE1(double x) {
    double tail = 0;
    for (int n = 20; n >= 2; --n)
        tail = n * n / (x + 2 * n + 1 - tail);
    const double c = 1 / (x + 3 - tail);
    return (1 - c) / (x + 1 - c);
}

/// Below this change of E/(RT) along a line the integrand is smooth enough for the rule beside it.
constexpr double midpointLimit = 3e-4; // error x^2/24: 4e-9
constexpr double gaussLimit = 0.05;    // two-point Gauss, error x^4/4320: 1.5e-9

} // namespace

double lnTemperatureIntegral(double theta_K, double kelvin) {
    const double x = theta_K / kelvin;
    return std::log(kelvin) - x + std::log(oneMinusScaledE1(x));
}

double HeatWorkLaw::rate_per_s(double kelvin) const {
    return std::exp(m_lnA - m_activation_K / kelvin);
}

double HeatWorkLaw::gained(double from_K, double to_K, double seconds) const {
    const double rise_K = to_K - from_K;
    const double change = std::abs(m_activation_K * rise_K / (from_K * to_K));
    const double middle_K = from_K + rise_K / 2;
    if (change < midpointLimit)
        return seconds * rate_per_s(middle_K);
    if (change < gaussLimit) {
        const double reach_K = rise_K / (2 * std::sqrt(3.0));
        return seconds / 2 * (rate_per_s(middle_K - reach_K) + rate_per_s(middle_K + reach_K));
    }
    const double upTo = std::exp(m_lnA + lnTemperatureIntegral(m_activation_K, to_K));
    const double upFrom = std::exp(m_lnA + lnTemperatureIntegral(m_activation_K, from_K));
    return seconds * (upTo - upFrom) / rise_K;
}

std::optional<double> HeatWorkLaw::secondsToGain(double work, double from_K, double to_K,
                                                 double seconds) const {
    if (gained(from_K, to_K, seconds) < work)
        return std::nullopt;
    const double slope_K_per_s = (to_K - from_K) / seconds;
    double low = 0;
    double high = seconds;
    double guess = seconds / 2;
    // Newton on ln W, held inside a bracket that each step narrows.
    for (int i = 0; i < 60 && high - low > 1e-6 * seconds && high - low > 1e-3; ++i) {
        const double at_K = from_K + slope_K_per_s * guess;
        const double sofar = gained(from_K, at_K, guess);
        if (std::abs(sofar / work - 1) < 1e-9)
            break;
        (sofar < work ? low : high) = guess;
        const double next = sofar > 0 ? guess - std::log(sofar / work) * sofar / rate_per_s(at_K) : high;
        guess = next > low && next < high ? next : (low + high) / 2;
    }
    return guess;
}

Temperature HeatWorkLaw::endPoint(Rate climb) const {
    const double wanted = std::log(climb.celsiusPerHour() / 3600.0) - m_lnA;
    double kelvin = 1400;
    for (int i = 0; i < 50; ++i) {
        // d ln I / dT = e^-x / I, close to E/(RT^2) for a large x
        const double ln = lnTemperatureIntegral(m_activation_K, kelvin);
        const double step = (wanted - ln) / std::exp(-m_activation_K / kelvin - ln);
        kelvin = std::max(kelvin / 2, kelvin + std::min(step, 200.0));
        if (std::abs(step) < 1e-9)
            break;
    }
    return Temperature::fromKelvin(kelvin);
}

} // namespace ringhold
