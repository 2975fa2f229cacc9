// The plan run on the kiln as its past firings showed it, before it is lit.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "ui/common/latest_work.h"
#include "ui/plan/plan_basis.h"
#include "ui/plan/plan_rehearsal.h"

#include <QTimer>
#include <QWidget>

class QDoubleSpinBox;
class QLabel;

namespace ringhold {

class FittedTable;
class Notebook;
class RehearsalModel;

/// Today's load and volts, when each step will end, where the kiln falls behind or stalls, energy and cost.
/// Reckons beside the window's work.
class RehearsalView : public QWidget {
    Q_OBJECT

  public:
    /// The notebook outlives it.
    explicit RehearsalView(Notebook& notebook, QWidget* parent = nullptr);

    /// Rehearses that plan when typing pauses; nothing, and no plan, clears it.
    void show(const std::optional<Plan>& plan, const PlanBasis& basis);
    bool busy() const { return m_soon.isActive() || m_work.busy(); }

  Q_SIGNALS:
    /// The newest rehearsal; nothing when there is none.
    void rehearsed(const std::optional<ringhold::Rehearsal>& rehearsal);

  private:
    QDoubleSpinBox* addField(const QString& words, const QString& name, const QString& unit);
    void takeKiln();
    void rehearseNow();
    void tell(const Plan& plan, const Result<RehearsalTold>& told);
    void sayOnly(const QString& words);

    Notebook& m_notebook;
    std::optional<Plan> m_plan;
    PlanBasis m_basis;
    std::shared_ptr<const KilnFit> m_fit; ///< of the basis' kiln
    QWidget* m_fields;
    QDoubleSpinBox* m_load;
    QDoubleSpinBox* m_line;
    QLabel* m_words;
    QLabel* m_warnings;
    RehearsalModel* m_steps;
    FittedTable* m_table;
    QTimer m_soon;
    LatestWork m_work;
};

} // namespace ringhold
