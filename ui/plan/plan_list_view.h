// The list of the potter's plans, and what can be done with a whole plan.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "core/plan/plan.h"

#include <QWidget>

class QAction;
class QListView;
class QMenu;

namespace ringhold {

class KeptPlansModel;

/// Only asks; the page does it. F2 renames in the list.
class PlanListView : public QWidget {
    Q_OBJECT

  public:
    /// The model outlives it.
    explicit PlanListView(KeptPlansModel& plans, QWidget* parent = nullptr);

    int current() const; ///< -1 without one
    void select(int row);
    void renameCurrent();

  Q_SIGNALS:
    void chosen(int row);
    void planWanted(const Plan& plan);
    void copyWanted();
    void bringInWanted();
    void writeOutWanted();
    void removeWanted();

  private:
    QMenu* makeNewMenu(QWidget* parent);
    QMenu* makeMoreMenu(QWidget* parent);
    void showState();

    KeptPlansModel& m_plans;
    QListView* m_list;
    QList<QAction*> m_onAPlan; ///< that need a plan to work on
};

} // namespace ringhold
