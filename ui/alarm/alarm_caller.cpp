#include "ui/alarm/alarm_caller.h"

#include <algorithm>

namespace ringhold {

namespace {

std::optional<AlarmLevel> levelAt(const std::vector<LiveAlarm>& alarms, AlarmStage least) {
    std::optional<AlarmLevel> level;
    for (const auto& live : alarms)
        if (live.stage >= least && (!level || live.alarm.level > *level))
            level = live.alarm.level;
    return level;
}

Sound soundOf(AlarmLevel level) {
    return level == AlarmLevel::urgent ? Sound::urgent : Sound::call;
}

} // namespace

AlarmCaller::AlarmCaller(LiveAlarms& alarms, Sounder& sounder, Again again, QObject* parent)
    : QObject(parent), m_alarms(alarms), m_sounder(sounder), m_every(again) {
    connect(&alarms, &LiveAlarms::changed, this, &AlarmCaller::listen);
    connect(&m_again, &QTimer::timeout, this, &AlarmCaller::callAgain);
    listen();
}

void AlarmCaller::sound(Sound sound) {
    const bool played = m_sounder.play(sound);
    if (!played || !m_heard)
        Q_EMIT unheard(sound);
}

void AlarmCaller::listen() {
    const auto& alarms = m_alarms.alarms();
    std::optional<AlarmLevel> fresh;
    std::vector<LiveAlarm> called;
    for (const auto& live : alarms) {
        if (live.stage < AlarmStage::sound)
            continue;
        if (std::ranges::none_of(m_called, [&](const auto& before) { return before.isSame(live); }))
            fresh = std::max(fresh.value_or(live.alarm.level), live.alarm.level);
        called.push_back(live);
    }
    if (called.empty() && !m_called.empty())
        m_sounder.stop();
    m_called = std::move(called);
    const auto repeated = levelAt(alarms, AlarmStage::repeatedSound);
    if (!repeated)
        m_again.stop();
    else if (const int every = *repeated == AlarmLevel::urgent ? m_every.urgent : m_every.warning;
             !m_again.isActive() || m_again.interval() != every)
        m_again.start(every);
    if (fresh)
        sound(soundOf(*fresh));
}

void AlarmCaller::callAgain() {
    if (const auto level = levelAt(m_alarms.alarms(), AlarmStage::repeatedSound))
        sound(soundOf(*level));
}

} // namespace ringhold
