#include "ui/common/fitted_table.h"

#include "ui/common/breaking_header.h"
#include "ui/common/cell_delegate.h"

#include <QEvent>
#include <QHeaderView>

#include <algorithm>

namespace ringhold {

namespace {

constexpr double narrowest = 0.68; ///< of what a column needs, before the table scrolls sideways

}

FittedTable::FittedTable(QWidget* parent) : QTableView(parent) {
    setItemDelegate(new CellDelegate(this));
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    setTabKeyNavigation(false);
    setSelectionMode(QAbstractItemView::SingleSelection);
    verticalHeader()->setVisible(false);
    setHorizontalHeader(new BreakingHeader(this));
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
    double figures = 0, shares = 0;
    for (const auto& column : m_columns) {
        figures += column.figures;
        shares += column.share;
    }
    const double room = viewport()->width();
    const double wanted = fontMetrics().horizontalAdvance(QLatin1Char('0'));
    const double figure = std::clamp(room / std::max(figures, 1.0), narrowest * wanted, wanted);
    const double each = shares > 0 ? std::max(room - figure * figures, 0.0) / shares : 0;
    for (std::size_t i = 0; i < m_columns.size(); ++i)
        setColumnWidth(static_cast<int>(i),
                       static_cast<int>(figure * m_columns[i].figures + each * m_columns[i].share));
    updateGeometries(); // heads may have broken
}

} // namespace ringhold
