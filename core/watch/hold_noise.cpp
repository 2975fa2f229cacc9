#include "core/watch/hold_noise.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double usualCorrelation = 0.8; ///< of readings up to a minute apart
constexpr double decay_min = 4.5;        ///< beyond: the likeness falls to 1/e in this time (0.8 at 1 min)
constexpr double assumedReadings = 60;   ///< weight of the assumption
constexpr double memory = 1500;          ///< readings

double square(double x) {
    return x * x;
}

} // namespace

void HoldNoise::begin(Duration spacing) {
    m_spacing = spacing;
    const double phi = std::min(usualCorrelation, std::exp(-inMinutes(spacing) / decay_min));
    const double variance_C2 = square(m_usual_C);
    m_spread = {2 * variance_C2 * (1 - phi), 2 * variance_C2 * (1 - phi * phi)};
    m_weight = assumedReadings;
    m_beforeLast_C.reset();
}

void HoldNoise::add(const CurvePoint& reading) {
    const double now_C = reading.temperature.celsius();
    if (m_last) {
        const Duration spacing = reading.at - m_last->at;
        const double last_C = m_last->temperature.celsius();
        if (m_spacing == Duration(0) || spacing > m_spacing * 3 / 2 || spacing < m_spacing / 2) {
            if (m_spacing == Duration(0) || spacing < m_spacing / 2)
                begin(spacing);
            m_beforeLast_C.reset(); // a gap: these two are no neighbours
        } else {
            if (m_beforeLast_C) {
                const double share = 1 / std::min(++m_weight, memory);
                m_spread.one_C2 += share * (square(now_C - last_C) - m_spread.one_C2);
                m_spread.two_C2 += share * (square(now_C - *m_beforeLast_C) - m_spread.two_C2);
            }
            m_beforeLast_C = last_C;
        }
    }
    m_last = reading;
}

double HoldNoise::correlation() const {
    return m_spread.one_C2 > 0 ? std::clamp(m_spread.two_C2 / m_spread.one_C2 - 1, 0.0, 0.95) : 0.0;
}

double HoldNoise::sd_C() const {
    return m_spacing == Duration(0) ? m_usual_C : std::sqrt(m_spread.one_C2 / 2 / (1 - correlation()));
}

double HoldNoise::intensity_C2min() const {
    const double phi = correlation();
    const double spacing_min = m_spacing == Duration(0) ? 1.0 : inMinutes(m_spacing);
    return square(sd_C()) * (1 + phi) / (1 - phi) * spacing_min;
}

} // namespace ringhold
