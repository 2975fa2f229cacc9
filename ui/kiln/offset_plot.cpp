#include "ui/kiln/offset_plot.h"

#include "ui/common/dates.h"
#include "ui/kiln/offset_series.h"
#include "ui/plot/custom_plot.h"
#include "ui/session/preferences.h"
#include "ui/theme/theme.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr double z90 = 1.645;
constexpr std::size_t mostDates = 4; ///< that have room below the axis

} // namespace

OffsetPlot::OffsetPlot(const Preferences& preferences, const Theme& theme, QWidget* parent)
    : ThemedPlot(preferences, theme, parent), m_band(plot()), m_told(plot().addGraph()),
      m_intervals(new QCPErrorBars(plot().xAxis, plot().yAxis)) {
    m_told->setLineStyle(QCPGraph::lsNone);
    m_intervals->setDataPlottable(m_told);
    m_intervals->setErrorType(QCPErrorBars::etValueError);
    redress();
}

OffsetPlot::~OffsetPlot() = default;

void OffsetPlot::dress() {
    const auto& palette = theme().palette();
    m_band.dress(palette.band, QPen(palette.plan, 1.2, Qt::DashLine));
    m_told->setScatterStyle(QCPScatterStyle(QCPScatterStyle::ssDisc, palette.kiln, palette.kiln, 7));
    m_intervals->setPen(QPen(palette.kiln, 1.4));
}

void OffsetPlot::show(const OffsetSeries* series) {
    m_series = series ? std::make_unique<OffsetSeries>(*series) : nullptr;
    plot().setVisible(series != nullptr);
    setAccessibleName(tr("Offset of the probe, firing by firing"));
    setAccessibleDescription(
        series ? seriesName(*series) + QLatin1Char(' ') + startWords(*series, preferences()) : QString());
    if (series)
        draw();
}

/// In steps: each firing has what it began with, the place after the last what the next begins with.
double OffsetPlot::drawBand() {
    QVector<double> edges, low, high;
    double reach = 0;
    const auto step = [&](const OffsetPrior& prior) {
        const double mean = preferences().shown(prior.mean);
        const double half = preferences().shown(prior.sd) * z90;
        const double place = edges.isEmpty() ? 1 : edges.last() + 0.5;
        edges << place - 0.5 << place + 0.5;
        low << mean - half << mean - half;
        high << mean + half << mean + half;
        reach = std::max(reach, std::abs(mean) + half);
    };
    for (const auto& begun : m_series->begun)
        step(begun);
    step(m_series->now);
    m_band.setBand(edges, low, high);
    return reach;
}

void OffsetPlot::draw() {
    const auto degrees = [&](TemperatureDifference d) { return preferences().shown(d); };
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
            ticker->addTick(places.last(), shortDate(told[i].at, preferences()));
    }
    const double next = static_cast<double>(told.size()) + 1;
    if (told.size() < 2 * mostDates || each == 1)
        ticker->addTick(next, tr("next"));
    m_told->setData(places, means, true);
    m_intervals->setData(halves);
    reach = std::max(reach, drawBand());
    const QVector<double> ends{0.5, next + 0.5};
    m_band.setLine(ends, QVector<double>(2, 0.0));
    plot().xAxis->setTicker(ticker);
    plot().xAxis->setRange(ends[0], ends[1]);
    plot().yAxis->setRange(-reach * 1.1, reach * 1.1);
    plot().yAxis->ticker()->setTickCount(4);
    plot().yAxis->setLabel(tr("probe reads high, ") + preferences().unitName());
    plot().replot(QCustomPlot::rpQueuedReplot);
}

} // namespace ringhold
