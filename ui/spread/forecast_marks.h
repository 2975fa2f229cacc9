// What the forecast says, drawn into the curve: when the firing cone will be down, and where the kiln levels
// off.
#pragma once

class QCPItemLine;
class QCPItemRect;
class QCPItemText;
class QCustomPlot;

namespace ringhold {

class FiringSession;
class Preferences;
class Theme;

/// Items of a plot, which owns them; behind all graphs that are added after it.
class ForecastMarks {
  public:
    explicit ForecastMarks(QCustomPlot& plot);

    void dress(const Theme& theme);
    /// Within the plot's present ranges.
    void show(const FiringSession& session, const Preferences& preferences);

  private:
    void showConeDown(const FiringSession& session);
    void showCeiling(const FiringSession& session, const Preferences& preferences);

    QCustomPlot& m_plot;
    QCPItemRect* m_window;
    QCPItemLine* m_median;
    QCPItemText* m_windowWords;
    QCPItemRect* m_ceilingBand; ///< where a kiln without power enough levels off
    QCPItemLine* m_ceiling;
    QCPItemText* m_ceilingWords;
};

} // namespace ringhold
