// The plans in the book, as a list to choose from.
#pragma once

#include "core/base/result.h"
#include "core/plan/plan.h"

#include <QAbstractListModel>

#include <vector>

namespace ringhold {

class Notebook;

/// Every change is written to the book at once; when that fails the list stays as the book has it.
class KeptPlansModel : public QAbstractListModel {
    Q_OBJECT

  public:
    explicit KeptPlansModel(Notebook& notebook, QObject* parent = nullptr);

    /// From the book. After an error the list is empty and takes nothing, so that nothing is written over.
    Status load();

    const Plan& plan(int row) const { return m_plans[static_cast<std::size_t>(row)]; }
    /// Puts a plan there, its name made one that no other has; gives its row.
    Result<int> insert(int row, Plan plan);
    Status replace(int row, const Plan& plan);
    Status remove(int row);

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    /// Only asks for the new name: the plan's own model renames, so that it can be undone.
    bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

  Q_SIGNALS:
    void renameWanted(int row, const QString& name);

  private:
    Status keep(const std::vector<Plan>& plans);
    std::string freeName(const std::string& wanted) const;

    Notebook& m_notebook;
    std::vector<Plan> m_plans;
    Status m_loaded;
};

} // namespace ringhold
