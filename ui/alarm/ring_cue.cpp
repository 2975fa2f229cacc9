#include "ui/alarm/ring_cue.h"

#include "ui/alarm/alarm_caller.h"
#include "ui/session/notebook.h"

#include <algorithm>

namespace ringhold {

RingCue::RingCue(Notebook& notebook, AlarmCaller& caller, QObject* parent)
    : QObject(parent), m_notebook(notebook), m_caller(caller) {
    connect(&m_tick, &QTimer::timeout, this, &RingCue::listen);
    m_tick.start(1000);
}

void RingCue::listen() {
    for (const auto& session : m_notebook.sessions()) {
        const auto clock = session->watch().ringClock(session->now());
        if (!clock || !clock->cue || clock->left < Duration(0))
            continue;
        const Dwell dwell{session->record().firing.id, clock->ring, clock->atLow};
        if (std::ranges::count(m_cued, dwell) > 0)
            continue;
        m_cued.push_back(dwell);
        const auto quiet = session->alarms().quietUntil();
        if (!quiet || *quiet <= session->now())
            m_caller.sound(Sound::cue);
    }
}

} // namespace ringhold
