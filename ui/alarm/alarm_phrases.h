// What an alarm says of itself on screen.
#pragma once

#include "ui/alarm/live_alarms.h"

#include <QString>

namespace ringhold {

class Preferences;

/// "Urgent", "Warning", "Notice".
QString levelWords(AlarmLevel level);
/// "Relay stuck on?"
QString titleWords(const Alarm& alarm);
/// The kiln's name.
QString kilnWords(const FiringSession& session);
/// "since 21:04, 3 min"; "21:04 to 21:20, over" for one that is over; "for the third time" where it came
/// back.
QString sinceWords(const Alarm& alarm, Instant now, const Preferences& preferences);
/// "nobody has answered", "acknowledged by ana 21:05", "over, nobody has seen it", "... , calls until
/// somebody looks".
QString answerWords(const Alarm& alarm, const Preferences& preferences);

} // namespace ringhold
