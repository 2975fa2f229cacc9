#include "ui/plan/plan_curve_drawing.h"

#include "core/growth/growth_rate.h"
#include "ui/plan/plan_words.h"
#include "ui/plot/custom_plot.h"
#include "ui/plot/time_axis.h"
#include "ui/session/preferences.h"
#include "ui/theme/theme.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr double planWidth = 1.8;
constexpr double selectedWidth = 4;
constexpr double headroom = 1.18; ///< above the hottest point, for the cones' words

Temperature hottest(const Curve& curve) {
    return std::ranges::max(curve, {}, &CurvePoint::temperature).temperature;
}

QCPItemText* addWords(QCustomPlot& plot, const QString& text, const QFont& font, const QColor& ink) {
    auto* words = new QCPItemText(&plot);
    words->setText(text);
    words->setFont(font);
    words->setColor(ink);
    words->setPadding(QMargins(4, 2, 4, 2));
    words->setClipToAxisRect(false);
    return words;
}

QCPItemRect* addGround(QCustomPlot& plot, const QColor& colour, double left, double top, double right,
                       double bottom) {
    auto* ground = new QCPItemRect(&plot);
    ground->setLayer(QStringLiteral("grid"));
    ground->setPen(Qt::NoPen);
    ground->setBrush(colour);
    ground->topLeft->setCoords(left, top);
    ground->bottomRight->setCoords(right, bottom);
    return ground;
}

QCPItemLine* addUpright(QCustomPlot& plot, const QPen& pen, double hours, double bottom, double top) {
    auto* line = new QCPItemLine(&plot);
    line->setPen(pen);
    line->start->setCoords(hours, bottom);
    line->end->setCoords(hours, top);
    return line;
}

} // namespace

PlanCurveDrawing::PlanCurveDrawing(QCustomPlot& plot, const Theme& theme, const Preferences& preferences)
    : m_plot(plot), m_theme(theme), m_preferences(preferences) {}

void PlanCurveDrawing::draw(const DrawnPlan& drawn) {
    m_drawn = &drawn;
    m_plot.clearItems();
    m_plot.clearGraphs();
    dressAxes();
    if (drawn.planned) {
        drawGrowthWindow();
        drawBands();
        drawRehearsal();
        drawKiln();
        drawPlan();
        drawSelection();
        drawConeDowns();
        drawMark();
    }
    m_plot.replot(QCustomPlot::rpQueuedReplot);
}

double PlanCurveDrawing::hoursOf(Instant at) const {
    return inHours(at - m_drawn->planned->start());
}

double PlanCurveDrawing::shown(Temperature t) const {
    return m_preferences.shown(t);
}

void PlanCurveDrawing::dressAxes() {
    const auto& inks = m_theme.palette();
    m_plot.setBackground(inks.page);
    for (auto* axis : {m_plot.xAxis, m_plot.yAxis}) {
        axis->setTickLabelFont(m_theme.text(TextSize::small));
        axis->setLabelFont(m_theme.text(TextSize::small));
        axis->setTickLabelColor(inks.soft);
        axis->setLabelColor(inks.soft);
        axis->setBasePen(QPen(inks.faint, 1));
        axis->setTickPen(QPen(inks.faint, 1));
        axis->setSubTicks(false);
        axis->setTickLabelPadding(7);
        axis->grid()->setZeroLinePen(Qt::NoPen);
        axis->grid()->setPen(QPen(inks.grid, 1));
        axis->setVisible(m_drawn->planned.has_value());
    }
    showHours(*m_plot.xAxis);
    m_plot.xAxis->grid()->setVisible(false);
    m_plot.yAxis->setBasePen(Qt::NoPen);
    m_plot.yAxis->setTickPen(Qt::NoPen);
    m_plot.yAxis->setLabel(m_preferences.unitName());
    if (!m_drawn->planned)
        return;
    double length = std::max(inHours(m_drawn->planned->length()), 0.1);
    if (m_drawn->rehearsal && !m_drawn->rehearsal->band.empty())
        length = std::max(length, m_drawn->rehearsal->band.back().hour);
    m_plot.xAxis->setRange(0, length * 1.01);
    m_plot.yAxis->setRange(0, shown(hottest(m_drawn->planned->curve)) * headroom);
}

/// From the hottest point on: what grows before it melts away.
void PlanCurveDrawing::drawGrowthWindow() {
    const auto window = publishedGrowthRate().window;
    const auto peak = std::ranges::max_element(m_drawn->planned->curve, {}, &CurvePoint::temperature);
    const double left = hoursOf(peak->at);
    const double right = m_plot.xAxis->range().upper;
    if (peak->temperature < window.halfCold)
        return;
    const auto& inks = m_theme.palette();
    addGround(m_plot, inks.forecastWindow, left, shown(window.halfHot), right, shown(window.halfCold));
    auto* words = addWords(m_plot, PlanWords::tr("crystals grow best"), m_theme.text(TextSize::small),
                           inks.forecastText);
    words->setPositionAlignment(Qt::AlignRight | Qt::AlignBottom);
    words->position->setCoords(right, shown(window.halfHot));
}

