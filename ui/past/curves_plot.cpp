#include "ui/past/curves_plot.h"

#include "ui/plot/custom_plot.h"
#include "ui/plot/decimation.h"
#include "ui/plot/look_mark.h"
#include "ui/plot/plot_dress.h"
#include "ui/plot/time_axis.h"
#include "ui/session/preferences.h"
#include "ui/theme/theme.h"

#include <QKeyEvent>
#include <QVBoxLayout>

#include <algorithm>
#include <limits>

namespace ringhold {

namespace {

constexpr double zoomStep = 0.7;
constexpr int leastRoom = 18; ///< beside the curves, in pixels

} // namespace

CurvesPlot::CurvesPlot(const Preferences& preferences, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_preferences(preferences), m_theme(theme), m_plot(new QCustomPlot),
      m_cursor(new QCPItemLine(m_plot)), m_cursorText(new QCPItemText(m_plot)) {
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Curves"));
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_plot);
    m_plot->setFocusPolicy(Qt::NoFocus);
    m_plot->setInteractions(QCP::iRangeDrag | QCP::iRangeZoom);
    m_plot->axisRect()->setRangeDrag(Qt::Horizontal);
    m_plot->axisRect()->setRangeZoom(Qt::Horizontal);
    m_cursorText->position->setTypeY(QCPItemPosition::ptAxisRectRatio);
    m_cursorText->setClipToAxisRect(false);
    m_cursor->setVisible(false);
    m_cursorText->setVisible(false);
    connectPlot();
    connect(&theme, &Theme::changed, this, &CurvesPlot::dress);
    dress();
}

void CurvesPlot::connectPlot() {
    connect(m_plot, &QCustomPlot::beforeReplot, this, &CurvesPlot::drawCurves);
    connect(m_plot, &QCustomPlot::mouseMove, this,
            [this](QMouseEvent* event) { moveCursor(m_plot->xAxis->pixelToCoord(event->position().x())); });
    connect(m_plot, &QCustomPlot::mouseDoubleClick, this, &CurvesPlot::showAll);
}

void CurvesPlot::dress() {
    const auto& palette = m_theme.palette();
    dressPlot(*m_plot, m_theme);
    m_cursor->setPen(QPen(palette.soft, 1));
    m_cursorText->setColor(palette.ink);
    m_cursorText->setFont(m_theme.text(TextSize::small));
    nameCurves();
    m_plot->replot(QCustomPlot::rpQueuedReplot);
}

std::pair<double, double> CurvesPlot::inSight() const {
    return {m_plot->xAxis->range().lower, m_plot->xAxis->range().upper};
}

double CurvesPlot::degrees(Temperature t) const {
    return m_preferences.shown(t);
}

double CurvesPlot::placeOf(const DrawnCurve& curve, Instant at) const {
    return curve.zero ? ringhold::inHours(at - *curve.zero) : onAxis(at);
}

Instant CurvesPlot::instantAt(const DrawnCurve& curve, double place) const {
    return curve.zero ? *curve.zero + durationFromHours(place) : fromAxis(place);
}

void CurvesPlot::show(std::vector<DrawnCurve> curves, std::vector<DrawnLook> looks) {
    m_curves = std::move(curves);
    std::erase_if(m_curves, [](const DrawnCurve& c) { return !c.curve || c.curve->empty(); });
    m_looks = std::move(looks);
    m_plot->clearGraphs();
    for (const auto& curve : m_curves)
        m_plot->addGraph()->setPen(curve.pen);
    if (inHours())
        showHours(*m_plot->xAxis);
    else
        showTimesOfDay(*m_plot->xAxis, m_preferences.zone());
    m_cursorWords.clear();
    m_cursor->setVisible(false);
    m_cursorText->setVisible(false);
    nameCurves();
    drawLooks();
    showAll();
}

void CurvesPlot::nameCurves() {
    for (auto* name : m_names)
        m_plot->removeItem(name);
    m_names.clear();
    const QFontMetrics letters(m_theme.text(TextSize::small, QFont::Bold));
    int room = leastRoom;
    for (const auto& curve : m_curves) {
        if (curve.name.isEmpty())
            continue;
        room = std::max(room, letters.horizontalAdvance(curve.name) + 8);
        auto* name = new QCPItemText(m_plot);
        const auto& end = curve.curve->back();
        name->position->setCoords(placeOf(curve, end.at), degrees(end.temperature));
        name->setPositionAlignment(Qt::AlignLeft | Qt::AlignVCenter);
        name->setPadding({3, 0, 0, 0});
        name->setText(curve.name);
        name->setColor(curve.pen.color());
        name->setFont(m_theme.text(TextSize::small, QFont::Bold));
        name->setClipToAxisRect(false);
        m_names.push_back(name);
    }
    m_plot->axisRect()->setMinimumMargins(QMargins(8, 22, room, 4));
}

void CurvesPlot::drawLooks() {
    for (int i = m_plot->itemCount() - 1; i >= 0; --i)
        if (dynamic_cast<LookMark*>(m_plot->item(i)))
            m_plot->removeItem(i);
    for (const auto& look : m_looks)
        new LookMark(m_plot, onAxis(look.at), degrees(look.temperature), look.hour, m_theme);
}

void CurvesPlot::drawCurves() {
    const auto range = m_plot->xAxis->range();
    for (std::size_t i = 0; i < m_curves.size(); ++i) {
        const auto& curve = m_curves[i];
        const Curve seen = decimated(*curve.curve, instantAt(curve, range.lower),
                                     instantAt(curve, range.upper), m_plot->axisRect()->width());
        QVector<QCPGraphData> points;
        points.reserve(static_cast<qsizetype>(seen.size()));
        for (const auto& point : seen)
            points.append({placeOf(curve, point.at), degrees(point.temperature)});
        m_plot->graph(static_cast<int>(i))->data()->set(points, true);
    }
}

void CurvesPlot::showAll() {
    if (m_curves.empty()) {
        m_plot->replot(QCustomPlot::rpQueuedReplot);
        return;
    }
    double first = std::numeric_limits<double>::max(); // a QCPRange would put itself the right way round
    double last = std::numeric_limits<double>::lowest();
    double hottest = degrees(Temperature::fromCelsius(100));
    for (const auto& curve : m_curves) {
        first = std::min(first, placeOf(curve, curve.curve->front().at));
        last = std::max(last, placeOf(curve, curve.curve->back().at));
        const auto peak = std::ranges::max_element(*curve.curve, {}, &CurvePoint::temperature);
        hottest = std::max(hottest, degrees(peak->temperature));
    }
    m_plot->xAxis->setRange(first, std::max(last, first + 0.1));
    m_plot->yAxis->setRange(0, hottest * 1.05);
    m_plot->replot(QCustomPlot::rpQueuedReplot);
}

QString CurvesPlot::wordsAt(double place) const {
    QStringList parts;
    parts << (inHours() ? QStringLiteral("%1 h").arg(place, 0, 'f', 2)
                        : m_preferences.clockTime(instantAt(m_curves.front(), place)));
    for (const auto& curve : m_curves) {
        const Instant at = instantAt(curve, place);
        if (at < curve.curve->front().at || at > curve.curve->back().at)
            continue;
        const auto value = m_preferences.temperature(temperatureAt(*curve.curve, at));
        parts << (curve.name.isEmpty() ? value : curve.name + QLatin1Char(' ') + value);
    }
    return parts.join(QStringLiteral("  "));
}

void CurvesPlot::moveCursor(double place) {
    if (m_curves.empty())
        return;
    const auto range = m_plot->xAxis->range();
    place = std::clamp(place, range.lower, range.upper);
    m_cursorWords = wordsAt(place);
    setAccessibleDescription(m_cursorWords);
    m_cursor->start->setCoords(place, m_plot->yAxis->range().lower);
    m_cursor->end->setCoords(place, m_plot->yAxis->range().upper);
    m_cursorText->position->setCoords(place, 0);
    const auto side = place > range.center() ? Qt::AlignRight : Qt::AlignLeft;
    m_cursorText->setPositionAlignment(side | Qt::AlignBottom);
    m_cursorText->setText(m_cursorWords);
    m_cursor->setVisible(true);
    m_cursorText->setVisible(true);
    m_plot->replot(QCustomPlot::rpQueuedReplot);
}

void CurvesPlot::keyPressEvent(QKeyEvent* event) {
    auto& axis = *m_plot->xAxis;
    const double at = m_cursor->visible() ? m_cursor->start->coords().x() : axis.range().center();
    switch (event->key()) {
    case Qt::Key_Left:
        return moveCursor(at - axis.range().size() / 60);
    case Qt::Key_Right:
        return moveCursor(at + axis.range().size() / 60);
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        axis.scaleRange(zoomStep, at);
        break;
    case Qt::Key_Minus:
        axis.scaleRange(1 / zoomStep, at);
        break;
    case Qt::Key_Home:
        return showAll();
    default:
        return QWidget::keyPressEvent(event);
    }
    m_plot->replot(QCustomPlot::rpQueuedReplot);
}

} // namespace ringhold
