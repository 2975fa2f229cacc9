#include "core/watch/control_chart.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

EwmaChart::EwmaChart(const Parameters& parameters) : m_parameters(parameters), m_average(parameters.target) {}

bool EwmaChart::take(double value) {
    m_average = m_parameters.weight * value + (1 - m_parameters.weight) * m_average;
    m_remembered *= 1 - m_parameters.weight;
    return limits().hold(m_average);
}

void EwmaChart::reset() {
    m_average = m_parameters.target;
    m_remembered = 1;
}

ControlLimits EwmaChart::limits() const {
    return within(1);
}

ControlLimits EwmaChart::limitsSoFar() const {
    return within(std::sqrt(1 - m_remembered * m_remembered));
}

ControlLimits EwmaChart::within(double share) const {
    const double spread = m_parameters.sd * std::sqrt(m_parameters.weight / (2 - m_parameters.weight));
    const double reach = m_parameters.width * spread * share;
    return {m_parameters.target - reach, m_parameters.target + reach};
}

bool CusumChart::take(double value) {
    const double off = value - m_parameters.target;
    m_upper = std::max(0.0, m_upper + off - m_parameters.slack);
    m_lower = std::max(0.0, m_lower - off - m_parameters.slack);
    return !isHigh() && !isLow();
}

void CusumChart::reset() {
    m_upper = m_lower = 0;
}

} // namespace ringhold
