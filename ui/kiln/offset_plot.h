// One offset series as a picture.
#pragma once

#include "ui/plot/band_graph.h"
#include "ui/plot/themed_plot.h"

#include <memory>

class QCPErrorBars;

namespace ringhold {

struct OffsetSeries;

/// What each firing told, with its 90 % interval, over the band that it began with; last the band of the
/// next. Preferences and theme outlive it.
class OffsetPlot : public ThemedPlot {
    Q_OBJECT

  public:
    OffsetPlot(const Preferences& preferences, const Theme& theme, QWidget* parent = nullptr);
    ~OffsetPlot() override;

    /// Nothing is shown for null.
    void show(const OffsetSeries* series);
    QSize minimumSizeHint() const override { return {180, 110}; }

  protected:
    void dress() override;

  private:
    void draw();
    /// Gives how far from 0 it reaches, as shown.
    double drawBand();

    BandGraph m_band; ///< the line is that of a probe that reads right
    QCPGraph* m_told;
    QCPErrorBars* m_intervals;
    std::unique_ptr<OffsetSeries> m_series;
};

} // namespace ringhold
