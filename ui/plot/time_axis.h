// Time axes of a plot. A plot counts time in seconds since 1970, or in hours after a start.
#pragma once

#include "core/units/time.h"

#include <string>

class QCPAxis;

namespace ringhold {

/// Where an instant lies on an axis of civil time, and back.
inline double onAxis(Instant at) {
    return inSeconds(at.time_since_epoch());
}
inline Instant fromAxis(double seconds) {
    return Instant(durationFromSeconds(seconds));
}

/// Civil times of that zone along the axis, as many as have room; the day below the first of each day.
void showTimesOfDay(QCPAxis& axis, const std::string& zone);

/// Hours after a start along the axis, as many as have room.
void showHours(QCPAxis& axis);

} // namespace ringhold
