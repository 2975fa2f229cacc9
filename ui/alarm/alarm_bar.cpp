#include "ui/alarm/alarm_bar.h"

#include "ui/alarm/alarm_phrases.h"
#include "ui/common/tone.h"
#include "ui/session/preferences.h"
#include "ui/theme/theme.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QStyle>
#include <QVBoxLayout>

#include <utility>

namespace ringhold {

AlarmBar::AlarmBar(LiveAlarms& alarms, const Preferences& preferences, const Theme& theme, QWidget* parent)
    : QFrame(parent), m_alarms(alarms), m_preferences(preferences), m_theme(theme), m_level(new QLabel),
      m_title(new QLabel), m_evidence(new QLabel), m_others(new QLabel), m_look(new QPushButton(tr("Look"))),
      m_acknowledge(new QPushButton(tr("Acknowledge · F8"))), m_list(new QPushButton(tr("All · F9"))) {
    setAccessibleName(tr("Alarm"));
    auto* head = new QHBoxLayout;
    head->setSpacing(12);
    head->addWidget(m_level, 0, Qt::AlignBaseline);
    head->addWidget(m_title, 1, Qt::AlignBaseline);
    auto* words = new QVBoxLayout;
    words->setSpacing(2);
    words->addLayout(head);
    words->addWidget(m_evidence);
    words->addWidget(m_others);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(28, 8, 26, 8);
    row->addLayout(words, 1);
    for (auto* button : {m_look, m_acknowledge, m_list}) {
        button->setAutoDefault(false);
        row->addWidget(button, 0, Qt::AlignVCenter);
    }
    m_evidence->setWordWrap(true);
    m_others->setWordWrap(true);
    m_look->setToolTip(tr("Opens the spyhole: the alarm is over when somebody has looked"));
    m_acknowledge->setToolTip(tr("Somebody has seen it (F8)"));
    m_list->setToolTip(tr("The alarms of all live firings (F9)"));
    connect(m_acknowledge, &QPushButton::clicked, this, &AlarmBar::acknowledge);
    connect(m_list, &QPushButton::clicked, this, &AlarmBar::listWanted);
    connect(m_look, &QPushButton::clicked, this, [this] {
        if (const auto* loudest = m_alarms.loudest())
            Q_EMIT spyholeWanted(loudest->session);
    });
    connect(&alarms, &LiveAlarms::changed, this, &AlarmBar::refresh);
    connect(&preferences, &Preferences::changed, this, &AlarmBar::refresh);
    connect(&theme, &Theme::changed, this, &AlarmBar::dress);
    dress();
    refresh();
}

void AlarmBar::acknowledge() {
    if (const auto* loudest = m_alarms.loudest())
        m_alarms.acknowledge(*loudest->session, loudest->alarm.cause);
}

QString AlarmBar::words() const {
    QStringList words;
    for (const auto* label : {m_level, m_title, m_evidence, m_others})
        if (!label->isHidden())
            words << label->text();
    return words.join(QLatin1Char('\n'));
}

void AlarmBar::refresh() {
    const auto& alarms = m_alarms.alarms();
    setVisible(!alarms.empty());
    if (alarms.empty())
        return;
    const bool calls = m_alarms.loudest() != nullptr;
    for (QWidget* widget :
         {static_cast<QWidget*>(m_level), static_cast<QWidget*>(m_title), static_cast<QWidget*>(m_evidence)})
        widget->setVisible(calls);
    if (calls)
        tellLoudest();
    else
        tellCalm();
    m_list->setText(alarms.size() > 1 ? tr("All %1 · F9").arg(alarms.size()) : tr("All · F9"));
}

void AlarmBar::tellLoudest() {
    const auto& loudest = *m_alarms.loudest();
    const bool notice = loudest.alarm.level == AlarmLevel::notice;
    setProperty("ground", notice ? QStringLiteral("forecast") : QStringLiteral("warning"));
    style()->polish(this);
    for (auto* label : {m_level, m_title, m_evidence, m_others})
        setTone(label, notice ? Tone::ink : Tone::warning);
    m_level->setText(levelWords(loudest.alarm.level).toUpper());
    m_title->setText(titleWords(loudest.alarm));
    m_evidence->setText(tr("%1, %2. %3")
                            .arg(kilnWords(*loudest.session),
                                 sinceWords(loudest.alarm, loudest.now, m_preferences),
                                 QString::fromStdString(loudest.alarm.words)));
    m_others->setText(othersWords(1));
    m_others->setVisible(!m_others->text().isEmpty());
    const bool unseen =
        loudest.alarm.cause == AlarmCause::coneUnseen || loudest.alarm.cause == AlarmCause::coneDue;
    m_look->setVisible(unseen);
    m_acknowledge->setVisible(!loudest.alarm.acknowledged || quietOnceAcknowledged(loudest.alarm.cause));
    const QString aloud = levelWords(loudest.alarm.level) + QStringLiteral(": ") + m_title->text() +
                          QStringLiteral(", ") + kilnWords(*loudest.session);
    if (std::exchange(m_toldAloud, aloud) != aloud) {
        setAccessibleName(aloud);
        QAccessibleEvent told(this, QAccessible::Alert);
        QAccessible::updateAccessibility(&told);
    }
}

void AlarmBar::tellCalm() {
    setProperty("ground", QStringLiteral("forecast"));
    style()->polish(this);
    setTone(m_others, Tone::ink);
    m_others->setText(tr("Acknowledged, goes on: %1").arg(othersWords(0)));
    m_others->setVisible(true);
    m_look->hide();
    m_acknowledge->hide();
    m_toldAloud.clear();
    setAccessibleName(tr("Alarms that are acknowledged"));
}

/// By name and kiln.
QString AlarmBar::othersWords(std::size_t from) const {
    QStringList others;
    const auto& alarms = m_alarms.alarms();
    for (std::size_t i = from; i < alarms.size(); ++i)
        others << tr("%1 (%2)").arg(titleWords(alarms[i].alarm), kilnWords(*alarms[i].session));
    const QString words = others.join(QStringLiteral(" · "));
    return from == 0 || words.isEmpty() ? words : tr("And: %1").arg(words);
}

void AlarmBar::dress() {
    m_level->setFont(m_theme.text(TextSize::body, QFont::Bold));
    m_title->setFont(m_theme.text(TextSize::large, QFont::Bold));
    for (auto* label : {m_evidence, m_others})
        label->setFont(m_theme.text(TextSize::body));
}

} // namespace ringhold
