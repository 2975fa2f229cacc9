// Shows what is reckoned from a plan.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "ui/plan/plan_figures.h"

#include <QFrame>

class QGridLayout;
class QLabel;

namespace ringhold {

class Theme;

/// A figure, large, with where it comes from beside it; warnings below.
class FiguresView : public QFrame {
    Q_OBJECT

  public:
    /// The theme outlives it.
    explicit FiguresView(const Theme& theme, QWidget* parent = nullptr);

    void show(const std::vector<PlanFigure>& figures, const QStringList& warnings);

  private:
    void dress();
    QLabel* addLabel(int row, int column, const char* tone);

    const Theme& m_theme;
    QGridLayout* m_grid;
    QLabel* m_warnings;
    std::vector<std::array<QLabel*, 3>> m_rows; ///< label, value, source
};

} // namespace ringhold
