#include "ui/spread/reminder_bar.h"

#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

namespace ringhold {

namespace {

constexpr int tick_ms = 1000;

} // namespace

ReminderBar::ReminderBar(const FiringSession& session, const Preferences& preferences, Ask ask,
                         const QString& act, const QString& hint, QWidget* parent)
    : QFrame(parent), m_session(session), m_preferences(preferences), m_ask(std::move(ask)),
      m_words(new QLabel) {
    setProperty("ground", QStringLiteral("forecast"));
    m_words->setWordWrap(true);
    auto* actNow = new QPushButton(act);
    actNow->setAutoDefault(false);
    actNow->setToolTip(hint);
    auto* later = new QPushButton(tr("Not now"));
    later->setAutoDefault(false);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(14, 5, 8, 5);
    row->addWidget(m_words, 1);
    row->addWidget(actNow);
    row->addWidget(later);
    connect(actNow, &QPushButton::clicked, this, &ReminderBar::actWanted);
    connect(later, &QPushButton::clicked, this, [this] {
        m_quietUntil = m_session.now() + m_preferences.reminderInterval();
        refresh();
    });
    connect(&session, &FiringSession::forecastChanged, this, &ReminderBar::refresh);
    connect(&session, &FiringSession::readingTaken, this, &ReminderBar::refresh);
    connect(&session, &FiringSession::linesChanged, this, &ReminderBar::refresh);
    connect(&preferences, &Preferences::changed, this, &ReminderBar::refresh);
    connect(&m_tick, &QTimer::timeout, this, &ReminderBar::refresh);
    m_tick.start(tick_ms);
    hide(); // until there is something to say, and the page is seen
    if (parent)
        parent->installEventFilter(this);
    refresh();
}

bool ReminderBar::eventFilter(QObject* watched, QEvent* event) {
    if (watched == parentWidget() && event->type() == QEvent::Show)
        refresh();
    return QFrame::eventFilter(watched, event);
}

/// What a look would tell is reckoned only while the page is looked at.
void ReminderBar::refresh() {
    if (!isWindow() && !parentWidget()->isVisible())
        return;
    const Instant now = m_session.now();
    const QString words = m_quietUntil && now < *m_quietUntil ? QString() : m_ask(now);
    if (!words.isEmpty())
        m_words->setText(words);
    setVisible(!words.isEmpty());
}

} // namespace ringhold
