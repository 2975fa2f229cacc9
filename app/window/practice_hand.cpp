#include "app/window/practice_hand.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr Duration answersAfter = std::chrono::minutes(3);

}

PracticeHand::PracticeHand(FiringSession& session, PracticeInstrument& instrument, PotterHabits habits,
                           std::uint64_t seed, QObject* parent)
    : QObject(parent), m_session(session), m_instrument(instrument), m_potter(std::move(habits), seed) {
    // queued: a look must not be written while the reading that led to it is still being told of
    connect(&session, &FiringSession::readingTaken, this, &PracticeHand::goToTheKiln, Qt::QueuedConnection);
    auto watch = session.watch().settings();
    watch.attendance.reset(); // it does not leave the kiln
    session.setWatchSettings(watch);
}

void PracticeHand::goToTheKiln() {
    const auto last = m_session.firing().lastReading();
    if (!last)
        return;
    answerAlarms(last->at);
    if (m_session.record().packs.empty())
        return;
    const auto pack = m_session.record().packs.front().id;
    for (const auto& look : m_potter.watch(last->at, m_instrument.spyhole()))
        (void)m_session.firing().writeLook(pack, look.at, look.cone, look.hour);
}

void PracticeHand::answerAlarms(Instant now) {
    const auto alarms = m_session.alarms().alarms();
    if (std::ranges::any_of(alarms, [&](const Alarm& alarm) {
            return !alarm.acknowledged && now - alarm.levelSince >= answersAfter;
        }))
        m_session.acknowledgeAll(QStringLiteral("practice potter"));
}

} // namespace ringhold
