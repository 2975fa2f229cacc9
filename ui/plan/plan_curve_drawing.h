// Draws a planned curve into a plot.
#pragma once

#include "core/learn/rehearsal.h"
#include "core/plan/plan_energy.h"

#include <optional>

class QCustomPlot;
class QPen;

namespace ringhold {

class Preferences;
class Theme;

struct DrawnPlan {
    Plan plan;
    std::optional<PlannedCurve> planned;
    std::optional<PlanEnergy> energy;   ///< where the model kiln is off the curve
    std::optional<Rehearsal> rehearsal; ///< drawn as a band
    std::optional<std::size_t> step;    ///< the one that is drawn thicker
    std::optional<double> mark_h;       ///< hours after the start
};

/// Curve, bands, the temperatures at which crystals grow, the cones' ends; hours across, the chosen unit
/// upwards. Whatever the plot had before is gone.
class PlanCurveDrawing {
  public:
    PlanCurveDrawing(QCustomPlot& plot, const Theme& theme, const Preferences& preferences);
    void draw(const DrawnPlan& drawn);

  private:
    void dressAxes();
    void drawGrowthWindow();
    void drawBands();
    void drawPlan();
    void drawRehearsal();
    void drawKiln();
    void drawConeDowns();
    void drawSelection();
    void drawMark();
    void addCurve(const Curve& curve, const QPen& pen);
    double hoursOf(Instant at) const;
    double shown(Temperature t) const;

    QCustomPlot& m_plot;
    const Theme& m_theme;
    const Preferences& m_preferences;
    const DrawnPlan* m_drawn = nullptr;
};

} // namespace ringhold
