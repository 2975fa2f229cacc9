#include "ui/glaze/growth_plot.h"

#include "ui/plot/custom_plot.h"
#include "ui/session/preferences.h"
#include "ui/theme/theme.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr double coldest_C = 930;
constexpr double hottest_C = 1220;
constexpr double step_C = 5;

} // namespace

GrowthPlot::GrowthPlot(const Preferences& preferences, const Theme& theme, QWidget* parent)
    : ThemedPlot(preferences, theme, parent), m_fitted(plot()), m_least(plot().addGraph()),
      m_most(plot().addGraph()) {
    setAccessibleName(tr("Growth rate against temperature"));
    redress();
}

void GrowthPlot::dress() {
    const auto& palette = theme().palette();
    m_fitted.dress(palette.forecastWindow, QPen(palette.forecast, 2));
    for (auto* edge : {m_least, m_most})
        edge->setPen(QPen(palette.plan, 1.2, Qt::DashLine));
}

void GrowthPlot::show(const GlazeGrowth& growth) {
    m_growth = growth;
    draw();
}

void GrowthPlot::draw() {
    const GrowthRate published = publishedGrowthRate();
    QVector<double> places, low, likely, high, least, most;
    for (double at_C = coldest_C; at_C <= hottest_C; at_C += step_C) {
        const auto at = Temperature::fromCelsius(at_C);
        const double share = published.at_um_per_min(at) / published.best_um_per_min;
        places << preferences().shown(at);
        least << share * published.low_um_per_min;
        most << share * published.high_um_per_min;
        if (!m_growth.fit)
            continue;
        const Bounds bounds = m_growth.fit->rate90_um_per_min(at);
        low << bounds.low;
        likely << m_growth.fit->likely_um_per_min(at);
        high << bounds.high;
    }
    const QVector<double> fitted = m_growth.fit ? places : QVector<double>();
    m_fitted.setBand(fitted, low, high);
    m_fitted.setLine(fitted, likely);
    m_least->setData(places, least, true);
    m_most->setData(places, most, true);
    plot().xAxis->setLabel(tr("temperature of the glaze, %1").arg(preferences().unitName()));
    plot().yAxis->setLabel(tr("growth of the radius, µm/min"));
    plot().xAxis->setRange(places.front(), places.back());
    const double top = std::max(std::ranges::max(most), high.isEmpty() ? 0 : std::ranges::max(high));
    plot().yAxis->setRange(0, top * 1.05);
    plot().replot(QCustomPlot::rpQueuedReplot);
}

} // namespace ringhold
