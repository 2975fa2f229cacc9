#include "ui/plot/band_graph.h"

#include "ui/plot/custom_plot.h"

namespace ringhold {

BandGraph::BandGraph(QCustomPlot& plot)
    : m_low(plot.addGraph()), m_high(plot.addGraph()), m_line(plot.addGraph()) {
    m_high->setChannelFillGraph(m_low);
}

void BandGraph::dress(const QColor& band, const QPen& line) {
    m_low->setPen(Qt::NoPen);
    m_high->setPen(Qt::NoPen);
    m_high->setBrush(band);
    m_line->setPen(line);
}

void BandGraph::setBand(const QVector<double>& places, const QVector<double>& low,
                        const QVector<double>& high) {
    m_low->setData(places, low, true);
    m_high->setData(places, high, true);
}

void BandGraph::setLine(const QVector<double>& places, const QVector<double>& values) {
    m_line->setData(places, values, true);
}

} // namespace ringhold
