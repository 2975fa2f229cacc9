#include "ui/kiln/kiln_list_model.h"

#include <algorithm>

namespace ringhold {

QString fuelWords(Fuel fuel) {
    switch (fuel) {
    case Fuel::electric:
        return KilnListModel::tr("electric");
    case Fuel::gas:
        return KilnListModel::tr("gas");
    case Fuel::wood:
        return KilnListModel::tr("wood");
    }
    return {};
}

void KilnListModel::show(std::vector<Kiln> kilns) {
    beginResetModel();
    m_kilns = std::move(kilns);
    endResetModel();
}

int KilnListModel::rowOf(KilnId kiln) const {
    const auto found = std::ranges::find(m_kilns, kiln, &Kiln::id);
    return found == m_kilns.end() ? -1 : static_cast<int>(found - m_kilns.begin());
}

int KilnListModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_kilns.size());
}

QVariant KilnListModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid) || role != Qt::DisplayRole)
        return {};
    const Kiln& shown = kiln(index.row());
    return QString::fromStdString(shown.name) + QStringLiteral(" · ") + fuelWords(shown.fuel);
}

} // namespace ringhold
