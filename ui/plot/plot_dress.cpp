#include "ui/plot/plot_dress.h"

#include "ui/plot/custom_plot.h"
#include "ui/theme/theme.h"

namespace ringhold {

void dressPlot(QCustomPlot& plot, const Theme& theme) {
    const auto& palette = theme.palette();
    plot.setBackground(palette.page);
    plot.setPlottingHints(QCP::phFastPolylines | QCP::phCacheLabels);
    for (auto* axis : {plot.xAxis, plot.yAxis}) {
        axis->setBasePen(QPen(palette.faint, 1));
        axis->setTickPen(QPen(palette.faint, 1));
        axis->setSubTicks(false);
        axis->setTickLabelColor(palette.soft);
        axis->setLabelColor(palette.soft);
        axis->setTickLabelFont(theme.text(TextSize::small));
        axis->setLabelFont(theme.text(TextSize::small));
        axis->grid()->setPen(QPen(palette.grid, 1));
        axis->grid()->setZeroLinePen(Qt::NoPen);
        axis->setNumberFormat(QStringLiteral("f"));
        axis->setNumberPrecision(0);
    }
    plot.xAxis->setTickLabelPadding(9); // clear of the lowest temperature's label
    plot.xAxis->grid()->setVisible(false);
    plot.yAxis->setBasePen(Qt::NoPen);
    plot.yAxis->setTickPen(Qt::NoPen);
}

} // namespace ringhold
