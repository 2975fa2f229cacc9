#include "ui/common/fitted_table.h"

#include "ui/common/cell_delegate.h"

#include <QEvent>
#include <QHeaderView>

#include <algorithm>

namespace ringhold {

FittedTable::FittedTable(QWidget* parent) : QTableView(parent) {
    setItemDelegate(new CellDelegate(this));
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    setTabKeyNavigation(false);
    setSelectionMode(QAbstractItemView::SingleSelection);
    verticalHeader()->setVisible(false);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setMinimumSectionSize(20);
    horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
}

void FittedTable::setColumns(std::vector<Column> columns) {
    m_columns = std::move(columns);
    fitColumns();
}

void FittedTable::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    fitColumns();
}

void FittedTable::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        fitColumns();
}

void FittedTable::reset() {
    QTableView::reset();
    fitColumns();
}

void FittedTable::fitColumns() {
    if (!model() || model()->columnCount() != static_cast<int>(m_columns.size()))
        return;
    const double figure = fontMetrics().horizontalAdvance(QLatin1Char('0'));
    double left = viewport()->width();
    double shares = 0;
    for (const auto& column : m_columns) {
        left -= figure * column.figures;
        shares += column.share;
    }
    const double each = shares > 0 ? std::max(left, 0.0) / shares : 0;
    for (std::size_t i = 0; i < m_columns.size(); ++i)
        setColumnWidth(static_cast<int>(i),
                       static_cast<int>(figure * m_columns[i].figures + each * m_columns[i].share));
}

} // namespace ringhold
