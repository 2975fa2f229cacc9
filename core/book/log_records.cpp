#include "core/book/log_records.h"

#include "core/book/record_text.h"

namespace ringhold {

namespace {

/// The alarm of that cause that has not ended.
AlarmRecord* goingOn(std::vector<AlarmRecord>& alarms, const std::string& cause) {
    for (auto& alarm : alarms)
        if (alarm.cause == cause && !alarm.ended)
            return &alarm;
    return nullptr;
}

void tell(AlarmRecord& alarm, const AlarmEvent& event) {
    if (fromBookText<AlarmLevel>(alarm.level).value_or(AlarmLevel::notice) <= event.level)
        alarm.level = bookText(event.level);
    if (event.change == AlarmChange::acknowledged) {
        alarm.acknowledged = Acknowledgement{event.at, event.who};
        return;
    }
    if (event.change == AlarmChange::ended)
        alarm.ended = event.at;
    else if (!event.words.empty())
        alarm.detail = event.words;
}

} // namespace

std::vector<AlarmRecord> alarmsTold(std::span<const AlarmEvent> events) {
    std::vector<AlarmRecord> alarms;
    for (const auto& event : events) {
        AlarmRecord* alarm = goingOn(alarms, event.cause);
        if (!alarm && (event.change == AlarmChange::raised || event.change == AlarmChange::worsened)) {
            alarms.push_back({event.firing, "", event.cause, "", event.at, std::nullopt, std::nullopt});
            alarm = &alarms.back();
        }
        if (alarm)
            tell(*alarm, event);
    }
    return alarms;
}

} // namespace ringhold
