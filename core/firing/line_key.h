// What a line of the log is in the book, so that it can be struck.
#pragma once

#include "core/firing/alarm_event.h"
#include "core/firing/kiln_records.h"

#include <variant>

namespace ringhold {

/// A reading by its channel and instant.
struct ReadingKey {
    ChannelId channel{};
    Instant at;
    bool operator==(const ReadingKey&) const = default;
};

/// Alarms and events have none: they cannot be struck.
using LineKey = std::variant<LookId, NoteId, SettingId, ReadingKey, StepCorrectionId, MeterStandId>;

} // namespace ringhold
