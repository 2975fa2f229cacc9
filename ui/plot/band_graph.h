// A line with a band about it: a fitted curve and what may be true.
#pragma once

#include <QPen>
#include <QVector>

class QCPGraph;
class QCustomPlot;

namespace ringhold {

/// Its graphs belong to the plot, which outlives it. Figures as shown on the axes, places rising.
class BandGraph {
  public:
    explicit BandGraph(QCustomPlot& plot);

    /// To be called again when the theme changed.
    void dress(const QColor& band, const QPen& line);
    void setBand(const QVector<double>& places, const QVector<double>& low, const QVector<double>& high);
    void setLine(const QVector<double>& places, const QVector<double>& values);

  private:
    QCPGraph* m_low;
    QCPGraph* m_high;
    QCPGraph* m_line;
};

} // namespace ringhold
