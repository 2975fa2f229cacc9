// The alarms of one firing from their first moment until somebody has seen them off. None vanishes silently:
// every change is an event for the log, and one that ended unseen stays up until it is acknowledged.
#pragma once

#include "core/watch/alarm_cause.h"

#include <optional>
#include <string>
#include <vector>

namespace ringhold {

/// How loudly an alarm calls, the later the louder; each stage includes those before it.
enum class AlarmStage {
    quiet,         ///< acknowledged, or over: shown, calls nobody
    banner,        ///< across every page
    sound,         ///< one call
    repeatedSound, ///< again and again
    fullWindow     ///< over the whole window besides
};

/// How long after it was raised (or worsened) an alarm that nobody acknowledges takes each stage; nothing for
/// a stage it never takes.
struct Escalation {
    std::optional<Duration> sound;
    std::optional<Duration> repeatedSound;
    std::optional<Duration> fullWindow;
};

struct AlarmRules {
    Escalation notice{};
    Escalation warning{Duration(0), std::chrono::minutes(2), std::chrono::minutes(10)};
    Escalation urgent{Duration(0), std::chrono::seconds(15), std::chrono::minutes(1)};
    /// What was found must stay away for so long before its alarm is over: no flutter at an edge.
    Duration clearAfter = std::chrono::minutes(2);
    /// An urgent alarm that goes on though acknowledged calls again after so long.
    Duration urgentAgainAfter = std::chrono::minutes(10);

    const Escalation& of(AlarmLevel level) const;
};

struct Alarm {
    AlarmCause cause = AlarmCause::bandLeft;
    AlarmLevel level = AlarmLevel::notice;
    std::string words;  ///< the newest evidence
    Instant first;      ///< raised then
    Instant levelSince; ///< at the present level
    Instant lastFound;
    std::optional<Instant> acknowledged; ///< of the present level
    std::string acknowledgedBy;
    std::optional<Instant> ended;
    int times = 1; ///< raised so often while on the board

    bool over() const { return ended.has_value(); }
};

/// A state machine without a clock of its own: the same calls give the same alarms. Instants must not go
/// back. One thread at a time.
class AlarmBoard {
  public:
    explicit AlarmBoard(FiringId firing, AlarmRules rules = {}) : m_firing(firing), m_rules(rules) {}

    /// Takes up where an earlier run of the program left off, from the firing's events in time order.
    void restore(const std::vector<AlarmEvent>& events);

    /// All that is the matter at this instant, once a second or so; what is no longer in it has gone away.
    /// Gives what happened, to be written to the log at once.
    std::vector<AlarmEvent> update(Instant now, const std::vector<AlarmFinding>& findings);
    /// Somebody has seen it. An alarm that is over leaves the board by this. Nothing when there is no such
    /// alarm or it was acknowledged already.
    std::vector<AlarmEvent> acknowledge(AlarmCause cause, Instant now, const std::string& who);
    std::vector<AlarmEvent> acknowledgeAll(Instant now, const std::string& who);
    /// At the firing's end: what goes on is told as ended.
    std::vector<AlarmEvent> close(Instant now);

    /// No sound and no full window before that instant, but for urgent alarms. Only ever by the potter's own
    /// choice.
    void keepQuietUntil(std::optional<Instant> until) { m_quietUntil = until; }
    std::optional<Instant> quietUntil() const { return m_quietUntil; }

    /// The most pressing first: going on before over, by level, unacknowledged first, by cause.
    const std::vector<Alarm>& alarms() const { return m_alarms; }
    const Alarm* find(AlarmCause cause) const;
    AlarmStage stageOf(const Alarm& alarm, Instant now) const;
    /// The loudest.
    AlarmStage stage(Instant now) const;
    /// Level of the loudest; nothing when all is quiet.
    std::optional<AlarmLevel> level(Instant now) const;

  private:
    Alarm* findAlarm(AlarmCause cause);
    AlarmEvent eventOf(const Alarm& alarm, AlarmChange change, Instant now) const;
    std::optional<AlarmEvent> take(const AlarmFinding& finding, Instant now);
    void sort();

    FiringId m_firing;
    AlarmRules m_rules;
    std::optional<Instant> m_quietUntil;
    std::vector<Alarm> m_alarms;
};

} // namespace ringhold
