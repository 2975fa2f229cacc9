#include "ui/spread/reading_reminder.h"

#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"

namespace ringhold {

namespace {

/// Of the control probe or by hand: the potter may write beside an instrument that is gone.
std::optional<Instant> newestReading(const FiringSession& session) {
    std::optional<Instant> newest;
    for (const auto& channel : session.record().channels) {
        if (channel.quantity != Quantity::temperature)
            continue;
        const auto& curve = session.firing().curve(channel.id);
        if (!curve.empty() && (!newest || *newest < curve.back().at))
            newest = curve.back().at;
    }
    return newest;
}

QString dueWords(const FiringSession& session, const Preferences& preferences, Instant now) {
    if (!readingDueSince(session, preferences, now))
        return {};
    const auto last = newestReading(session);
    return last ? ReadingReminder::tr("The last reading is %1 old: what does the kiln show now?")
                      .arg(preferences.span(now - *last))
                : ReadingReminder::tr("No reading yet: what does the kiln show?");
}

} // namespace

std::optional<Instant> readingDueSince(const FiringSession& session, const Preferences& preferences,
                                       Instant now) {
    if (!session.instrumentDescription().isEmpty())
        return std::nullopt;
    const auto last = newestReading(session);
    const Instant due = last ? *last + preferences.reminderInterval() : session.record().firing.began;
    return due <= now ? std::optional(due) : std::nullopt;
}

ReadingReminder::ReadingReminder(const FiringSession& session, const Preferences& preferences,
                                 QWidget* parent)
    : ReminderBar(
          session, preferences,
          [&session, &preferences](Instant now) { return dueWords(session, preferences, now); },
          tr("Write it"), tr("Takes the writing line for a reading (Alt+R)"), parent) {
    setAccessibleName(tr("Reminder to write a reading"));
}

} // namespace ringhold
