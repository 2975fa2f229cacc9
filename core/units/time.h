// Instants and durations. Inside, time is UTC in whole milliseconds; ISO 8601 is the only text form core
// writes.
#pragma once

#include "core/base/result.h"

#include <chrono>
#include <string>
#include <string_view>

namespace ringhold {

using Instant = std::chrono::sys_time<std::chrono::milliseconds>;
using Duration = std::chrono::milliseconds;

constexpr double inSeconds(Duration d) {
    return static_cast<double>(d.count()) / 1000.0;
}
constexpr double inMinutes(Duration d) {
    return static_cast<double>(d.count()) / 60'000.0;
}
constexpr double inHours(Duration d) {
    return static_cast<double>(d.count()) / 3'600'000.0;
}

/// Rounded to the nearest millisecond. The argument must be finite and within +-290 million years.
Duration durationFromSeconds(double seconds);
inline Duration durationFromMinutes(double minutes) {
    return durationFromSeconds(minutes * 60.0);
}
inline Duration durationFromHours(double hours) {
    return durationFromSeconds(hours * 3600.0);
}

/// "2026-03-01T20:41:00Z", with ".250" when there are milliseconds.
std::string formatIso8601(Instant at);

/// A date and time written "2026-03-01T20:41:00Z", "2026-03-01 20:41:00.25+01:00", "2026-03-01T20:41" and the
/// like. Seconds may be left out. Without "Z" or an offset the time is civil time in the zone named (an IANA
/// name such as "Europe/Lisbon", or "UTC"); an hour that the clocks skip or repeat is read as the earlier
/// instant. badInput when the text is no such time or the zone is unknown.
Result<Instant> parseIso8601(std::string_view text, const std::string& zone = "UTC");

/// The IANA name of this computer's zone, "UTC" where it has none.
std::string localZone();

/// Civil date and time in that zone (an IANA name), by a strftime-like format of the date library ("%H:%M").
/// An unknown zone is shown as UTC.
std::string formatInZone(Instant at, const std::string& zone, const std::string& format);

} // namespace ringhold
