// A setting of damper, gas or switches, as a mark in a plot.
#pragma once

#include "ui/plot/custom_plot.h"

namespace ringhold {

class Theme;

/// A bar across the curve where something was set, as in the margin of the log, with its words beside it if
/// there are any. Belongs to the plot; the theme outlives it.
class SettingMark : public QCPAbstractItem {
  public:
    SettingMark(QCustomPlot* plot, QPointF place, const QString& words, const Theme& theme);
    double selectTest(const QPointF&, bool, QVariant*) const override { return -1; }
    const QString& words() const { return m_words; }

  protected:
    void draw(QCPPainter* painter) override;

  private:
    QString m_words;
    const Theme& m_theme;
    QCPItemPosition* m_place;
};

} // namespace ringhold
