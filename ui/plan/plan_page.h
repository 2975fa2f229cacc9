// The plan page: the potter's plans, one of them in a table to edit, what it will draw.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "ui/plan/kept_plans_model.h"
#include "ui/plan/plan_model.h"

#include <QWidget>

namespace ringhold {

class Heading;
class Notebook;
class PlanCardWindow;
class PlanFiles;
class PlanListView;
class PlanMessage;
class PlanOutlook;
class StepEditor;
class Theme;

/// Every change is in the book at once. Nothing here opens a box that must be answered first.
class PlanPage : public QWidget {
    Q_OBJECT

  public:
    /// Both outlive it.
    PlanPage(Notebook& notebook, const Theme& theme, QWidget* parent = nullptr);
    ~PlanPage() override;

    /// The plan shown; nothing when there is none.
    std::optional<Plan> plan() const;
    /// Opens a plan file as a new plan; says on the page when it cannot.
    void bringIn(const QString& file);
    void writeOut(const QString& file);
    /// Shows the card of the plan, if the plan is sound.
    PlanCardWindow* showCard();
    /// Reckons the energy now instead of when typing pauses.
    void reckonEnergy();

  private:
    QWidget* makeLeft();
    void connectParts();
    void addKeys();

    void choose(int row);
    void keep();
    void addPlan(const Plan& plan);
    void removePlan();
    void renamePlan(int row, const QString& name);
    void askWhereToWrite();

    void reckon();
    void showTitle();
    void warn(const QString& why);
    bool complain(const Status& status, const QString& what);

    Notebook& m_notebook;
    const Theme& m_theme;
    KeptPlansModel m_kept;
    PlanModel m_model;
    PlanFiles* m_files;
    int m_row = -1; ///< of the plan shown

    PlanListView* m_list = nullptr;
    PlanMessage* m_message = nullptr;
    Heading* m_title = nullptr;
    StepEditor* m_steps = nullptr;
    PlanOutlook* m_outlook = nullptr;
};

} // namespace ringhold
