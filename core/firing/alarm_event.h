// What the log keeps of alarms and of the potter's word on the plan's step: lines that are only ever added.
#pragma once

#include "core/firing/records.h"

#include <cstddef>
#include <string>

namespace ringhold {

enum class StepCorrectionId : std::int64_t {};

/// How pressing an alarm is.
enum class AlarmLevel {
    notice,  ///< to be known, can wait
    warning, ///< to be seen to soon
    urgent   ///< the ware or the kiln is at stake now
};

enum class AlarmChange { raised, worsened, acknowledged, ended };

/// One thing that happened to an alarm. An alarm's life is the train of its events, told apart by cause.
struct AlarmEvent {
    FiringId firing{};
    Instant at;
    std::string cause; ///< one word, "sag": see core/watch/alarm_cause.h
    AlarmChange change = AlarmChange::raised;
    AlarmLevel level = AlarmLevel::notice; ///< from then on
    std::string words;                     ///< what was known of it then, for people
    std::string who;                       ///< acknowledged it; else empty
    bool operator==(const AlarmEvent&) const = default;
};

/// The potter's word that the kiln was in that step of the plan by then.
struct StepCorrection {
    FiringId firing{};
    Instant at;
    std::size_t step = 0; ///< index in Plan::steps; their number when the plan is done
    bool struck = false;
    StepCorrectionId id{};
    bool operator==(const StepCorrection&) const = default;
};

} // namespace ringhold
