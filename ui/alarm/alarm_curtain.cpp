#include "ui/alarm/alarm_curtain.h"

#include "ui/alarm/alarm_phrases.h"
#include "ui/common/tone.h"
#include "ui/session/preferences.h"
#include "ui/theme/theme.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

namespace {

constexpr int aside_ms = 120000;

} // namespace

AlarmCurtain::AlarmCurtain(LiveAlarms& alarms, const Preferences& preferences, const Theme& theme,
                           QWidget& window)
    : QFrame(&window), m_alarms(alarms), m_preferences(preferences), m_theme(theme), m_level(new QLabel),
      m_title(new QLabel), m_since(new QLabel), m_evidence(new QLabel),
      m_look(new QPushButton(tr("Look through the spyhole"))),
      m_acknowledge(new QPushButton(tr("I have seen it · F8"))),
      m_aside(new QPushButton(tr("Put aside for 2 min · Esc"))) {
    setProperty("ground", QStringLiteral("warning"));
    setProperty("curtain", true);
    setAutoFillBackground(true);
    setFocusPolicy(Qt::StrongFocus);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(60, 40, 60, 40);
    column->setSpacing(14);
    column->addStretch(2);
    for (auto* label : {m_level, m_title, m_since, m_evidence}) {
        label->setWordWrap(true);
        label->setAlignment(Qt::AlignHCenter);
        setTone(label, Tone::warning);
        column->addWidget(label);
    }
    auto* row = new QHBoxLayout;
    row->addStretch(1);
    for (auto* button : {m_look, m_acknowledge, m_aside}) {
        button->setAutoDefault(false);
        row->addWidget(button);
    }
    row->addStretch(1);
    column->addSpacing(20);
    column->addLayout(row);
    column->addStretch(3);
    m_back.setSingleShot(true);
    connect(&m_back, &QTimer::timeout, this, [this] {
        m_putAside.clear();
        refresh();
    });
    connect(m_acknowledge, &QPushButton::clicked, this, [this] {
        if (const auto* live = shown())
            m_alarms.acknowledge(*live->session, live->alarm.cause);
    });
    connect(m_aside, &QPushButton::clicked, this, &AlarmCurtain::putAside);
    connect(m_look, &QPushButton::clicked, this, [this] {
        const auto* live = shown();
        if (!live)
            return;
        auto* session = live->session;
        putAside();
        Q_EMIT spyholeWanted(session);
    });
    connect(&alarms, &LiveAlarms::changed, this, &AlarmCurtain::refresh);
    connect(&theme, &Theme::changed, this, &AlarmCurtain::dress);
    window.installEventFilter(this);
    hide();
    dress();
    refresh();
}

const LiveAlarm* AlarmCurtain::shown() const {
    for (const auto& live : m_alarms.alarms())
        if (live.stage == AlarmStage::fullWindow &&
            std::ranges::none_of(m_putAside, [&](const auto& aside) { return aside.isSame(live); }))
            return &live;
    return nullptr;
}

void AlarmCurtain::putAside() {
    m_putAside = m_alarms.alarms();
    m_back.start(aside_ms);
    refresh();
}

void AlarmCurtain::refresh() {
    const auto* live = shown();
    if (!live) {
        drop();
        return;
    }
    m_level->setText(levelWords(live->alarm.level).toUpper());
    m_title->setText(titleWords(live->alarm));
    m_since->setText(kilnWords(*live->session) + QStringLiteral(" · ") +
                     sinceWords(live->alarm, live->now, m_preferences));
    m_evidence->setText(QString::fromStdString(live->alarm.words));
    setAccessibleName(m_level->text() + QStringLiteral(": ") + m_title->text());
    m_look->setVisible(live->alarm.cause == AlarmCause::coneUnseen);
    m_acknowledge->setVisible(!live->alarm.acknowledged || quietOnceAcknowledged(live->alarm.cause));
    draw();
}

void AlarmCurtain::draw() {
    setGeometry(parentWidget()->rect());
    if (isVisible())
        return;
    m_before = QApplication::focusWidget();
    show();
    dress(); // the style sheet undoes fonts that were taken before the first time it is shown
    raise();
    setFocus();
}

void AlarmCurtain::drop() {
    if (isHidden())
        return;
    hide();
    if (m_before)
        m_before->setFocus();
}

void AlarmCurtain::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        putAside();
    else
        event->accept(); // what was being typed goes nowhere
}

bool AlarmCurtain::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::Resize && !isHidden())
        setGeometry(parentWidget()->rect());
    return QFrame::eventFilter(watched, event);
}

void AlarmCurtain::dress() {
    m_level->setFont(m_theme.text(TextSize::title, QFont::Bold));
    m_title->setFont(m_theme.text(TextSize::display, QFont::Bold));
    m_since->setFont(m_theme.text(TextSize::title));
    m_evidence->setFont(m_theme.text(TextSize::title));
}

} // namespace ringhold
