// What a glaze's own crystals tell: how fast they grow, and which sags show in them.
#pragma once

#include "core/base/result.h" // first: see DEVELOPERS.md on moc and <compare>
#include "core/book/glaze_evidence.h"

#include <QWidget>

class QLabel;

namespace ringhold {

class GrowthPlot;
class Preferences;
class Theme;

/// Preferences and theme outlive it.
class GrowthPane : public QWidget {
    Q_OBJECT

  public:
    GrowthPane(const Preferences& preferences, const Theme& theme, QWidget* parent = nullptr);

    void show(const GlazeKnowledge& known);

  private:
    const Preferences& m_preferences;
    GrowthPlot* m_plot;
    QLabel* m_growth;
    QLabel* m_visible;
};

} // namespace ringhold
