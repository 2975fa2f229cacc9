// Makes alarms heard, as loudly as each has come to call.
#pragma once

#include "ui/alarm/live_alarms.h"
#include "ui/sound/sounder.h"

#include <QObject>
#include <QTimer>

namespace ringhold {

/// An alarm sounds once when it takes the stage of sound, and again and again from that of repeated sound on.
/// What nobody can hear is told by unheard(), for the window to show. Alarms and sounder outlive it.
class AlarmCaller : public QObject {
    Q_OBJECT

  public:
    /// Milliseconds between two calls.
    struct Again {
        int warning = 30000;
        int urgent = 6000;
    };
    AlarmCaller(LiveAlarms& alarms, Sounder& sounder, Again again, QObject* parent = nullptr);
    AlarmCaller(LiveAlarms& alarms, Sounder& sounder, QObject* parent = nullptr)
        : AlarmCaller(alarms, sounder, Again(), parent) {}

    /// Whether the potter said that nothing was heard, though a device took it: the window then shows each
    /// call too.
    void setHeard(bool heard) { m_heard = heard; }
    /// One sound, or its stand-in.
    void sound(Sound sound);

  Q_SIGNALS:
    void unheard(Sound sound);

  private:
    void listen();
    void callAgain();

    LiveAlarms& m_alarms;
    Sounder& m_sounder;
    Again m_every;
    bool m_heard = true;
    std::vector<LiveAlarm> m_called;
    QTimer m_again;
};

} // namespace ringhold
