#include "ui/ware/ware_table.h"

#include "ui/ware/ware_delegate.h"
#include "ui/ware/ware_model.h"

#include <QKeyEvent>

#include <algorithm>

namespace ringhold {

namespace {

constexpr int outcomeStart = static_cast<int>(firstOutcomeColumn);
constexpr int outcomeEnd = static_cast<int>(lastTypedColumn);

/// What each needs: the columns of a sheet together no more than the smallest window has.
FittedTable::Column widthOf(WareColumn column, bool words) {
    switch (column) {
    case WareColumn::piece:
        return {10, 2};
    case WareColumn::glaze:
        return {10.5, 1.5};
    case WareColumn::form:
    case WareColumn::clay:
        return {9, 1};
    case WareColumn::application:
        return {8, 0};
    case WareColumn::shelf:
        return {8, 0.5};
    case WareColumn::catcher:
        return {9, 0};
    case WareColumn::sagger:
        return {words ? 11.4 : 8.2, 0};
    case WareColumn::crystals:
        return {8.6, 0};
    case WareColumn::largest:
    case WareColumn::typical:
        return {8.4, 0};
    case WareColumn::rings:
    case WareColumn::grade:
        return {7, 0};
    case WareColumn::crystalColour:
        return {9, 1};
    case WareColumn::groundColour:
        return {9, 1};
    case WareColumn::runOff:
        return {8, 1};
    case WareColumn::catcherClean:
        return {8.6, 0};
    case WareColumn::faults:
        return {8.5, 2};
    case WareColumn::note:
        return {6, 2};
    case WareColumn::photos:
        return {7.4, 0};
    }
    return {};
}

bool isColour(int column) {
    return column == int(WareColumn::crystalColour) || column == int(WareColumn::groundColour);
}

} // namespace

WareTable::WareTable(WareSheet sheet, QWidget* parent) : EntryTable(parent), m_sheet(sheet) {
    setItemDelegate(new WareDelegate(this));
}

void WareTable::setModel(QAbstractItemModel* model) {
    EntryTable::setModel(model);
    arrange();
}

void WareTable::reset() {
    EntryTable::reset();
    arrange();
}

void WareTable::showSheet(WareSheet sheet) {
    m_sheet = sheet;
    const QModelIndex at = currentIndex();
    arrange();
    if (at.isValid() && isColumnHidden(at.column()))
        setCurrentIndex(at.siblingAtColumn(sheet == WareSheet::outcome ? outcomeStart : 0));
}

void WareTable::arrange() {
    const auto* ware = qobject_cast<const WareModel*>(model());
    if (!ware)
        return;
    const auto& shown = columnsOf(m_sheet);
    std::vector<Column> columns;
    for (int i = 0; i < wareColumns; ++i) {
        const auto column = static_cast<WareColumn>(i);
        const bool there = std::ranges::find(shown, column) != shown.end();
        columns.push_back(there ? widthOf(column, ware->openToFlame() > 0) : Column{0, 0});
        setColumnHidden(i, !there);
    }
    setColumns(std::move(columns));
}

EntryTable::Group WareTable::groupOf(int column) const {
    return column < outcomeStart && m_sheet == WareSheet::load ? Group{0, outcomeStart - 1}
                                                               : Group{outcomeStart, outcomeEnd};
}

bool WareTable::takeKey(const QString& text) {
    const QModelIndex at = currentIndex();
    if (!(at.flags() & Qt::ItemIsEditable) || text.size() != 1)
        return EntryTable::takeKey(text);
    if (at.column() == int(WareColumn::catcherClean))
        return QStringLiteral("01yn").contains(text) && model()->setData(at, text);
    if (at.column() == int(WareColumn::crystals))
        return text >= QStringLiteral("0") && text <= QStringLiteral("3") && model()->setData(at, text);
    return EntryTable::takeKey(text);
}

void WareTable::keyPressEvent(QKeyEvent* event) {
    const QModelIndex at = currentIndex();
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (event->key() == Qt::Key_F4 && isColour(at.column()))
        Q_EMIT colourWanted(at);
    else if (enter && at.column() == int(WareColumn::photos))
        Q_EMIT photosWanted(at);
    else
        EntryTable::keyPressEvent(event);
}

} // namespace ringhold
