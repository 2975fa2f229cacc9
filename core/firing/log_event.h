// What happened to the log itself.
#pragma once

#include "core/firing/records.h"

#include <optional>
#include <string>

namespace ringhold {

/// A line struck or corrected, logging resumed, an instrument lost.
struct LogEvent {
    std::optional<FiringId> firing; ///< nothing when it concerns the whole book
    Instant at;
    std::string kind; ///< "struck"; not empty
    std::string detail;
    bool operator==(const LogEvent&) const = default;
};

} // namespace ringhold
