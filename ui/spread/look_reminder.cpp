#include "ui/spread/look_reminder.h"

#include "core/cones/bending.h"
#include "core/report/words.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

namespace ringhold {

namespace {

constexpr int tick_ms = 1000;

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
    : QFrame(parent), m_session(session), m_preferences(preferences), m_words(new QLabel) {
    setProperty("ground", QStringLiteral("forecast"));
    setAccessibleName(tr("Reminder to look"));
    m_words->setWordWrap(true);
    auto* look = new QPushButton(tr("Look"));
    look->setAutoDefault(false);
    look->setToolTip(tr("Opens the spyhole (Alt+L)"));
    auto* later = new QPushButton(tr("Not now"));
    later->setAutoDefault(false);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(14, 5, 8, 5);
    row->addWidget(m_words, 1);
    row->addWidget(look);
    row->addWidget(later);
    connect(look, &QPushButton::clicked, this, &LookReminder::spyholeWanted);
    connect(later, &QPushButton::clicked, this, [this] {
        m_quietUntil = m_session.now() + m_preferences.reminderInterval();
        refresh();
    });
    connect(&session, &FiringSession::forecastChanged, this, &LookReminder::refresh);
    connect(&session, &FiringSession::linesChanged, this, &LookReminder::refresh);
    connect(&m_tick, &QTimer::timeout, this, &LookReminder::refresh);
    m_tick.start(tick_ms);
    refresh();
}

void LookReminder::refresh() {
    const Instant now = m_session.now();
    const auto next = nextLookOf(m_session, m_preferences);
    const bool due = next && next->at <= now && (!m_quietUntil || *m_quietUntil <= now);
    if (due)
        m_words->setText(
            tr("Time for a look: cone %1 should be %2.")
                .arg(QString::fromStdString(next->cone), QString::fromStdString(hourWords(next->hour))));
    setVisible(due);
}

} // namespace ringhold
