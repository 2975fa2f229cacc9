#include "ui/kiln/offset_plot.h"

#include "ui/common/dates.h"
#include "ui/kiln/offset_series.h"
#include "ui/plot/custom_plot.h"
#include "ui/plot/plot_dress.h"
#include "ui/session/preferences.h"
#include "ui/theme/theme.h"

#include <QVBoxLayout>

#include <algorithm>

namespace ringhold {

namespace {

constexpr double z90 = 1.645;
constexpr std::size_t mostDates = 4; ///< that have room below the axis

} // namespace

OffsetPlot::OffsetPlot(const Preferences& preferences, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_preferences(preferences), m_theme(theme), m_plot(new QCustomPlot) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_plot);
    m_plot->setFocusPolicy(Qt::NoFocus);
    m_low = m_plot->addGraph();
    m_high = m_plot->addGraph();
    m_high->setChannelFillGraph(m_low);
    m_right = m_plot->addGraph();
    m_told = m_plot->addGraph();
    m_told->setLineStyle(QCPGraph::lsNone);
    m_intervals = new QCPErrorBars(m_plot->xAxis, m_plot->yAxis);
    m_intervals->setDataPlottable(m_told);
    m_intervals->setErrorType(QCPErrorBars::etValueError);
    connect(&theme, &Theme::changed, this, &OffsetPlot::dress);
    dress();
}

OffsetPlot::~OffsetPlot() = default;

void OffsetPlot::dress() {
    const auto& palette = m_theme.palette();
    dressPlot(*m_plot, m_theme);
    m_low->setPen(Qt::NoPen);
    m_high->setPen(Qt::NoPen);
    m_high->setBrush(palette.band);
    m_right->setPen(QPen(palette.plan, 1.2, Qt::DashLine));
    m_told->setScatterStyle(QCPScatterStyle(QCPScatterStyle::ssDisc, palette.kiln, palette.kiln, 7));
    m_intervals->setPen(QPen(palette.kiln, 1.4));
    m_plot->replot(QCustomPlot::rpQueuedReplot);
}

void OffsetPlot::show(const OffsetSeries* series) {
    m_series = series ? std::make_unique<OffsetSeries>(*series) : nullptr;
    m_plot->setVisible(series != nullptr);
    setAccessibleName(tr("Offset of the probe, firing by firing"));
    setAccessibleDescription(
        series ? seriesName(*series) + QLatin1Char(' ') + startWords(*series, m_preferences) : QString());
    if (series)
        draw();
}

/// In steps: each firing has what it began with, the place after the last what the next begins with.
double OffsetPlot::drawBand() {
    QVector<double> edges, low, high;
    double reach = 0;
    const auto step = [&](const OffsetPrior& prior) {
        const double mean = m_preferences.shown(prior.mean);
        const double half = m_preferences.shown(prior.sd) * z90;
        const double place = edges.isEmpty() ? 1 : edges.last() + 0.5;
        edges << place - 0.5 << place + 0.5;
        low << mean - half << mean - half;
        high << mean + half << mean + half;
        reach = std::max(reach, std::abs(mean) + half);
    };
    for (const auto& begun : m_series->begun)
        step(begun);
    step(m_series->now);
    m_low->setData(edges, low, true);
    m_high->setData(edges, high, true);
    return reach;
}

void OffsetPlot::draw() {
    const auto degrees = [&](TemperatureDifference d) { return m_preferences.shown(d); };
    const auto& told = m_series->told;
    double reach = 5;
    QVector<double> places;
    QVector<double> means;
    QVector<double> halves;
    const auto ticker = QSharedPointer<QCPAxisTickerText>::create();
    const std::size_t each = std::max<std::size_t>(1, (told.size() + mostDates - 1) / mostDates);
    for (std::size_t i = 0; i < told.size(); ++i) {
        places << static_cast<double>(i + 1);
        means << degrees(told[i].mean);
        halves << degrees(told[i].sd) * z90;
        reach = std::max(reach, std::abs(means.last()) + halves.last());
        if (i % each == 0)
            ticker->addTick(places.last(), shortDate(told[i].at, m_preferences));
    }
    const double next = static_cast<double>(told.size()) + 1;
    if (told.size() < 2 * mostDates || each == 1)
        ticker->addTick(next, tr("next"));
    m_told->setData(places, means, true);
    m_intervals->setData(halves);
    reach = std::max(reach, drawBand());
    const QVector<double> ends{0.5, next + 0.5};
    m_right->setData(ends, QVector<double>(2, 0.0), true);
    m_plot->xAxis->setTicker(ticker);
    m_plot->xAxis->setRange(ends[0], ends[1]);
    m_plot->yAxis->setRange(-reach * 1.1, reach * 1.1);
    m_plot->yAxis->ticker()->setTickCount(4);
    m_plot->yAxis->setLabel(tr("probe reads high, ") + m_preferences.unitName());
    m_plot->replot(QCustomPlot::rpQueuedReplot);
}

} // namespace ringhold
