#include "core/watch/alarm_board.h"

#include <algorithm>
#include <tuple>

namespace ringhold {

namespace {

std::size_t rankOf(AlarmCause cause) {
    const auto& all = allAlarmCauses();
    return static_cast<std::size_t>(std::ranges::find(all, cause) - all.begin());
}

void raise(Alarm& alarm, AlarmLevel level, Instant now) {
    alarm.level = level;
    alarm.levelSince = now;
    alarm.acknowledged.reset();
    alarm.acknowledgedBy.clear();
    alarm.ended.reset();
}

/// A look answers the cone's alarm by itself and must not be covered by the window's escalation: a little
/// more than the time from one forecast to the next is enough against flutter.
Duration clearAfterOf(AlarmCause cause, const AlarmRules& rules) {
    return cause == AlarmCause::coneUnseen ? std::min<Duration>(rules.clearAfter, std::chrono::seconds(20))
                                           : rules.clearAfter;
}

} // namespace

const Escalation& AlarmRules::of(AlarmLevel level) const {
    return level == AlarmLevel::urgent ? urgent : level == AlarmLevel::warning ? warning : notice;
}

void AlarmBoard::restore(const std::vector<AlarmEvent>& events) {
    for (const auto& event : events) {
        const auto cause = causeOfWord(event.cause);
        if (!cause)
            continue;
        Alarm* alarm = findAlarm(*cause);
        if (!alarm) {
            if (event.change != AlarmChange::raised)
                continue;
            m_alarms.push_back(
                {*cause, event.level, event.words, event.at, event.at, event.at, {}, {}, {}, 0});
            alarm = &m_alarms.back();
        }
        if (event.change == AlarmChange::raised || event.change == AlarmChange::worsened) {
            raise(*alarm, event.level, event.at);
            alarm->words = event.words;
            alarm->times += event.change == AlarmChange::raised ? 1 : 0;
        } else if (event.change == AlarmChange::acknowledged) {
            alarm->acknowledged = event.at;
            alarm->acknowledgedBy = event.who;
        } else {
            alarm->ended = event.at;
        }
        alarm->lastFound = event.at;
        std::erase_if(m_alarms, [](const Alarm& a) { return a.ended && a.acknowledged; });
    }
    sort();
}

std::vector<AlarmEvent> AlarmBoard::update(Instant now, const std::vector<AlarmFinding>& findings) {
    std::vector<AlarmEvent> events;
    for (const auto& finding : findings)
        if (auto event = take(finding, now))
            events.push_back(std::move(*event));
    for (auto& alarm : m_alarms)
        if (!alarm.over() && now - alarm.lastFound >= clearAfterOf(alarm.cause, m_rules)) {
            alarm.ended = now;
            events.push_back(eventOf(alarm, AlarmChange::ended, now));
        }
    std::erase_if(m_alarms, [](const Alarm& a) { return a.ended && a.acknowledged; });
    sort();
    return events;
}

std::optional<AlarmEvent> AlarmBoard::take(const AlarmFinding& finding, Instant now) {
    Alarm* alarm = findAlarm(finding.cause);
    if (!alarm) {
        m_alarms.push_back({finding.cause, finding.level, finding.words, now, now, now, {}, {}, {}, 1});
        return eventOf(m_alarms.back(), AlarmChange::raised, now);
    }
    alarm->words = finding.words;
    alarm->lastFound = now;
    if (alarm->over()) {
        raise(*alarm, finding.level, now);
        ++alarm->times;
        return eventOf(*alarm, AlarmChange::raised, now);
    }
    if (finding.level > alarm->level) {
        raise(*alarm, finding.level, now);
        return eventOf(*alarm, AlarmChange::worsened, now);
    }
    return std::nullopt;
}

std::vector<AlarmEvent> AlarmBoard::acknowledge(AlarmCause cause, Instant now, const std::string& who) {
    Alarm* alarm = findAlarm(cause);
    const bool callsAgain = alarm && !alarm->over() && alarm->level == AlarmLevel::urgent &&
                            alarm->acknowledged && now - *alarm->acknowledged >= m_rules.urgentAgainAfter;
    if (!alarm || (alarm->acknowledged && !callsAgain))
        return {};
    alarm->acknowledged = now;
    alarm->acknowledgedBy = who;
    const std::vector<AlarmEvent> events{eventOf(*alarm, AlarmChange::acknowledged, now)};
    std::erase_if(m_alarms, [](const Alarm& a) { return a.ended && a.acknowledged; });
    sort();
    return events;
}

std::vector<AlarmEvent> AlarmBoard::acknowledgeAll(Instant now, const std::string& who) {
    std::vector<AlarmCause> causes;
    for (const auto& alarm : m_alarms)
        causes.push_back(alarm.cause);
    std::vector<AlarmEvent> events;
    for (const auto cause : causes)
        for (auto& event : acknowledge(cause, now, who))
            events.push_back(std::move(event));
    return events;
}

std::vector<AlarmEvent> AlarmBoard::close(Instant now) {
    std::vector<AlarmEvent> events;
    for (auto& alarm : m_alarms)
        if (!alarm.over()) {
            alarm.ended = now;
            events.push_back(eventOf(alarm, AlarmChange::ended, now));
        }
    std::erase_if(m_alarms, [](const Alarm& a) { return a.ended && a.acknowledged; });
    return events;
}

AlarmEvent AlarmBoard::eventOf(const Alarm& alarm, AlarmChange change, Instant now) const {
    return {m_firing,
            now,
            std::string(causeWord(alarm.cause)),
            change,
            alarm.level,
            alarm.words,
            change == AlarmChange::acknowledged ? alarm.acknowledgedBy : std::string()};
}

Alarm* AlarmBoard::findAlarm(AlarmCause cause) {
    const auto found = std::ranges::find(m_alarms, cause, &Alarm::cause);
    return found == m_alarms.end() ? nullptr : &*found;
}

const Alarm* AlarmBoard::find(AlarmCause cause) const {
    const auto found = std::ranges::find(m_alarms, cause, &Alarm::cause);
    return found == m_alarms.end() ? nullptr : &*found;
}

void AlarmBoard::sort() {
    const auto key = [](const Alarm& a) {
        return std::tuple(a.over(), -static_cast<int>(a.level), a.acknowledged.has_value(), rankOf(a.cause));
    };
    std::ranges::stable_sort(m_alarms, [&](const Alarm& a, const Alarm& b) { return key(a) < key(b); });
}

AlarmStage AlarmBoard::stageOf(const Alarm& alarm, Instant now) const {
    if (alarm.over() && alarm.acknowledged)
        return AlarmStage::quiet;
    Instant since = alarm.levelSince;
    if (alarm.acknowledged && quietOnceAcknowledged(alarm.cause)) {
        if (alarm.level != AlarmLevel::urgent || now - *alarm.acknowledged < m_rules.urgentAgainAfter)
            return AlarmStage::quiet;
        since = *alarm.acknowledged + m_rules.urgentAgainAfter;
    }
    if (alarm.level != AlarmLevel::urgent && m_quietUntil) {
        if (now < *m_quietUntil)
            return AlarmStage::banner;
        since = std::max(since, *m_quietUntil);
    }
    const auto& due = m_rules.of(alarm.level);
    const auto reached = [&](const std::optional<Duration>& after) { return after && now - since >= *after; };
    // over: nothing presses any more, but it waits to be seen
    if (alarm.over())
        return reached(due.sound) && alarm.level == AlarmLevel::urgent ? AlarmStage::sound
                                                                       : AlarmStage::banner;
    return reached(due.fullWindow)      ? AlarmStage::fullWindow
           : reached(due.repeatedSound) ? AlarmStage::repeatedSound
           : reached(due.sound)         ? AlarmStage::sound
                                        : AlarmStage::banner;
}

AlarmStage AlarmBoard::stage(Instant now) const {
    AlarmStage loudest = AlarmStage::quiet;
    for (const auto& alarm : m_alarms)
        loudest = std::max(loudest, stageOf(alarm, now));
    return loudest;
}

std::optional<AlarmLevel> AlarmBoard::level(Instant now) const {
    std::optional<AlarmLevel> level;
    for (const auto& alarm : m_alarms)
        if (stageOf(alarm, now) != AlarmStage::quiet && (!level || alarm.level > *level))
            level = alarm.level;
    return level;
}

} // namespace ringhold
