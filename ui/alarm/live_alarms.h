// The alarms of all live firings together, and what the potter does about them.
#pragma once

#include "core/watch/alarm_board.h"

#include <QObject>
#include <QTimer>

#include <optional>
#include <vector>

namespace ringhold {

class FiringSession;
class Notebook;

struct LiveAlarm {
    FiringSession* session = nullptr;
    Alarm alarm;
    AlarmStage stage = AlarmStage::quiet; ///< as it stands now
    Instant now;                          ///< at its kiln

    bool calls() const { return stage != AlarmStage::quiet; }
    /// Whether it is the same alarm at the same level.
    bool isSame(const LiveAlarm& other) const;
};

/// Looks at the boards of the notebook's sessions when they change, and once a second, since an alarm that
/// nobody answers grows louder by itself. The notebook outlives it.
class LiveAlarms : public QObject {
    Q_OBJECT

  public:
    explicit LiveAlarms(Notebook& notebook, QObject* parent = nullptr);

    /// Those that call first, by level, those that go on before those that are over, the oldest first.
    const std::vector<LiveAlarm>& alarms() const { return m_alarms; }
    /// The loudest.
    AlarmStage stage() const;
    /// The first of alarms() if it calls.
    const LiveAlarm* loudest() const;

    void acknowledge(FiringSession& session, AlarmCause cause);
    /// Each that calls.
    void acknowledgeAll();

    /// No sound and no curtain for so long from now on, in any firing that is live now, but for urgent
    /// alarms.
    void keepQuietFor(Duration length);
    void endQuiet();
    /// Until when, at the first kiln that is quiet.
    std::optional<Instant> quietUntil() const;

    /// Under whose name alarms are acknowledged: that of the computer's user.
    QString who() const;
    void refresh();

  Q_SIGNALS:
    /// Any of the above, or the words of an alarm.
    void changed();

  private:
    void matchSessions();

    Notebook& m_notebook;
    std::vector<LiveAlarm> m_alarms;
    QTimer m_tick;
};

} // namespace ringhold
