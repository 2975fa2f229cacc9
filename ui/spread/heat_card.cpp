#include "ui/spread/heat_card.h"

#include "ui/common/tone.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/spread/card_words.h"
#include "ui/spread/ring_words.h"
#include "ui/theme/theme.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QToolButton>
#include <QVBoxLayout>

namespace ringhold {

HeatCard::HeatCard(const FiringSession& session, const Preferences& preferences, const Theme& theme,
                   QWidget* parent)
    : QFrame(parent), m_session(session), m_preferences(preferences), m_theme(theme), m_title(new QLabel),
      m_advice(new QToolButton), m_main(new QLabel), m_lines(new QLabel), m_warnings(new QLabel) {
    setProperty("card", true);
    setAccessibleName(tr("Heat work and hold"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(14, 10, 14, 10);
    column->setSpacing(4);
    m_main->setWordWrap(true);
    m_lines->setWordWrap(true);
    m_lines->setAlignment(Qt::AlignLeft | Qt::AlignTop); // where room is short the first lines stay
    m_warnings->setWordWrap(true);
    setToolTip(tr("Intervals hold nine times in ten."));
    auto* head = new QHBoxLayout;
    head->addWidget(m_title, 1);
    head->addWidget(m_advice, 0, Qt::AlignTop);
    column->addLayout(head);
    m_advice->setText(tr("&Advice"));
    m_advice->setToolTip(tr("What holding, climbing, staying or dropping would do (Alt+A)"));
    m_advice->setCheckable(true);
    m_advice->setProperty("choice", true);
    m_advice->setProperty("size", QStringLiteral("small"));
    connect(m_advice, &QToolButton::toggled, this, &HeatCard::adviceWanted);
    column->addWidget(m_main);
    column->addWidget(m_warnings);
    column->addWidget(m_lines);
    column->addStretch(1);
    connect(&session, &FiringSession::forecastChanged, this, &HeatCard::follow);
    connect(&preferences, &Preferences::changed, this, &HeatCard::follow);
    connect(&m_tick, &QTimer::timeout, this, [this] {
        if (ringClockOf(m_session)) // it counts seconds; all else waits for news
            follow();
    });
    m_tick.start(1000);
    connect(&theme, &Theme::changed, this, &HeatCard::dress);
    dress();
}

void HeatCard::foldAdvice() {
    m_advice->setChecked(false);
    m_advice->setFocus(Qt::OtherFocusReason);
}

void HeatCard::dress() {
    m_main->setFont(m_theme.text(TextSize::large, QFont::Bold));
    setTone(m_lines, Tone::soft);
    m_lines->setFont(m_theme.text(TextSize::body));
    setTone(m_warnings, Tone::warning);
    m_warnings->setFont(m_theme.text(TextSize::body, QFont::DemiBold));
    refresh();
}

void HeatCard::showEvent(QShowEvent* event) {
    QFrame::showEvent(event);
    refresh();
}

void HeatCard::follow() {
    if (isWindow() || isVisible())
        refresh();
}

void HeatCard::refresh() {
    const auto words = cardWords(m_session, m_preferences);
    m_title->setText(words.title);
    m_title->setFont(m_theme.heading(TextSize::large, words.title));
    m_main->setText(words.main);
    m_lines->setText(words.lines.join(QLatin1Char('\n')));
    m_warnings->setText(words.warnings.join(QLatin1Char('\n')));
    m_warnings->setVisible(!words.warnings.isEmpty());
}

} // namespace ringhold
