// Records that only the book knows: alarms as they are kept, and what happened to the log itself.
#pragma once

#include "core/firing/records.h"

#include <optional>
#include <string>

namespace ringhold {

enum class AlarmId : std::int64_t {};

struct Acknowledgement {
    Instant at;
    std::string by;
};

struct AlarmRecord {
    AlarmId id{};
    FiringId firing{};
    std::string level; ///< in the words of whoever raised it; not empty
    std::string cause; ///< likewise
    std::string detail;
    Instant first;
    std::optional<Acknowledgement> acknowledged;
    std::optional<Instant> ended;
};

/// A line struck or corrected, logging resumed, an instrument lost.
struct LogEvent {
    std::optional<FiringId> firing; ///< nothing when it concerns the whole book
    Instant at;
    std::string kind; ///< "struck"; not empty
    std::string detail;
};

} // namespace ringhold
