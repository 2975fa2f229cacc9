#include "ui/spread/look_reminder.h"

#include "core/cones/bending.h"
#include "core/report/words.h"
#include "ui/session/firing_cone.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"

#include <algorithm>
#include <cmath>
#include <memory>

namespace ringhold {

namespace {

/// Reckoned anew only when there is something new: the reminder asks each second.
class NextLookKept {
  public:
    NextLookKept(const FiringSession& session, const Preferences& preferences)
        : m_session(session), m_preferences(preferences) {}

    const std::optional<NextLook>& now() {
        const auto& forecast = m_session.forecast();
        const Key key{forecast ? std::optional(forecast->asOf) : std::nullopt, m_session.record().looks,
                      m_preferences.reminderInterval()};
        if (!m_key || m_key->asOf != key.asOf || m_key->apart != key.apart || !same(m_key->looks, key.looks))
            m_next = nextLookOf(m_session, m_preferences);
        m_key = key;
        return m_next;
    }

  private:
    struct Key {
        std::optional<Instant> asOf;
        std::vector<Look> looks;
        Duration apart;
    };
    static bool same(const std::vector<Look>& a, const std::vector<Look>& b) {
        return std::ranges::equal(a, b, [](const Look& x, const Look& y) {
            return x.id == y.id && x.struck == y.struck && x.at == y.at && x.hour == y.hour;
        });
    }

    const FiringSession& m_session;
    const Preferences& m_preferences;
    std::optional<Key> m_key;
    std::optional<NextLook> m_next;
};

QString dueWords(const std::optional<NextLook>& next, Instant now) {
    if (!next || next->at > now)
        return {};
    return LookReminder::tr("Time for a look: cone %1 should be %2.")
        .arg(QString::fromStdString(next->cone),
             QString::fromStdString(hourWords(std::round(next->hour * 2) / 2)));
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
    const auto* cone = firingConeForecast(session);
    if (!cone || !session.forecaster())
        return nextLook(forecast->packs.front(), looks, forecast->asOf, preferences.reminderInterval());
    return mostTellingLook(*session.forecaster(), *forecast, session.follower(), 0, cone->cone, looks,
                           preferences.reminderInterval());
}

QString nextLookWords(const NextLook& look, const Preferences& preferences) {
    return (look.narrowsTo < 1 ? LookReminder::tr("Next look: cone %1 at about %2, when it tells most.")
                               : LookReminder::tr("Next look: cone %1 at about %2."))
        .arg(QString::fromStdString(look.cone), preferences.clockTime(look.at));
}

LookReminder::LookReminder(const FiringSession& session, const Preferences& preferences, QWidget* parent)
    : ReminderBar(
          session, preferences,
          [kept = std::make_shared<NextLookKept>(session, preferences)](Instant now) {
              return dueWords(kept->now(), now);
          },
          tr("Look"), tr("Opens the spyhole (Alt+L)"), parent) {
    setAccessibleName(tr("Reminder to look"));
}

} // namespace ringhold
