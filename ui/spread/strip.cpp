#include "ui/spread/strip.h"

#include "ui/common/tone.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/theme/theme.h"

#include <QContextMenuEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QMouseEvent>
#include <QStyle>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

namespace {

constexpr int troubleWidth = 240;
constexpr int soon_ms = 100;
constexpr int narrow = 1150; ///< below this width trouble is told in as little room as it takes

} // namespace

Strip::Strip(const FiringSession& session, const Preferences& preferences, const Theme& theme,
             QWidget* parent)
    : QFrame(parent), m_session(session), m_preferences(preferences), m_theme(theme), m_firing(new QLabel),
      m_temperature(new QLabel), m_unit(new QLabel), m_age(new QLabel), m_trouble(new QLabel) {
    setProperty("strip", true);
    setAccessibleName(tr("The firing now"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(28, 8, 28, 8);
    row->setSpacing(26);
    auto* left = new QVBoxLayout;
    left->setSpacing(0);
    auto* figure = new QHBoxLayout;
    figure->setSpacing(6);
    figure->addWidget(m_temperature, 0, Qt::AlignBaseline);
    figure->addWidget(m_unit, 0, Qt::AlignBaseline);
    figure->addSpacing(10);
    figure->addWidget(m_age, 0, Qt::AlignVCenter);
    left->addWidget(m_firing);
    left->addLayout(figure);
    row->addLayout(left);
    m_temperature->setAccessibleName(tr("Temperature"));
    m_age->setAccessibleName(tr("Age of the reading"));
    m_climb = addField(tr("climb"), tr("Climb rate"));
    m_offPlan = addField(tr("off plan"), tr("Off plan"));
    m_step = addField(tr("step"), tr("Step"));
    m_step.box->setToolTip(tr("A click with the right button says which step the kiln is in"));
    m_cone = addField(QString(), tr("Cone down forecast"));
    m_next = addField(tr("then"), tr("Next step"));
    row->addStretch(1);
    m_trouble->setWordWrap(true);
    m_trouble->setMaximumWidth(troubleWidth);
    row->addWidget(m_trouble);
    for (auto signal : {&FiringSession::forecastChanged, &FiringSession::linkChanged,
                        &FiringSession::diskTroubleChanged, &FiringSession::alarmsChanged})
        connect(&session, signal, this, &Strip::refresh);
    m_soon.setSingleShot(true);
    connect(&m_soon, &QTimer::timeout, this, &Strip::refresh);
    connect(&session, &FiringSession::readingTaken, this, [this] {
        if (!m_soon.isActive())
            m_soon.start(soon_ms);
    });
    connect(&preferences, &Preferences::changed, this, &Strip::refresh);
    connect(&theme, &Theme::changed, this, &Strip::dress);
    connect(&m_tick, &QTimer::timeout, this, &Strip::refresh);
    m_tick.start(1000);
    dress();
}

Strip::Field Strip::addField(const QString& caption, const QString& accessibleName) {
    Field field{new QWidget, new QLabel(caption), new QLabel, new QLabel};
    auto* column = new QVBoxLayout(field.box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(1);
    column->addStretch(1);
    column->addWidget(field.caption);
    auto* line = new QHBoxLayout;
    line->setSpacing(8);
    line->addWidget(field.value, 0, Qt::AlignBaseline);
    line->addWidget(field.beside, 0, Qt::AlignBaseline);
    column->addLayout(line);
    column->addStretch(1);
    field.value->setAccessibleName(accessibleName);
    layout()->addWidget(field.box);
    return field;
}

void Strip::fill(const Field& field, const QString& value, const QString& beside) {
    field.value->setText(value);
    field.beside->setText(beside);
    field.beside->setVisible(!beside.isEmpty());
    field.box->setVisible(!value.isEmpty());
}

void Strip::refresh() {
    m_words = stripWords(m_session, m_preferences);
    m_firing->setText(m_words.firing);
    m_temperature->setText(m_words.temperature);
    m_unit->setText(m_words.unit);
    m_age->setText(m_words.age);
    const bool live = m_words.freshness == Freshness::live;
    setTone(m_temperature, live ? Tone::ink : Tone::soft);
    QFont font =
        m_theme.text(m_standing == Standing::beside ? TextSize::title : TextSize::display, QFont::Bold);
    font.setStrikeOut(m_words.freshness == Freshness::stale || m_words.freshness == Freshness::open);
    m_temperature->setFont(font);
    setTone(m_age, live ? Tone::soft : Tone::warning);
    fill(m_climb, m_words.climb, {});
    fill(m_offPlan, m_words.offPlan, {});
    fill(m_step, m_words.step, m_words.stepLeft);
    m_cone.caption->setText(m_words.coneCaption);
    fill(m_cone, m_words.coneWhen, m_words.coneBetween);
    for (const auto& field : {m_climb, m_offPlan, m_step, m_cone, m_next})
        field.caption->setVisible(m_standing != Standing::beside);
    fill(m_next, m_words.next, m_words.nextWhen);
    m_trouble->setText(m_words.trouble);
    m_trouble->setMinimumWidth(
        width() < narrow
            ? 0
            : std::min(troubleWidth, m_trouble->fontMetrics().horizontalAdvance(m_words.trouble) + 4));
    m_trouble->setVisible(!m_words.trouble.isEmpty());
    leaveOut();
}

/// What the spread shows as well gives way, rather than that figures are cut off.
void Strip::leaveOut() {
    for (const auto& field : {m_next, m_offPlan, m_climb}) {
        if (layout()->minimumSize().width() <= width())
            return;
        field.box->hide();
    }
}

void Strip::dress() {
    m_unit->setFont(m_theme.text(TextSize::title));
    for (QLabel* label : {m_firing, m_age}) {
        label->setFont(m_theme.text(TextSize::small));
        setTone(label, Tone::soft);
    }
    for (const auto& field : {m_climb, m_offPlan, m_step, m_cone, m_next}) {
        field.caption->setFont(m_theme.text(TextSize::small));
        setTone(field.caption, Tone::soft);
        field.value->setFont(m_theme.text(TextSize::large));
        field.beside->setFont(m_theme.text(TextSize::body));
        setTone(field.beside, Tone::soft);
    }
    m_trouble->setFont(m_theme.text(TextSize::body, QFont::DemiBold));
    setTone(m_trouble, Tone::warning);
    refresh();
}

void Strip::setStanding(Standing standing) {
    m_standing = standing;
    setProperty("shown", standing == Standing::shown);
    style()->unpolish(this);
    style()->polish(this);
    const bool several = standing != Standing::alone;
    setFocusPolicy(several ? Qt::TabFocus : Qt::NoFocus);
    setCursor(standing == Standing::beside ? Qt::PointingHandCursor : Qt::ArrowCursor);
    setToolTip(standing == Standing::beside ? tr("Show this firing (Ctrl+Tab goes round)") : QString());
    const int margin = standing == Standing::beside ? 2 : 8;
    layout()->setContentsMargins(28, margin, 28, margin);
    const QString kiln = QString::fromStdString(m_session.record().kiln.name);
    setAccessibleName(standing == Standing::shown    ? tr("The firing now: %1, shown below").arg(kiln)
                      : standing == Standing::beside ? tr("The firing now: %1").arg(kiln)
                                                     : tr("The firing now"));
    refresh();
}

void Strip::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton && rect().contains(event->pos()))
        Q_EMIT wanted();
    else
        QFrame::mouseReleaseEvent(event);
}

void Strip::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter || event->key() == Qt::Key_Space)
        Q_EMIT wanted();
    else
        QFrame::keyPressEvent(event);
}

void Strip::contextMenuEvent(QContextMenuEvent* event) {
    Q_EMIT menuWanted(event->globalPos());
}

void Strip::resizeEvent(QResizeEvent* event) {
    QFrame::resizeEvent(event);
    refresh();
}

} // namespace ringhold
