// Shows what is reckoned from a plan.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "ui/plan/plan_figures.h"

#include <QFrame>

class QGridLayout;
class QLabel;

namespace ringhold {

/// A figure with where it comes from beside it; warnings below.
class FiguresView : public QFrame {
    Q_OBJECT

  public:
    explicit FiguresView(QWidget* parent = nullptr);

    void show(const std::vector<PlanFigure>& figures, const QStringList& warnings);

  private:
    QLabel* addLabel(int row, int column);

    QGridLayout* m_grid;
    QLabel* m_warnings;
    std::vector<std::array<QLabel*, 2>> m_rows; ///< label; figure with its source
};

} // namespace ringhold
