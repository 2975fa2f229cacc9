// A look at a cone, as a mark in a plot.
#pragma once

#include "ui/plot/custom_plot.h"

namespace ringhold {

class Theme;

/// A small cone above the curve where a look was made, bent as it was seen. Belongs to the plot; the theme
/// outlives it.
class LookMark : public QCPAbstractItem {
  public:
    LookMark(QCustomPlot* plot, double key, double value, double hour, const Theme& theme);
    double selectTest(const QPointF&, bool, QVariant*) const override { return -1; }

  protected:
    void draw(QCPPainter* painter) override;

  private:
    double m_hour;
    const Theme& m_theme;
    QCPItemPosition* m_place;
};

} // namespace ringhold
