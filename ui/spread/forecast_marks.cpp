#include "ui/spread/forecast_marks.h"

#include "ui/plot/custom_plot.h"
#include "ui/plot/time_axis.h"
#include "ui/session/firing_cone.h"
#include "ui/session/firing_session.h"
#include "ui/session/preferences.h"
#include "ui/theme/theme.h"

#include <QCoreApplication>

namespace ringhold {

namespace {

constexpr double openEnd_s = 24 * 3600.0; ///< of a window whose late end is not known

struct CurveTalk {
    Q_DECLARE_TR_FUNCTIONS(CurveView)
};

} // namespace

ForecastMarks::ForecastMarks(QCustomPlot& plot)
    : m_plot(plot), m_window(new QCPItemRect(&plot)), m_median(new QCPItemLine(&plot)),
      m_windowWords(new QCPItemText(&plot)), m_ceilingBand(new QCPItemRect(&plot)),
      m_ceiling(new QCPItemLine(&plot)), m_ceilingWords(new QCPItemText(&plot)) {
    m_windowWords->setPositionAlignment(Qt::AlignLeft | Qt::AlignTop);
    m_windowWords->setPadding(QMargins(5, 2, 0, 0));
    m_ceilingWords->setPositionAlignment(Qt::AlignRight | Qt::AlignBottom);
    m_ceilingWords->setPadding(QMargins(0, 0, 5, 2));
}

void ForecastMarks::dress(const Theme& theme) {
    const auto& palette = theme.palette();
    for (auto* ground : {m_window, m_ceilingBand}) {
        ground->setPen(Qt::NoPen);
        ground->setBrush(palette.forecastWindow);
    }
    m_median->setPen(QPen(palette.forecast, 2));
    m_ceiling->setPen(QPen(palette.forecast, 2, Qt::DotLine));
    for (auto* words : {m_windowWords, m_ceilingWords}) {
        words->setColor(palette.forecastText);
        words->setFont(theme.text(TextSize::small));
    }
}

void ForecastMarks::show(const FiringSession& session, const Preferences& preferences) {
    showConeDown(session);
    showCeiling(session, preferences);
}

void ForecastMarks::showConeDown(const FiringSession& session) {
    const ConeForecast* shown = firingConeForecast(session);
    if (shown && (shown->isDown || !shown->down.p05 || !shown->down.median))
        shown = nullptr;
    m_window->setVisible(shown);
    m_median->setVisible(shown);
    m_windowWords->setVisible(shown);
    if (!shown)
        return;
    const double early = onAxis(*shown->down.p05);
    const double late = shown->down.p95 ? onAxis(*shown->down.p95) : early + openEnd_s;
    const double median = onAxis(*shown->down.median);
    const auto range = m_plot.yAxis->range();
    m_window->topLeft->setCoords(early, range.upper);
    m_window->bottomRight->setCoords(late, range.lower);
    m_median->start->setCoords(median, range.lower);
    m_median->end->setCoords(median, range.upper);
    m_windowWords->position->setCoords(late, range.upper);
    m_windowWords->setText(CurveTalk::tr("cone %1 down").arg(QString::fromStdString(shown->cone)));
}

void ForecastMarks::showCeiling(const FiringSession& session, const Preferences& preferences) {
    const auto levelsOff = session.forecast() ? session.forecast()->levelsOff : std::nullopt;
    const auto last = session.firing().lastReading();
    const bool shown = levelsOff && last;
    m_ceiling->setVisible(shown);
    m_ceilingBand->setVisible(shown);
    m_ceilingWords->setVisible(shown);
    if (!shown)
        return;
    const double from = onAxis(last->at);
    const double to = m_plot.xAxis->range().upper;
    m_ceiling->start->setCoords(from, preferences.shown(levelsOff->median));
    m_ceiling->end->setCoords(to, preferences.shown(levelsOff->median));
    m_ceilingBand->topLeft->setCoords(from, preferences.shown(levelsOff->p95));
    m_ceilingBand->bottomRight->setCoords(to, preferences.shown(levelsOff->p05));
    m_ceilingWords->position->setCoords(to, preferences.shown(levelsOff->p95));
    m_ceilingWords->setText(
        CurveTalk::tr("levels off near %1").arg(preferences.temperature(levelsOff->median)));
}

} // namespace ringhold
