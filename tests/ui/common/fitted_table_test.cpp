#include "ui/common/fitted_table.h"

#include <QHeaderView>
#include <QScrollBar>
#include <QStandardItemModel>
#include <QTest>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

class FittedTableTest : public testing::Test {
  protected:
    FittedTableTest() {
        model.setHorizontalHeaderLabels({QStringLiteral("piece"), QStringLiteral("crystal colour seen")});
        table.setModel(&model);
        table.setColumns({{20, 0}, {20, 1}});
    }
    /// Shown in widths of a figure.
    void show(double figures) {
        const int figure = table.fontMetrics().horizontalAdvance(QLatin1Char('0'));
        table.resize(static_cast<int>(figures * figure) + 4, 300);
        table.show();
        QTest::qWait(1);
    }

    QStandardItemModel model{3, 2};
    FittedTable table;
};

TEST_F(FittedTableTest, SharesOutTheRoomThatIsLeft) {
    show(80);
    EXPECT_NEAR(table.columnWidth(0) + table.columnWidth(1), table.viewport()->width(), 3);
    EXPECT_GT(table.columnWidth(1), 2 * table.columnWidth(0));
}

TEST_F(FittedTableTest, NarrowsBeforeItScrolls) {
    show(32);
    EXPECT_EQ(table.horizontalScrollBar()->maximum(), 0);
    show(20);
    EXPECT_GT(table.horizontalScrollBar()->maximum(), 0);
}

TEST_F(FittedTableTest, BreaksHeadsBetweenWords) {
    show(80);
    const int oneLine = table.horizontalHeader()->height();
    table.setColumns({{20, 0}, {9, 0}});
    show(32);
    EXPECT_GT(table.horizontalHeader()->height(), oneLine + table.fontMetrics().height() / 2);
    table.setColumns({{20, 0}, {20, 1}});
    show(80);
    EXPECT_EQ(table.horizontalHeader()->height(), oneLine);
}

} // namespace
} // namespace ringhold
