// Tables that break between rows, with their heads repeated.
#pragma once

#include "ui/report/page_flow.h"
#include "ui/report/page_text.h"

#include <QStringList>

#include <vector>

namespace ringhold {

struct PageRow {
    QStringList cells;
    bool stressed = false; ///< set bold
    bool struck = false;
    bool keepWithNext = false; ///< as a heading within the table
};

struct PageTable {
    QStringList heads; ///< may be empty: a table without a head
    std::vector<PageRow> rows;
    std::vector<int> wrapping{}; ///< columns that take what room is left, and break their lines
    bool rules = false;          ///< a hairline under each row
    double points = 8.5;
    double padding = 2.2; ///< above and below a row
    bool spread = false;  ///< columns apart until the table is as wide as it may be, within reason
};

/// Where columns stand, and how wide they are.
struct PageColumn {
    double left = 0;
    double width = 0;
};
/// How the columns come out when the table may be that wide altogether.
std::vector<PageColumn> columnsOf(const PageTable& table, double width);

/// The rows as blocks for a flow, the head first and kept with the first row.
std::vector<PageBlock> blocksOf(const PageTable& table, double width);

/// Adds the same to a flow, `gapBefore` above the head.
void addTable(PageFlow& flow, const PageTable& table, double gapBefore = 0);

} // namespace ringhold
