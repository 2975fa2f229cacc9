// Alarms summed up from what the log tells of them.
#pragma once

#include "core/firing/alarm_event.h"
#include "core/firing/log_event.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace ringhold {

struct Acknowledgement {
    Instant at;
    std::string by;
};

/// One alarm's life summed up from its events.
struct AlarmRecord {
    FiringId firing{};
    std::string level; ///< the highest that it came to: "notice", "warning", "urgent"
    std::string cause;
    std::string detail; ///< as it was last told
    Instant first;
    std::optional<Acknowledgement> acknowledged;
    std::optional<Instant> ended;
};

/// The alarms that these events of one firing tell of, in the order in which they were raised.
std::vector<AlarmRecord> alarmsTold(std::span<const AlarmEvent> events);

} // namespace ringhold
