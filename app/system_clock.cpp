#include "app/system_clock.h"

#include <algorithm>

namespace ringhold {

Instant SystemClock::now() const {
    const auto told = std::chrono::floor<Duration>(std::chrono::system_clock::now());
    const auto steady = std::chrono::steady_clock::now();
    const std::lock_guard lock(m_mutex);
    const auto passed = std::chrono::floor<Duration>(steady - m_lastSteady);
    m_last = told >= m_last ? told : m_last + passed;
    m_lastSteady = steady;
    return m_last;
}

} // namespace ringhold
