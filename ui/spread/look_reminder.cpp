#include "ui/spread/look_reminder.h"

#include "core/cones/bending.h"
#include "core/report/words.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"

namespace ringhold {

namespace {

QString dueWords(const FiringSession& session, const Preferences& preferences, Instant now) {
    const auto next = nextLookOf(session, preferences);
    if (!next || next->at > now)
        return {};
    return LookReminder::tr("Time for a look: cone %1 should be %2.")
        .arg(QString::fromStdString(next->cone), QString::fromStdString(hourWords(next->hour)));
}

} // namespace

std::optional<NextLook> nextLookOf(const FiringSession& session, const Preferences& preferences) {
    const auto& forecast = session.forecast();
    if (!forecast || forecast->packs.empty())
        return std::nullopt;
    std::vector<Look> looks;
    for (const auto& look : session.record().looks)
        if (look.pack == session.record().packs.front().id)
            looks.push_back(look);
    return nextLook(forecast->packs.front(), looks, forecast->asOf, preferences.reminderInterval());
}

QString nextLookWords(const NextLook& look, const Preferences& preferences) {
    return LookReminder::tr("Next look: cone %1 at about %2.")
        .arg(QString::fromStdString(look.cone), preferences.clockTime(look.at));
}

LookReminder::LookReminder(const FiringSession& session, const Preferences& preferences, QWidget* parent)
    : ReminderBar(
          session, preferences,
          [&session, &preferences](Instant now) { return dueWords(session, preferences, now); }, tr("Look"),
          tr("Opens the spyhole (Alt+L)"), parent) {
    setAccessibleName(tr("Reminder to look"));
}

} // namespace ringhold
