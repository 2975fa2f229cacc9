// How fast a glaze's crystals grow at which temperature, as a picture.
#pragma once

#include "core/base/result.h" // first: see DEVELOPERS.md on moc and <compare>
#include "core/learn/glaze_growth.h"
#include "ui/plot/band_graph.h"
#include "ui/plot/themed_plot.h"

#include <optional>

namespace ringhold {

/// The fitted rate with its 90 % band, over the published range, which is dashed. Preferences and theme
/// outlive it.
class GrowthPlot : public ThemedPlot {
    Q_OBJECT

  public:
    GrowthPlot(const Preferences& preferences, const Theme& theme, QWidget* parent = nullptr);

    void show(const GlazeGrowth& growth);
    QSize minimumSizeHint() const override { return {260, 150}; }

  protected:
    void dress() override;

  private:
    void draw();

    BandGraph m_fitted;
    QCPGraph* m_least;
    QCPGraph* m_most;
    GlazeGrowth m_growth;
};

} // namespace ringhold
