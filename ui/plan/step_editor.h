// The table in which a plan is edited, with its buttons and what is wrong below it.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "ui/plan/step_cells.h"

#include <QWidget>

class QAction;
class QLabel;
class QTableView;

namespace ringhold {

class PlanModel;
class Theme;

/// Insert adds a step, Delete removes one, Alt with an arrow moves it; a cell is typed into at once.
class StepEditor : public QWidget {
    Q_OBJECT

  public:
    /// Both outlive it.
    StepEditor(PlanModel& model, const Theme& theme, QWidget* parent = nullptr);

    /// -1 without one.
    int currentStep() const;
    void selectStep(int row);

  Q_SIGNALS:
    void currentStepChanged(int row);

  private:
    QWidget* makeButtons();
    QAction* addAction(const QString& text, const QKeySequence& keys, void (StepEditor::*what)());
    void makeTable();
    void addStep(StepKind kind);
    void removeStep();
    void moveUp();
    void moveDown();
    void showFaults();
    void showState();

    PlanModel& m_model;
    const Theme& m_theme;
    QTableView* m_table;
    QLabel* m_faults;
    QAction* m_remove = nullptr;
    QAction* m_up = nullptr;
    QAction* m_down = nullptr;
};

} // namespace ringhold
