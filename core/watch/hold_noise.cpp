#include "core/watch/hold_noise.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double usualCorrelation = 0.8; ///< of readings up to a minute apart
constexpr double decay_min = 4.5;        ///< beyond: the likeness falls to 1/e in this time (0.8 at 1 min)
constexpr double assumed_min = 60;
constexpr double leastAssumed = 30, mostAssumed = 600; ///< readings
constexpr double memory = 2000;                        ///< readings
constexpr double wild = 9; ///< a square difference counts for so many usual ones at most
constexpr double mostCorrelation = 0.99;

double square(double x) {
    return x * x;
}

void learn(double& mean, double value, double share) {
    mean += share * (std::min(value, wild * mean) - mean);
}

std::size_t farReadings(Duration spacing) {
    const double seconds = inSeconds(spacing);
    return seconds > 240  ? 2
           : seconds > 90 ? 5
                          : std::max<std::size_t>(15, static_cast<std::size_t>(150 / seconds));
}

} // namespace

void HoldNoise::begin(Duration spacing) {
    m_spacing = spacing;
    m_far = farReadings(spacing);
    const double phi = std::min(usualCorrelation, std::exp(-inMinutes(spacing) / decay_min));
    const double variance_C2 = square(m_usual_C);
    m_near_C2 = 2 * variance_C2 * (1 - phi);
    m_far_C2 = 2 * variance_C2 * (1 - std::pow(phi, static_cast<double>(m_far)));
    m_weight = std::clamp(assumed_min / inMinutes(spacing), leastAssumed, mostAssumed);
}

void HoldNoise::add(const CurvePoint& reading) {
    if (!m_run.empty()) {
        const Duration spacing = reading.at - m_run.back().at;
        if (m_spacing == Duration(0) || spacing < m_spacing / 2)
            begin(spacing);
        if (spacing > m_spacing * 3 / 2 || spacing < m_spacing / 2)
            m_run.clear(); // a gap: these two are no neighbours
    }
    const double now_C = reading.temperature.celsius();
    if (!m_run.empty()) {
        const double share = 1 / std::min(++m_weight, memory);
        learn(m_near_C2, square(now_C - m_run.back().temperature.celsius()), share);
        if (m_run.size() == m_far)
            learn(m_far_C2, square(now_C - m_run.front().temperature.celsius()), share);
    }
    m_run.push_back(reading);
    if (m_far > 0 && m_run.size() > m_far)
        m_run.pop_front();
}

/// Dk / D1 = 1 + phi + ... + phi^(k-1), solved by halving.
double HoldNoise::correlation() const {
    if (m_near_C2 <= 0)
        return 0;
    const double ratio = m_far_C2 / m_near_C2;
    const auto sum = [this](double phi) {
        return (1 - std::pow(phi, static_cast<double>(m_far))) / (1 - phi);
    };
    double low = 0, high = mostCorrelation;
    for (int i = 0; i < 30; ++i) {
        const double middle = (low + high) / 2;
        (sum(middle) < ratio ? low : high) = middle;
    }
    return low;
}

double HoldNoise::sd_C() const {
    if (m_spacing == Duration(0))
        return m_usual_C;
    const double phi = correlation();
    return std::sqrt(m_near_C2 / 2 / (1 - phi));
}

double HoldNoise::intensity_C2min() const {
    const double phi = correlation();
    const double spacing_min = m_spacing == Duration(0) ? 1.0 : inMinutes(m_spacing);
    return square(sd_C()) * (1 + phi) / (1 - phi) * spacing_min;
}

} // namespace ringhold
