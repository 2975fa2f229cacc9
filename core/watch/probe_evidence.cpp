#include "core/watch/probe_evidence.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr Duration leastSame = std::chrono::minutes(5);
constexpr Duration leastSameCoarse = std::chrono::minutes(20);
constexpr double coarseStep_C = 0.4;
constexpr int leastSameReadings = 10;
constexpr int timesEverBefore = 3;
constexpr int leastDoubtful = 5; ///< readings
constexpr double plainMove_C = 5;
constexpr double shortReadings = 12, longReadings = 300;
constexpr int enoughScatter = 60; ///< readings before the usual scatter counts
constexpr double jumpTimes = 3;
constexpr double leastScatter_C = 1.5;
constexpr double usualAtLeast_C = 0.2;
constexpr double secondDifference = 6; ///< variance of x0 - 2 x1 + x2 of white noise, in its own variances
constexpr double fall_C = 8, coolest_C = 100;
constexpr Duration scatterSpacing = std::chrono::minutes(2);

TemperatureDifference celsius(double degrees) {
    return TemperatureDifference::fromCelsius(degrees);
}

} // namespace

void ProbeEvidence::add(const CurvePoint& reading) {
    if (!m_first)
        m_first = reading.temperature;
    countSame(reading);
    if (m_last && m_beforeLast && reading.at - m_beforeLast->at <= 2 * scatterSpacing)
        judgeScatter(
            (reading.temperature - m_last->temperature - (m_last->temperature - m_beforeLast->temperature))
                .celsius());
    m_beforeLast = m_last;
    m_last = reading;
}

void ProbeEvidence::countSame(const CurvePoint& reading) {
    if (m_same && m_same->value == reading.temperature) {
        ++m_same->readings;
        return;
    }
    if (m_last)
        m_leastStep_C =
            std::min(m_leastStep_C, std::abs((reading.temperature - m_last->temperature).celsius()));
    const Duration before =
        m_same && m_last ? std::max(m_same->longestBefore, m_last->at - m_same->since) : Duration(0);
    m_same = SameValue{reading.temperature, reading.at, 1, before};
}

void ProbeEvidence::judgeScatter(double third_C) {
    const double square = third_C * third_C;
    ++m_scatterCount;
    m_shortSquare_C2 += (square - m_shortSquare_C2) / std::min<double>(m_scatterCount, shortReadings);
    // what is wild just now is not let into the usual
    if (m_scatterCount < enoughScatter || !noisy())
        m_longSquare_C2 += (std::min(square, 36 * std::max(m_longSquare_C2, .01)) - m_longSquare_C2) /
                           std::min<double>(m_scatterCount, longReadings);
}

std::optional<SameValue> ProbeEvidence::frozen(TemperatureDifference moved) const {
    if (!m_same || !m_last || m_same->readings < leastSameReadings)
        return std::nullopt;
    const Duration length = m_last->at - m_same->since;
    const bool unheardOf = length >= timesEverBefore * m_same->longestBefore;
    const bool shouldHaveMoved = std::abs(moved.celsius()) >= plainMove_C;
    const Duration least = m_leastStep_C >= coarseStep_C && !shouldHaveMoved ? leastSameCoarse : leastSame;
    return length >= least && (unheardOf || shouldHaveMoved) ? m_same : std::nullopt;
}

std::optional<NoiseJump> ProbeEvidence::noisy() const {
    if (m_scatterCount < enoughScatter)
        return std::nullopt;
    const double now_C = std::sqrt(m_shortSquare_C2 / secondDifference);
    const double usual_C = std::max(usualAtLeast_C, std::sqrt(m_longSquare_C2 / secondDifference));
    if (now_C < leastScatter_C || now_C < jumpTimes * usual_C)
        return std::nullopt;
    return NoiseJump{celsius(now_C), celsius(usual_C)};
}

double ProbeEvidence::scatter_C() const {
    return std::sqrt(m_shortSquare_C2 / secondDifference);
}

bool ProbeEvidence::inDoubt() const {
    if (!m_same || !m_last || m_same->readings < leastDoubtful)
        return false;
    const Duration length = m_last->at - m_same->since;
    return length >= std::chrono::minutes(1) && length >= timesEverBefore * m_same->longestBefore;
}

bool ProbeEvidence::fallsFromStart() const {
    return m_first && m_last && m_last->temperature < *m_first - celsius(fall_C) &&
           m_last->temperature < Temperature::fromCelsius(coolest_C);
}

} // namespace ringhold
