// One offset series as a picture.
#pragma once

#include <QWidget>

#include <memory>

class QCPErrorBars;
class QCPGraph;
class QCPItemRect;
class QCPItemText;
class QCustomPlot;

namespace ringhold {

struct OffsetSeries;
class Preferences;
class Theme;

/// What each firing told, with its 90 % interval, over the band that it began with; last the band of the
/// next. Preferences and theme outlive it.
class OffsetPlot : public QWidget {
    Q_OBJECT

  public:
    OffsetPlot(const Preferences& preferences, const Theme& theme, QWidget* parent = nullptr);
    ~OffsetPlot() override;

    /// Nothing is shown for null.
    void show(const OffsetSeries* series);
    QSize minimumSizeHint() const override { return {180, 110}; }

  private:
    void dress();
    void draw();
    /// Gives how far from 0 it reaches, as shown.
    double drawBand();

    const Preferences& m_preferences;
    const Theme& m_theme;
    QCustomPlot* m_plot;
    QCPGraph* m_told;
    QCPErrorBars* m_intervals;
    QCPGraph* m_right;
    QCPGraph* m_low;
    QCPGraph* m_high;
    std::unique_ptr<OffsetSeries> m_series;
};

} // namespace ringhold
