#include "ui/ware/ware_table.h"

#include "ui/ware/ware_delegate.h"
#include "ui/ware/ware_model.h"

namespace ringhold {

namespace {

constexpr int outcomeStart = static_cast<int>(firstOutcomeColumn);

/// Together no more than the smallest window has.
std::vector<FittedTable::Column> columnsFor(const WareModel* ware) {
    const double sagger = ware && ware->openToFlame() > 0 ? 11.4 : 8.2;
    return {{12, 2}, {9.5, 1}, {6.2, 0}, {8.2, 0}, {sagger, 0}, {9, 0},
            {9, 0},  {6.4, 0}, {9.8, 2}, {7, 0},   {7, 2}};
}

} // namespace

WareTable::WareTable(QWidget* parent) : EntryTable(parent) {
    setItemDelegate(new WareDelegate(this));
}

void WareTable::reset() {
    EntryTable::reset();
    setColumns(columnsFor(qobject_cast<const WareModel*>(model())));
}

EntryTable::Group WareTable::groupOf(int column) const {
    return column < outcomeStart ? Group{0, outcomeStart - 1} : Group{outcomeStart, wareColumns - 1};
}

bool WareTable::takeKey(const QString& text) {
    const QModelIndex at = currentIndex();
    if (at.column() != outcomeStart || !(at.flags() & Qt::ItemIsEditable))
        return EntryTable::takeKey(text);
    return text.size() == 1 && text >= QStringLiteral("0") && text <= QStringLiteral("3") &&
           model()->setData(at, text);
}

} // namespace ringhold
