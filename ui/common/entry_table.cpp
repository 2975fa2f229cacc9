#include "ui/common/entry_table.h"

#include "ui/common/cell_delegate.h"

#include <QKeyEvent>

#include <algorithm>
#include <utility>

namespace ringhold {

EntryTable::EntryTable(QWidget* parent) : FittedTable(parent) {
    setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                    QAbstractItemView::AnyKeyPressed);
}

EntryTable::Group EntryTable::groupOf(int) const {
    return {0, model()->columnCount() - 1};
}

bool EntryTable::invites(int row) const {
    return model()->index(row, 0).data(invitingRole).toBool();
}

void EntryTable::keyPressEvent(QKeyEvent* event) {
    const bool plain = !(event->modifiers() & ~(Qt::KeypadModifier | Qt::ShiftModifier));
    if (plain && state() != EditingState && currentIndex().isValid()) {
        const int key = event->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter)
            return moveOn();
        if (key == Qt::Key_Delete || key == Qt::Key_Backspace)
            return empty();
        if (takeKey(event->text().toLower()))
            return moveOn();
    }
    FittedTable::keyPressEvent(event);
}

bool EntryTable::takeKey(const QString& text) {
    if (!(currentIndex().flags() & Qt::ItemIsUserCheckable))
        return false;
    const bool yes = text == QStringLiteral("1") || text == QStringLiteral("y");
    const bool no = text == QStringLiteral("0") || text == QStringLiteral("n");
    return (yes || no) &&
           model()->setData(currentIndex(), int(yes ? Qt::Checked : Qt::Unchecked), Qt::CheckStateRole);
}

void EntryTable::empty() {
    if ((currentIndex().flags() & Qt::ItemIsEditable) && !invites(currentIndex().row()))
        model()->setData(currentIndex(), QString());
}

void EntryTable::rowsInserted(const QModelIndex& parent, int first, int last) {
    FittedTable::rowsInserted(parent, first, last);
    m_added = first;
}

void EntryTable::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) {
    FittedTable::closeEditor(editor, hint);
    const int added = std::exchange(m_added, -1);
    if (hint != QAbstractItemDelegate::SubmitModelCache)
        return;
    if (added >= 0) // the empty row went down with the keyboard in it
        setCurrentIndex(model()->index(added, 0));
    moveOn();
}

void EntryTable::moveOn() {
    const QModelIndex at = currentIndex();
    if (invites(at.row()))
        return;
    const Group group = groupOf(at.column());
    const int row = at.row() + 1;
    int next = std::max(at.column() + 1, group.first);
    while (next <= group.last && isColumnHidden(next))
        ++next;
    if (next <= group.last)
        setCurrentIndex(at.siblingAtColumn(next));
    else if (row < model()->rowCount())
        setCurrentIndex(model()->index(row, invites(row) ? 0 : group.first));
}

} // namespace ringhold
