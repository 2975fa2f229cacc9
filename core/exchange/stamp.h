// Dates and times by the hundred thousand: the same text forms as core/units/time.h, read and written without
// a stream.
#pragma once

#include "core/units/time.h"

#include <optional>
#include <string>
#include <string_view>

namespace date {
class time_zone;
}

namespace ringhold {

/// A date and time as written, before any zone is applied.
struct Stamp {
    Instant civil;                  ///< what it says, as if it were UTC
    std::optional<Duration> offset; ///< how far that is ahead of UTC ("Z", "+01:00"), where it says so
};

/// "2026-03-01T20:41:00.250Z", with a blank or 't' for the 'T', seconds and fraction (point or comma, rounded
/// to milliseconds) optional, then "Z", an offset or nothing. Nothing for any other text.
std::optional<Stamp> parseStamp(std::string_view text);

/// True for what starts like such a date, right or wrong: "2026-...".
bool looksLikeStamp(std::string_view text);

/// Appends what formatIso8601() gives.
void appendStamp(std::string& out, Instant at);

/// The instants that a civil time can mean in a zone.
struct CivilInstants {
    std::optional<Instant> first;  ///< nothing in an hour that the clocks skip
    std::optional<Instant> second; ///< only in an hour that the clocks repeat
};

/// Turns civil times of one zone into instants, fastest when they come in order. Not thread-safe.
class CivilZone {
  public:
    /// By IANA name; badInput when there is no such zone.
    static Result<CivilZone> named(const std::string& name);

    CivilInstants instantsOf(Instant civil);

  private:
    explicit CivilZone(const date::time_zone* zone) : m_zone(zone) {}

    const date::time_zone* m_zone;
    Instant m_begin{}; ///< civil times from m_begin to before m_end are m_offset ahead of UTC, and once only
    Instant m_end{};
    Duration m_offset{};
};

} // namespace ringhold
