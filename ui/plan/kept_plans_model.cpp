#include "ui/plan/kept_plans_model.h"

#include "core/book/kept_plans.h"
#include "ui/session/notebook.h"

#include <algorithm>

namespace ringhold {

KeptPlansModel::KeptPlansModel(Notebook& notebook, QObject* parent)
    : QAbstractListModel(parent), m_notebook(notebook) {}

Status KeptPlansModel::load() {
    auto plans = keptPlans(m_notebook.reader());
    beginResetModel();
    m_loaded = plans ? Status() : Status(plans.error());
    m_plans = plans ? std::move(*plans) : std::vector<Plan>();
    endResetModel();
    return m_loaded;
}

Status KeptPlansModel::keep(const std::vector<Plan>& plans) {
    if (!m_loaded)
        return m_loaded;
    auto writer = m_notebook.writer();
    return keepPlans(writer, plans);
}

std::string KeptPlansModel::freeName(const std::string& wanted) const {
    const auto taken = [this](const std::string& name) {
        return std::ranges::any_of(m_plans, [&](const Plan& plan) { return plan.name == name; });
    };
    const std::string base = wanted.empty() ? "Plan" : wanted;
    std::string name = base;
    for (int number = 2; taken(name); ++number)
        name = base + " (" + std::to_string(number) + ")";
    return name;
}

Result<int> KeptPlansModel::insert(int row, Plan plan) {
    row = std::clamp(row, 0, rowCount());
    plan.name = freeName(plan.name);
    auto plans = m_plans;
    plans.insert(plans.begin() + row, std::move(plan));
    if (const auto kept = keep(plans); !kept)
        return kept.error();
    beginInsertRows({}, row, row);
    m_plans = std::move(plans);
    endInsertRows();
    return row;
}

Status KeptPlansModel::replace(int row, const Plan& plan) {
    auto plans = m_plans;
    plans[static_cast<std::size_t>(row)] = plan;
    if (const auto kept = keep(plans); !kept)
        return kept;
    m_plans = std::move(plans);
    Q_EMIT dataChanged(index(row), index(row));
    return {};
}

Status KeptPlansModel::remove(int row) {
    auto plans = m_plans;
    plans.erase(plans.begin() + row);
    if (const auto kept = keep(plans); !kept)
        return kept;
    beginRemoveRows({}, row, row);
    m_plans = std::move(plans);
    endRemoveRows();
    return {};
}

int KeptPlansModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_plans.size());
}

QVariant KeptPlansModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || (role != Qt::DisplayRole && role != Qt::EditRole))
        return {};
    return QString::fromStdString(plan(index.row()).name);
}

Qt::ItemFlags KeptPlansModel::flags(const QModelIndex& index) const {
    const auto flags = QAbstractListModel::flags(index);
    return index.isValid() ? flags | Qt::ItemIsEditable : flags;
}

bool KeptPlansModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    const QString name = value.toString().trimmed();
    if (!index.isValid() || role != Qt::EditRole || name.isEmpty())
        return false;
    Q_EMIT renameWanted(index.row(), name);
    return true;
}

} // namespace ringhold
