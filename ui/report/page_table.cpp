#include "ui/report/page_table.h"

#include "ui/theme/palette.h"

#include <QPainter>

#include <algorithm>

namespace ringhold {

namespace {

constexpr double columnGap = 14;
constexpr double leastWrapping = 60;
constexpr double mostApart = 26; ///< beyond the usual gap
constexpr double slack = 0.2;    ///< so that a cell as wide as its column does not break

const Palette& paper() {
    return builtInPalettes().paper;
}

PageType typeOf(const PageTable& table, const PageRow& row, bool head) {
    return {.points = table.points,
            .ink = head || row.struck ? paper().soft : paper().ink,
            .weight = row.stressed ? QFont::Bold : QFont::Normal,
            .struck = row.struck};
}

bool wraps(const PageTable& table, int column) {
    return std::ranges::find(table.wrapping, column) != table.wrapping.end();
}

PageBlock rowBlock(const PageTable& table, const PageRow& row, const std::vector<PageColumn>& columns,
                   bool head) {
    std::vector<PageText> cells;
    double height = 0;
    for (qsizetype i = 0; i < row.cells.size(); ++i) {
        cells.emplace_back(row.cells[i], typeOf(table, row, head),
                           columns[static_cast<std::size_t>(i)].width);
        height = std::max(height, cells.back().height());
    }
    PageBlock block;
    block.height = height + 2 * table.padding;
    block.keepWithNext = row.keepWithNext;
    const double full = columns.empty() ? 0 : columns.back().left + columns.back().width;
    block.paint = [cells, columns, full, height = block.height, rule = table.rules,
                   padding = table.padding](QPainter& painter, QPointF at) {
        for (std::size_t i = 0; i < cells.size(); ++i)
            cells[i].paint(painter, at + QPointF(columns[i].left, padding));
        if (rule) {
            painter.setPen(QPen(paper().edge, 0.5));
            painter.drawLine(at + QPointF(0, height), at + QPointF(full, height));
        }
    };
    return block;
}

/// The widest cell of each column.
std::vector<double> naturalWidths(const PageTable& table) {
    const auto columns = table.heads.isEmpty() ? (table.rows.empty() ? 0 : table.rows.front().cells.size())
                                               : table.heads.size();
    std::vector<double> widths(static_cast<std::size_t>(columns), 0);
    const auto reach = [&](const PageRow& row, bool head) {
        for (qsizetype i = 0; i < row.cells.size(); ++i) {
            auto& widest = widths[static_cast<std::size_t>(i)];
            widest = std::max(widest, PageText::widthOf(row.cells[i], typeOf(table, row, head)) + slack);
        }
    };
    reach({table.heads, false, false}, true);
    for (const auto& row : table.rows)
        reach(row, false);
    return widths;
}

/// Narrow ones get what they want; those that want more than an even share, such a share of what is left. The
/// last one takes the rest.
void shareRoom(std::vector<double>& widths, std::vector<int> wrapping, double room) {
    if (wrapping.empty())
        return;
    const int last = wrapping.back();
    const auto width = [&](int column) -> double& { return widths[static_cast<std::size_t>(column)]; };
    std::ranges::sort(wrapping, {}, width);
    double left = std::max(room, leastWrapping * static_cast<double>(wrapping.size()));
    for (auto it = wrapping.begin(); it != wrapping.end(); ++it) {
        width(*it) = std::min(width(*it), left / static_cast<double>(wrapping.end() - it));
        left -= width(*it);
    }
    width(last) += left;
}

} // namespace

std::vector<PageColumn> columnsOf(const PageTable& table, double width) {
    auto widths = naturalWidths(table);
    const double gaps = columnGap * std::max(0.0, double(widths.size()) - 1);
    double room = width - gaps;
    for (std::size_t i = 0; i < widths.size(); ++i)
        room -= wraps(table, static_cast<int>(i)) ? 0 : widths[i];
    shareRoom(widths, table.wrapping, room);
    const bool apart = table.spread && table.wrapping.empty() && widths.size() > 1;
    const double more = apart ? std::clamp(room / (double(widths.size()) - 1), 0.0, mostApart) : 0;
    std::vector<PageColumn> columns;
    double left = 0;
    for (const double each : widths) {
        columns.push_back({left, each});
        left += each + columnGap + more;
    }
    return columns;
}

std::vector<PageBlock> blocksOf(const PageTable& table, double width) {
    std::vector<PageBlock> blocks;
    const auto columns = columnsOf(table, width);
    std::shared_ptr<const PageBlock> heading;
    if (!table.heads.isEmpty()) {
        blocks.push_back(rowBlock(table, {table.heads, false, false}, columns, true));
        heading = std::make_shared<PageBlock>(blocks.back());
        blocks.back().keepWithNext = true;
    }
    for (const auto& row : table.rows) {
        blocks.push_back(rowBlock(table, row, columns, false));
        blocks.back().heading = heading;
    }
    return blocks;
}

void addTable(PageFlow& flow, const PageTable& table, double gapBefore) {
    auto blocks = blocksOf(table, flow.width());
    if (!blocks.empty())
        blocks.front().gapBefore = gapBefore;
    for (auto& block : blocks)
        flow.add(std::move(block));
}

} // namespace ringhold
