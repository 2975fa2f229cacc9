#include "ui/spread/curve_view.h"

#include "ui/plot/custom_plot.h"
#include "ui/plot/decimation.h"
#include "ui/plot/plot_dress.h"
#include "ui/plot/time_axis.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/spread/curve_marks.h"
#include "ui/spread/forecast_marks.h"
#include "ui/theme/theme.h"

#include <QKeyEvent>
#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

namespace {

constexpr double hour_s = 3600;
constexpr double cursorSteps = 60;  ///< of the keys, from edge to edge
constexpr int closestLines_px = 20; ///< of temperature
constexpr int mostLines = 6;
constexpr int fewestColumns = 1000; // the view may not have its size yet

} // namespace

CurveView::CurveView(const FiringSession& session, const Preferences& preferences, const Theme& theme,
                     CurveSpan span, QWidget* parent)
    : QWidget(parent), m_session(session), m_preferences(preferences), m_theme(theme), m_span(span),
      m_plot(new QCustomPlot(this)) {
    setAccessibleName(span == CurveSpan::whole ? tr("Curve of the firing over its plan")
                                               : tr("Close-up of the curve"));
    setFocusPolicy(Qt::StrongFocus);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_plot);
    build();
    connect(&theme, &Theme::changed, this, &CurveView::dress);
    connect(&preferences, &Preferences::changed, this, &CurveView::dress);
    dress();
}

CurveView::~CurveView() = default;

void CurveView::build() {
    m_plot->setFocusPolicy(Qt::NoFocus);
    m_plot->setInteractions(QCP::iRangeDrag | QCP::iRangeZoom);
    m_plot->axisRect()->setRangeDrag(Qt::Horizontal);
    m_plot->axisRect()->setRangeZoom(Qt::Horizontal);
    m_plot->axisRect()->setMinimumMargins(QMargins(8, 24, 12, 4));
    m_plot->xAxis->grid()->setVisible(false);
    m_bandLow = m_plot->addGraph();
    m_bandHigh = m_plot->addGraph();
    m_bandLow->setPen(Qt::NoPen);
    m_bandHigh->setPen(Qt::NoPen);
    m_bandHigh->setChannelFillGraph(m_bandLow);
    m_forecast = std::make_unique<ForecastMarks>(*m_plot);
    m_plan = m_plot->addGraph();
    m_byHand = m_plot->addGraph();
    m_pending = m_plot->addGraph();
    m_now = m_plot->addGraph();
    for (QCPGraph* dots : {m_byHand, m_pending, m_now})
        dots->setLineStyle(QCPGraph::lsNone);
    m_cursorLine = new QCPItemLine(m_plot);
    m_cursorText = new QCPItemText(m_plot);
    m_cursorText->position->setTypeX(QCPItemPosition::ptPlotCoords);
    m_cursorText->position->setTypeY(QCPItemPosition::ptAxisRectRatio);
    m_cursorText->setPositionAlignment(Qt::AlignLeft | Qt::AlignBottom);
    m_cursorLine->setVisible(false);
    m_cursorText->setVisible(false);
    connect(m_plot, &QCustomPlot::mouseMove, this, [this](QMouseEvent* event) {
        moveCursor(m_plot->xAxis->pixelToCoord(event->position().x()));
        m_plot->replot(QCustomPlot::rpQueuedReplot);
    });
    connect(m_plot->xAxis, qOverload<const QCPRange&>(&QCPAxis::rangeChanged), this,
            &CurveView::showReadings);
    connect(m_plot, &QCustomPlot::mouseWheel, this, [this] { m_zoomed = true; });
    connect(m_plot, &QCustomPlot::mousePress, this, [this] { m_zoomed = true; });
    connect(m_plot, &QCustomPlot::mouseDoubleClick, this, [this] {
        m_zoomed = false;
        refresh();
    });
}

