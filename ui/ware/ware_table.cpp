#include "ui/ware/ware_table.h"

#include "ui/ware/ware_delegate.h"
#include "ui/ware/ware_model.h"

#include <QHeaderView>
#include <QKeyEvent>

#include <algorithm>
#include <utility>

namespace ringhold {

namespace {

constexpr int outcomeStart = static_cast<int>(firstOutcomeColumn);

/// In widths of a figure: what each column needs, together no more than the smallest window has.
constexpr double needed[wareColumns] = {12, 9.5, 6.2, 8.2, 8.2, 9, 9, 6.4, 9.8, 7, 7};
constexpr double neededInFlame = 11.4; ///< by the saggers' column
/// What room is left is shared by these.
constexpr double share[wareColumns] = {2, 1, 0, 0, 0, 0, 0, 0, 2, 0, 2};

const WareModel* wareOf(const QModelIndex& index) {
    return qobject_cast<const WareModel*>(index.model());
}

} // namespace

WareTable::WareTable(QWidget* parent) : QTableView(parent) {
    setItemDelegate(new WareDelegate(this));
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    setTabKeyNavigation(false);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                    QAbstractItemView::AnyKeyPressed);
    setAlternatingRowColors(false);
    verticalHeader()->setVisible(false);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setMinimumSectionSize(20);
    horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
}

void WareTable::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    fitColumns();
}

void WareTable::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        fitColumns();
}

void WareTable::reset() {
    QTableView::reset();
    fitColumns();
}

void WareTable::fitColumns() {
    if (!model() || model()->columnCount() != wareColumns)
        return;
    const auto* ware = qobject_cast<const WareModel*>(model());
    const double figure = fontMetrics().horizontalAdvance(QLatin1Char('0'));
    double widths[wareColumns];
    double left = viewport()->width();
    double shares = 0;
    for (int i = 0; i < wareColumns; ++i) {
        const bool flame = i == static_cast<int>(WareColumn::sagger) && ware && ware->openToFlame() > 0;
        widths[i] = figure * (flame ? neededInFlame : needed[i]);
        left -= widths[i];
        shares += share[i];
    }
    for (int i = 0; i < wareColumns; ++i)
        setColumnWidth(i, static_cast<int>(widths[i] + std::max(left, 0.0) * share[i] / shares));
}

void WareTable::keyPressEvent(QKeyEvent* event) {
    const bool plain = !(event->modifiers() & ~(Qt::KeypadModifier | Qt::ShiftModifier));
    if (plain && state() != EditingState && currentIndex().isValid()) {
        const int key = event->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter)
            return moveOn();
        if (key == Qt::Key_Delete || key == Qt::Key_Backspace) {
            if (currentIndex().flags() & Qt::ItemIsEditable && !currentIndex().data(Qt::EditRole).isNull())
                model()->setData(currentIndex(), QString());
            return;
        }
        if (takeKey(event->text().toLower()))
            return moveOn();
    }
    QTableView::keyPressEvent(event);
}

bool WareTable::takeKey(const QString& text) {
    const QModelIndex at = currentIndex();
    if (text.size() != 1)
        return false;
    if (at.flags() & Qt::ItemIsUserCheckable) {
        const bool yes = text == QStringLiteral("1") || text == QStringLiteral("y");
        const bool no = text == QStringLiteral("0") || text == QStringLiteral("n");
        return (yes || no) &&
               model()->setData(at, int(yes ? Qt::Checked : Qt::Unchecked), Qt::CheckStateRole);
    }
    const bool choice = at.column() == outcomeStart && (at.flags() & Qt::ItemIsEditable);
    return choice && text >= QStringLiteral("0") && text <= QStringLiteral("3") && model()->setData(at, text);
}

void WareTable::rowsInserted(const QModelIndex& parent, int first, int last) {
    QTableView::rowsInserted(parent, first, last);
    m_added = first;
}

void WareTable::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) {
    QTableView::closeEditor(editor, hint);
    const int added = std::exchange(m_added, -1);
    if (hint != QAbstractItemDelegate::SubmitModelCache)
        return;
    if (added >= 0) // the empty row went down with the keyboard in it
        setCurrentIndex(model()->index(added, 0));
    moveOn();
}

void WareTable::moveOn() {
    const QModelIndex at = currentIndex();
    const bool outcome = at.column() >= outcomeStart;
    const int end = outcome ? model()->columnCount() : outcomeStart;
    int next = at.column() + 1;
    while (next < end && isColumnHidden(next))
        ++next;
    const auto* ware = wareOf(at);
    const bool unwritten = ware && ware->isNewRow(at.row());
    if (next < end && !unwritten) {
        setCurrentIndex(at.siblingAtColumn(next));
        return;
    }
    const int row = at.row() + 1;
    if (row < model()->rowCount() && !unwritten)
        setCurrentIndex(model()->index(row, outcome && !(ware && ware->isNewRow(row)) ? outcomeStart : 0));
}

} // namespace ringhold
