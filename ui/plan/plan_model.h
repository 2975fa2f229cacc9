// A plan as a table to edit, with undo: a row for each step, a column for each kind of value.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "core/plan/plan.h"
#include "ui/plan/plan_faults.h"
#include "ui/plan/step_cells.h"

#include <QAbstractTableModel>
#include <QUndoStack>

#include <functional>
#include <vector>

namespace ringhold {

class Preferences;

/// Every change goes through the undo stack; one that changes nothing leaves no trace there. Values keep what
/// was stored to the last bit until they are typed anew, whatever unit they are shown in.
class PlanModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum Role {
        FaultRole = Qt::UserRole, ///< QString: what is wrong with the cell; empty when it is right
        ReckonedRole              ///< bool: the cell is not part of the plan
    };

    explicit PlanModel(const Preferences& preferences, QObject* parent = nullptr);

    const Plan& plan() const { return m_plan; }
    /// Another plan; what was done to the one before cannot be undone any more.
    void setPlan(const Plan& plan);
    /// The series that the cones are of.
    void setConeType(ConeType type);
    /// How long each step takes; forgotten when the plan changes.
    void setDurations(std::vector<Duration> durations);

    const std::vector<ToldFault>& faults() const { return m_faults; }
    /// Whether a curve can be reckoned.
    bool isSound() const;

    QUndoStack& undoStack() { return m_undo; }
    /// A usual step of that kind before the given row (the number of rows: at the end).
    void addStep(StepKind kind, int row);
    void removeStep(int row);
    /// The step at `from` is at `to` afterwards.
    void moveStep(int from, int to);
    void setKind(int row, StepKind kind);
    void rename(const QString& name);
    /// The half width of the growth hold's band; nothing happens in a plan without such a hold.
    void holdGrowthWithin(TemperatureDifference halfWidth);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role = Qt::DisplayRole) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    /// The kind of a step as the number of its StepKind, all else as typed.
    bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

  Q_SIGNALS:
    void planChanged();
    /// What was typed is not understood; the cell stays as it was.
    void refused(const QString& why);

  private:
    void doThis(const QString& what, std::function<void()> redo, std::function<void()> undo);
    void putStep(int row, const Step& step);
    void insertStep(int row, const Step& step);
    void eraseStep(int row);
    void shiftStep(int from, int to);
    void changed();
    void showAnew();
    bool isRow(int row) const { return row >= 0 && row < rowCount(); }
    Step& stepAt(int row) { return m_plan.steps[static_cast<std::size_t>(row)]; }
    const Step& stepAt(int row) const { return m_plan.steps[static_cast<std::size_t>(row)]; }
    QString cellText(const QModelIndex& index, int role) const;
    QString faultAt(const QModelIndex& index) const;
    QString modelFitAt(const QModelIndex& index) const;
    QString told(const QModelIndex& index) const;

    const Preferences& m_preferences;
    Plan m_plan;
    ConeType m_cones = ConeType::selfSupporting;
    std::vector<ToldFault> m_faults;
    std::vector<Duration> m_durations;
    QUndoStack m_undo;
};

} // namespace ringhold
