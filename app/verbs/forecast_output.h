// A cone forecast, as the verbs write it.
#pragma once

#include "app/verbs/output.h"
#include "core/cones/forecast.h"

#include <ostream>
#include <string>

namespace ringhold {

/// {"as_of","offset_C","cones"} of the first pack.
Json toJson(const Forecast& forecast);

/// For people, a line for the offset and one for each cone. `absolute` as in CsvReadings.
void describe(std::ostream& out, const Forecast& forecast, bool absolute);

/// "2026-03-01 21:14 (90 %: 2026-03-01 21:08 to 2026-03-01 21:21)", "not within 24 h".
std::string shownInterval(const TimeInterval& interval, bool absolute);
/// The same with clock times alone.
std::string shownClock(const TimeInterval& interval);

/// "standing", "down", "at 2.5 o'clock".
std::string spokenHour(double hour);

} // namespace ringhold
