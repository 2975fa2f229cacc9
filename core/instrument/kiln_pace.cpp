#include "core/instrument/kiln_pace.h"

#include <cmath>

namespace ringhold {

Status KilnPace::check() const {
    if (m_speed > 0 && m_speed <= fastest)
        return {};
    return Error{ErrorKind::badInput, "the speed must be above 0 and at most a million"};
}

void KilnPace::start(Instant wall, Instant kiln) {
    m_wallStart = wall;
    m_kilnStart = kiln;
}

Instant KilnPace::kilnTime(Instant wall) const {
    if (!m_wallStart)
        return wall;
    const auto gone = static_cast<double>((wall - *m_wallStart).count());
    constexpr double rounding_ms = 1e-3; // of the product, so that wallTime() is there and back
    return m_kilnStart + Duration(std::llround(std::floor(gone * m_speed + rounding_ms)));
}

Instant KilnPace::wallTime(Instant kiln) const {
    const auto gone = static_cast<double>((kiln - m_kilnStart).count());
    const Instant wall = *m_wallStart + Duration(std::llround(std::ceil(gone / m_speed)));
    const Instant before = wall - Duration(1); // in time already when the division came out a trifle high
    return kilnTime(before) >= kiln ? before : wall;
}

} // namespace ringhold