void CurveView::dress() {
    const auto& palette = m_theme.palette();
    dressPlot(*m_plot, m_theme);
    m_plot->setBackground(Qt::transparent);
    m_plot->setAttribute(Qt::WA_OpaquePaintEvent, false);
    showTimesOfDay(*m_plot->xAxis, m_preferences.zone());
    m_plan->setPen(QPen(palette.plan, 1.5, Qt::DashLine));
    m_bandHigh->setBrush(palette.band);
    m_byHand->setScatterStyle(QCPScatterStyle(QCPScatterStyle::ssDisc, palette.kiln, palette.kiln, 6));
    m_pending->setScatterStyle(QCPScatterStyle(QCPScatterStyle::ssCircle, palette.kiln, palette.page, 6));
    m_now->setScatterStyle(QCPScatterStyle(QCPScatterStyle::ssDisc, palette.kiln, palette.kiln, 9));
    m_forecast->dress(m_theme);
    m_cursorText->setColor(palette.ink);
    m_cursorText->setFont(m_theme.text(TextSize::small));
    m_cursorText->setBrush(palette.page);
    m_cursorText->setPadding(QMargins(4, 1, 4, 1));
    m_cursorLine->setPen(QPen(palette.soft, 1, Qt::DotLine));
    refresh();
}

double CurveView::degrees(Temperature t) const {
    return m_preferences.shown(t);
}

void CurveView::setCurve(QCPGraph* graph, const Curve& curve) const {
    QVector<QCPGraphData> points;
    points.reserve(static_cast<qsizetype>(curve.size()));
    for (const auto& point : curve)
        points.append({onAxis(point.at), degrees(point.temperature)});
    graph->data()->set(points, true);
}

/// What of a curve is worth drawing between the two times.
Curve CurveView::inSight(const Curve& curve) const {
    const auto times = m_plot->xAxis->range();
    return decimated(curve, fromAxis(times.lower), fromAxis(times.upper),
                     std::max(m_plot->width(), fewestColumns));
}

void CurveView::showReadings() {
    const auto& firing = m_session.firing();
    const auto& palette = m_theme.palette();
    const auto control = firing.controlChannel();
    std::size_t used = 0;
    QVector<QCPGraphData> pending;
    for (const auto& channel : firing.record().channels) {
        if (channel.quantity != Quantity::temperature)
            continue;
        const auto& curve = firing.curve(channel.id);
        if (channel.label == byHandLabel)
            setCurve(m_byHand, inSight(curve));
        if (channel.label == byHandLabel && control != channel.id)
            continue; // dots are enough beside an instrument's line
        if (used == m_channels.size())
            m_channels.push_back(m_plot->addGraph());
        QCPGraph* graph = m_channels[used++];
        const bool isControl = control == channel.id;
        graph->setPen(QPen(isControl ? palette.kiln : palette.soft, isControl ? 2.2 : 1.2));
        setCurve(graph, inSight(curve));
        for (std::size_t i = firing.durableCount(channel.id); i < curve.size(); ++i)
            pending.append({onAxis(curve[i].at), degrees(curve[i].temperature)});
    }
    m_pending->data()->set(pending, true);
    m_now->data()->clear();
    if (const auto last = firing.lastReading())
        m_now->addData(onAxis(last->at), degrees(last->temperature));
}

void CurveView::showPlan() {
    m_plan->data()->clear();
    m_bandLow->data()->clear();
    m_bandHigh->data()->clear();
    const auto* hold = m_session.watch().holdToKeep();
    const bool planned = hold && hold->source == HoldSource::plan;
    if (const auto last = m_session.firing().lastReading(); hold && !planned && last)
        addBand({hold->from, std::max(hold->from, last->at)}, hold->band);
    const auto* follower = m_session.follower();
    if (!follower)
        return;
    setCurve(m_plan, follower->drawn());
    for (const auto& leg : follower->ahead().legs)
        if (leg.band)
            addBand({leg.start, leg.end},
                    planned && leg.start <= m_session.now() ? hold->band : HoldBand{leg.to, *leg.band});
}

void CurveView::addBand(const Stretch& when, const HoldBand& band) {
    for (const Instant at : {when.start, when.end}) {
        m_bandLow->addData(onAxis(at), degrees(band.low()));
        m_bandHigh->addData(onAxis(at), degrees(band.high()));
    }
    m_bandLow->addData(onAxis(when.end) + 1, qQNaN());
    m_bandHigh->addData(onAxis(when.end) + 1, qQNaN());
}

void CurveView::setTimes() {
    if (m_zoomed)
        return;
    const auto& curve = m_session.firing().controlCurve();
    const auto* follower = m_session.follower();
    const double now = onAxis(m_session.now());
    double first = curve.empty() ? now - hour_s : onAxis(curve.front().at);
    double last = std::max(now, first + hour_s);
    if (follower && !follower->finished() && !follower->ahead().curve.empty())
        last = std::max(last, onAxis(follower->ahead().end()));
    if (m_span == CurveSpan::closeUp) {
        first = std::max(first, now - 2 * hour_s);
        last = now + hour_s;
    }
    const QSignalBlocker quiet(m_plot->xAxis);
    m_plot->xAxis->setRange(first, last);
}

