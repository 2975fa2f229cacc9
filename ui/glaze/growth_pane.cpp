#include "ui/glaze/growth_pane.h"

#include "ui/common/words_on_page.h"
#include "ui/glaze/growth_plot.h"
#include "ui/glaze/growth_words.h"

#include <QVBoxLayout>

namespace ringhold {

GrowthPane::GrowthPane(const Preferences& preferences, const Theme& theme, QWidget* parent)
    : QWidget(parent), m_preferences(preferences), m_plot(new GrowthPlot(preferences, theme)),
      m_growth(new QLabel), m_visible(new QLabel) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 6, 0, 0);
    column->addWidget(m_plot, 1);
    for (auto* label : {m_growth, m_visible}) {
        label->setWordWrap(true);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        column->addWidget(label);
    }
}

void GrowthPane::show(const GlazeKnowledge& known) {
    m_plot->show(known.growth);
    m_growth->setText(growthWords(known.growth, m_preferences));
    m_visible->setText(visibleWords(known.visible, m_preferences));
    m_plot->setAccessibleDescription(m_growth->text());
}

} // namespace ringhold
