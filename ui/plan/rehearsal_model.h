// When each step of a rehearsed plan will end, and what it takes.
#pragma once

#include "core/base/result.h" // first: moc stumbles when <compare> comes before all else
#include "core/learn/rehearsal.h"
#include "core/plan/plan.h"

#include <QAbstractTableModel>

namespace ringhold {

class Preferences;

enum class RehearsalColumn { step, ends, behind, energy };

class RehearsalModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    /// The preferences outlive it.
    explicit RehearsalModel(const Preferences& preferences, QObject* parent = nullptr);

    void show(const Plan& plan, std::vector<RehearsedStep> steps);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role = Qt::DisplayRole) const override;

  private:
    QString text(const RehearsedStep& step, RehearsalColumn column) const;

    const Preferences& m_preferences;
    Plan m_plan;
    std::vector<RehearsedStep> m_steps;
};

} // namespace ringhold
