#include "ui/plan/plan_curve_view.h"

#include "ui/plan/step_cells.h"
#include "ui/plot/custom_plot.h"
#include "ui/session/preferences.h"
#include "ui/theme/theme.h"

#include <QKeyEvent>
#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

PlanCurveView::PlanCurveView(const Theme& theme, const Preferences& preferences, QWidget* parent)
    : QWidget(parent), m_theme(theme), m_preferences(preferences), m_plot(new QCustomPlot(this)),
      m_words(new QLabel(this)) {
    m_plot->setObjectName(QStringLiteral("plannedCurve"));
    m_plot->setAccessibleName(tr("Planned curve"));
    m_plot->setFocusPolicy(Qt::StrongFocus);
    m_plot->setMinimumSize(280, 100);
    m_plot->setNoAntialiasingOnDrag(false);
    m_plot->installEventFilter(this);
    m_words->setObjectName(QStringLiteral("curveWords"));
    m_words->setProperty("tone", QStringLiteral("soft"));
    m_words->setProperty("lettering", QStringLiteral("small"));
    m_words->setWordWrap(true);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addWidget(m_plot, 1);
    layout->addWidget(m_words);
    connect(&theme, &Theme::changed, this, &PlanCurveView::draw);
    connect(&preferences, &Preferences::changed, this, &PlanCurveView::draw);
    draw();
}

void PlanCurveView::show(const Plan& plan, const PlannedCurve& planned) {
    m_shown.plan = plan;
    m_shown.planned = planned;
    m_shown.energy.reset();
    m_shown.rehearsal.reset();
    if (m_shown.step && *m_shown.step >= plan.steps.size())
        m_shown.step.reset();
    if (m_shown.mark_h)
        m_shown.mark_h = std::min(*m_shown.mark_h, inHours(planned.length()));
    draw();
}

void PlanCurveView::showKiln(const PlanEnergy& energy) {
    m_shown.energy = energy;
    draw();
}

void PlanCurveView::showRehearsal(const std::optional<Rehearsal>& rehearsal) {
    m_shown.rehearsal = m_shown.planned ? rehearsal : std::nullopt;
    draw();
}

void PlanCurveView::showNothing(const QString& why) {
    m_shown.planned.reset();
    m_shown.energy.reset();
    m_shown.rehearsal.reset();
    m_shown.mark_h.reset();
    m_why = why;
    draw();
}

void PlanCurveView::selectStep(std::optional<std::size_t> step) {
    m_shown.step = step;
    m_shown.mark_h.reset();
    draw();
}

void PlanCurveView::markAt(std::optional<double> hours) {
    m_shown.mark_h = m_shown.planned && hours
                         ? std::optional(std::clamp(*hours, 0.0, inHours(m_shown.planned->length())))
                         : std::nullopt;
    draw();
}

/// Where a mark is or would begin.
double PlanCurveView::markOrSelection() const {
    const auto& planned = *m_shown.planned;
    const auto begin = m_shown.step ? planned.steps[*m_shown.step].start : planned.start();
    return m_shown.mark_h.value_or(inHours(begin - planned.start()));
}

void PlanCurveView::draw() {
    PlanCurveDrawing(*m_plot, m_theme, m_preferences).draw(m_shown);
    tell();
}

QString PlanCurveView::legInWords(const PlannedLeg& leg) const {
    const QString step =
        tr("step %1, %2").arg(leg.step + 1).arg(kindWords(kindOf(m_shown.plan.steps[leg.step])));
    const QString ring = leg.ring ? tr(", ring %1").arg(*leg.ring) : QString();
    const QString motion = leg.motion == Motion::up     ? tr(", going up")
                           : leg.motion == Motion::down ? tr(", going down")
                                                        : tr(", staying");
    return step + ring + motion;
}

void PlanCurveView::tell() {
    QString words = m_why;
    if (m_shown.planned && m_shown.mark_h) {
        const auto at = m_shown.planned->start() + durationFromHours(*m_shown.mark_h);
        words = tr("%1 after the start: %2")
                    .arg(m_preferences.span(at - m_shown.planned->start()),
                         m_preferences.temperature(m_shown.planned->temperatureAt(at)));
        if (const auto* leg = m_shown.planned->legAt(at))
            words += QStringLiteral(", ") + legInWords(*leg);
    } else if (m_shown.planned && m_shown.step) {
        const auto& step = m_shown.planned->steps[*m_shown.step];
        words = tr("Step %1, %2: from %3 to %4 after the start, %5 to %6")
                    .arg(step.step + 1)
                    .arg(kindWords(kindOf(m_shown.plan.steps[step.step])),
                         m_preferences.span(step.start - m_shown.planned->start()),
                         m_preferences.span(step.end - m_shown.planned->start()),
                         m_preferences.temperature(step.from), m_preferences.temperature(step.to));
    } else if (m_shown.planned) {
        words = tr("Hours after the start. The arrow keys move along the curve.");
    }
    m_words->setText(words);
    m_plot->setAccessibleDescription(curveInWords());
}

QString PlanCurveView::curveInWords() const {
    if (!m_shown.planned)
        return m_why;
    QStringList parts;
    for (const auto& step : m_shown.planned->steps)
        parts << tr("%1 to %2 by %3")
                     .arg(kindWords(kindOf(m_shown.plan.steps[step.step])),
                          m_preferences.temperature(step.to),
                          m_preferences.span(step.end - m_shown.planned->start()));
    return parts.join(QStringLiteral("; "));
}

bool PlanCurveView::moveMark(int key, Qt::KeyboardModifiers modifiers) {
    const double step = modifiers & Qt::ShiftModifier ? 1.0 : 1.0 / 12;
    const double now = markOrSelection();
    switch (key) {
    case Qt::Key_Left:
        markAt(now - step);
        return true;
    case Qt::Key_Right:
        markAt(now + step);
        return true;
    case Qt::Key_Home:
        markAt(0);
        return true;
    case Qt::Key_End:
        markAt(inHours(m_shown.planned->length()));
        return true;
    default:
        return false;
    }
}

bool PlanCurveView::eventFilter(QObject* watched, QEvent* event) {
    if (watched != m_plot || !m_shown.planned)
        return QWidget::eventFilter(watched, event);
    if (event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        return moveMark(key->key(), key->modifiers());
    }
    if (event->type() == QEvent::FocusIn &&
        static_cast<QFocusEvent*>(event)->reason() != Qt::MouseFocusReason)
        markAt(markOrSelection());
    if (event->type() == QEvent::FocusOut)
        markAt({});
    if (event->type() == QEvent::MouseButtonPress)
        pickAt(m_plot->xAxis->pixelToCoord(static_cast<QMouseEvent*>(event)->position().x()));
    return QWidget::eventFilter(watched, event);
}

void PlanCurveView::pickAt(double hours) {
    const auto& planned = *m_shown.planned;
    const double within = std::clamp(hours, 0.0, inHours(planned.length()));
    if (const auto* leg = planned.legAt(planned.start() + durationFromHours(within)))
        Q_EMIT stepPicked(static_cast<int>(leg->step));
    markAt(within);
}

} // namespace ringhold