void PlanCurveDrawing::drawBands() {
    for (const auto& leg : m_drawn->planned->legs)
        if (leg.band)
            addGround(m_plot, m_theme.palette().band, hoursOf(leg.start), shown(leg.to + *leg.band),
                      hoursOf(leg.end), shown(leg.to - *leg.band));
}

void PlanCurveDrawing::addCurve(const Curve& curve, const QPen& pen) {
    QVector<double> hours;
    QVector<double> degrees;
    for (const auto& point : curve) {
        hours.append(hoursOf(point.at));
        degrees.append(shown(point.temperature));
    }
    auto* graph = m_plot.addGraph();
    graph->setPen(pen);
    graph->setData(hours, degrees, true);
}

void PlanCurveDrawing::drawPlan() {
    QPen pen(m_theme.palette().plan, planWidth);
    pen.setDashPattern({4, 3});
    pen.setJoinStyle(Qt::RoundJoin);
    addCurve(m_drawn->planned->curve, pen);
}

void PlanCurveDrawing::drawSelection() {
    if (!m_drawn->step)
        return;
    const auto& step = m_drawn->planned->steps[*m_drawn->step];
    Curve part{{step.start, step.from}};
    for (const auto& point : m_drawn->planned->curve)
        if (point.at > step.start && point.at < step.end)
            part.push_back(point);
    part.push_back({step.end, step.to});
    QPen pen(m_theme.palette().plan, selectedWidth);
    pen.setCapStyle(Qt::RoundCap);
    addCurve(part, pen);
}

void PlanCurveDrawing::drawRehearsal() {
    if (!m_drawn->rehearsal || m_drawn->rehearsal->band.empty())
        return;
    const auto& inks = m_theme.palette();
    auto* low = m_plot.addGraph();
    auto* high = m_plot.addGraph();
    auto* likely = m_plot.addGraph();
    for (const auto& point : m_drawn->rehearsal->band) {
        low->addData(point.hour, shown(Temperature::fromCelsius(point.p05_C)));
        high->addData(point.hour, shown(Temperature::fromCelsius(point.p95_C)));
        likely->addData(point.hour, shown(Temperature::fromCelsius(point.median_C)));
    }
    QColor ground = inks.kiln;
    ground.setAlphaF(0.18F);
    low->setPen(Qt::NoPen);
    high->setPen(Qt::NoPen);
    high->setBrush(ground);
    high->setChannelFillGraph(low);
    likely->setPen(QPen(inks.kiln, 1.2));
}

void PlanCurveDrawing::drawKiln() {
    if (!m_drawn->energy || m_drawn->rehearsal) // the kiln itself says more than a typical one
        return;
    const QPen pen(m_theme.palette().kiln, 1.2);
    for (const auto& stretch : m_drawn->energy->cannotFollow) {
        Curve real;
        for (const auto& point : m_drawn->energy->trace)
            if (point.at >= stretch.start && point.at <= stretch.end)
                real.push_back({point.at, point.kiln.chamber});
        if (real.size() > 1)
            addCurve(real, pen);
    }
}

void PlanCurveDrawing::drawConeDowns() {
    const auto& inks = m_theme.palette();
    const double top = m_plot.yAxis->range().upper;
    for (const auto& step : m_drawn->planned->steps) {
        const auto* wait = std::get_if<ConeWait>(&m_drawn->plan.steps[step.step]);
        if (!wait)
            continue;
        const double hours = hoursOf(step.end);
        addUpright(m_plot, QPen(inks.forecast, 1.4), hours, 0, top);
        const QString cone = QString::fromStdString(wait->cone);
        const QString text = step.coneWaitEnd == ConeWaitEnd::estimated
                                 ? PlanWords::tr("cone %1 down, an estimate").arg(cone)
                             : step.coneWaitEnd == ConeWaitEnd::stillStanding
                                 ? PlanWords::tr("cone %1 still standing, an estimate").arg(cone)
                                 : PlanWords::tr("cone %1 down, assumed").arg(cone);
        auto* words = addWords(m_plot, text, m_theme.text(TextSize::small), inks.forecastText);
        const bool toTheRight = hours < m_plot.xAxis->range().upper / 2;
        words->setPositionAlignment((toTheRight ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignTop);
        words->position->setCoords(hours, top);
    }
}

void PlanCurveDrawing::drawMark() {
    if (!m_drawn->mark_h)
        return;
    const auto& inks = m_theme.palette();
    const double hours = *m_drawn->mark_h;
    addUpright(m_plot, QPen(inks.ink, 1), hours, 0, m_plot.yAxis->range().upper);
    auto* point = new QCPItemTracer(&m_plot);
    point->setStyle(QCPItemTracer::tsCircle);
    point->setSize(9);
    point->setPen(QPen(inks.ink, 1.2));
    point->setBrush(inks.page);
    const auto at = m_drawn->planned->start() + durationFromHours(hours);
    point->position->setCoords(hours, shown(m_drawn->planned->temperatureAt(at)));
}

} // namespace ringhold
