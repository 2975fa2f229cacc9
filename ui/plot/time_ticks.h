// Where the ticks of a time axis stand and what they say.
#pragma once

#include "core/units/time.h"

#include <QString>

#include <string>
#include <vector>

namespace ringhold {

struct TimeTick {
    Instant at;
    QString label; ///< "21:00"; "1 Mar" where ticks are days apart
    QString day;   ///< "Sun 1 Mar" on the first tick of each day, else empty
};

/// At most `most` (at least 2) ticks in [from, to] at round civil times of that zone (an IANA name; UTC if
/// it is unknown). Where the clocks go back, the hour that comes twice has two ticks, told apart by the name
/// of their time ("02:00 CEST", "02:00 CET"); where they go forward, the hour that is not has none.
std::vector<TimeTick> timeTicks(Instant from, Instant to, const std::string& zone, int most);

struct HourTick {
    double hours = 0;
    QString label; ///< "3 h", "3:30 h", with a true minus sign before the start
};

/// At most `most` (at least 2) ticks in [from, to], both in hours after some start.
std::vector<HourTick> hourTicks(double from, double to, int most);

} // namespace ringhold
