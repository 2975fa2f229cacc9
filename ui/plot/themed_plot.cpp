#include "ui/plot/themed_plot.h"

#include "ui/plot/custom_plot.h"
#include "ui/plot/plot_dress.h"
#include "ui/theme/theme.h"

#include <QVBoxLayout>

namespace ringhold {

ThemedPlot::ThemedPlot(const Preferences& preferences, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_preferences(preferences), m_theme(theme), m_plot(new QCustomPlot) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_plot);
    m_plot->setFocusPolicy(Qt::NoFocus);
    connect(&theme, &Theme::changed, this, &ThemedPlot::redress);
}

void ThemedPlot::redress() {
    dressPlot(*m_plot, m_theme);
    dress();
    m_plot->replot(QCustomPlot::rpQueuedReplot);
}

} // namespace ringhold