/// To all that is to be seen between the two times.
void CurveView::setDegrees() {
    if (m_zoomed)
        return;
    bool found = false;
    QCPRange range;
    for (int i = 0; i < m_plot->graphCount(); ++i) {
        bool has = false;
        const auto of = m_plot->graph(i)->getValueRange(has, QCP::sdBoth, m_plot->xAxis->range());
        if (!has)
            continue;
        range = found ? QCPRange(std::min(range.lower, of.lower), std::max(range.upper, of.upper)) : of;
        found = true;
    }
    if (!found)
        range = {0, degrees(Temperature::fromCelsius(1300))};
    if (m_span == CurveSpan::whole)
        range.lower = std::min(range.lower, 0.0);
    const double room = std::max((range.upper - range.lower) * 0.08, 4.0);
    m_plot->yAxis->setRange(m_span == CurveSpan::whole ? range.lower : range.lower - room,
                            range.upper + room);
}

void CurveView::refresh() {
    const int lines = m_plot->axisRect()->height() / closestLines_px;
    m_plot->yAxis->ticker()->setTickCount(std::clamp(lines, 2, mostLines));
    showPlan();
    setTimes();
    showReadings();
    setDegrees();
    m_forecast->show(m_session, m_preferences);
    drawMarks(*m_plot, m_session, m_preferences, m_theme,
              m_span == CurveSpan::closeUp ? MarkWords::beside : MarkWords::none);
    m_plot->replot(QCustomPlot::rpQueuedReplot);
}

void CurveView::moveCursor(double key) {
    const auto& curve = m_session.firing().controlCurve();
    if (curve.empty())
        return;
    key = std::clamp(key, onAxis(curve.front().at), m_plot->xAxis->range().upper);
    const Instant at = fromAxis(key);
    m_cursorWords = m_preferences.clockTime(at);
    if (at <= curve.back().at)
        m_cursorWords += QStringLiteral("  ") + m_preferences.temperature(temperatureAt(curve, at));
    if (const auto* follower = m_session.follower())
        if (const auto plan = follower->drawn();
            !plan.empty() && at >= plan.front().at && at <= plan.back().at)
            m_cursorWords += tr(", plan ") + m_preferences.temperature(temperatureAt(plan, at));
    const Duration reach = durationFromSeconds(m_plot->xAxis->range().size() / cursorSteps / 2);
    if (const QString setting = settingNear(m_session, m_preferences, at, reach); !setting.isEmpty())
        m_cursorWords += QStringLiteral(", ") + setting;
    m_cursorLine->start->setCoords(key, m_plot->yAxis->range().lower);
    m_cursorLine->end->setCoords(key, m_plot->yAxis->range().upper);
    const bool rightHalf = key > m_plot->xAxis->range().center();
    m_cursorText->position->setCoords(key, 0);
    m_cursorText->setPositionAlignment((rightHalf ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignBottom);
    m_cursorText->setText(m_cursorWords);
    m_cursorLine->setVisible(true);
    m_cursorText->setVisible(true);
    m_cursorText->setClipToAxisRect(false);
    setAccessibleDescription(m_cursorWords);
}

void CurveView::zoom(double factor) {
    m_zoomed = true;
    m_plot->xAxis->scaleRange(factor, m_cursorLine->visible() ? m_cursorLine->start->coords().x()
                                                              : m_plot->xAxis->range().center());
}

void CurveView::keyPressEvent(QKeyEvent* event) {
    const double step = m_plot->xAxis->range().size() / cursorSteps;
    const double at = m_cursorLine->visible() ? m_cursorLine->start->coords().x() : onAxis(m_session.now());
    switch (event->key()) {
    case Qt::Key_Left:
        moveCursor(at - step);
        break;
    case Qt::Key_Right:
        moveCursor(at + step);
        break;
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        zoom(0.7);
        break;
    case Qt::Key_Minus:
        zoom(1 / 0.7);
        break;
    case Qt::Key_Home:
        m_zoomed = false;
        refresh();
        break;
    default:
        QWidget::keyPressEvent(event);
        return;
    }
    m_plot->replot(QCustomPlot::rpQueuedReplot);
}

} // namespace ringhold
