#include "tests/support/notebook_on_disk.h"
#include "ui/ware/checklist_model.h"

#include <QAbstractItemModelTester>
#include <QUndoStack>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

TEST(ChecklistModelRows, KeepTheirContractWhileLinesComeAndGo) {
    test::NotebookOnDisk book;
    QUndoStack undo;
    ChecklistModel model(book.notebook(), undo);
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.showFor(FiringId{1}, false);
    const int electric = model.rowCount();
    model.showFor(FiringId{1}, true);
    EXPECT_GT(model.rowCount(), electric); // a flame has more cautions

    const auto invitation = [&model] { return model.index(model.rowCount() - 1, 0); };
    ASSERT_TRUE(model.setData(invitation(), QStringLiteral("Kiln wash on the lid")));
    ASSERT_TRUE(model.setData(invitation(), QStringLiteral("Phone charged")));
    EXPECT_FALSE(model.setData(model.index(0, 0), QStringLiteral("a caution is not to be changed")));
    const int own = model.rowCount() - 3;
    EXPECT_EQ(model.index(own, 0).data(), QStringLiteral("Kiln wash on the lid"));
    EXPECT_TRUE(model.setData(model.index(own, 0), Qt::Checked, Qt::CheckStateRole));
    EXPECT_EQ(model.tickedCount(), 1);
    ASSERT_TRUE(model.remove(own));
    EXPECT_EQ(model.tickedCount(), 0);
    EXPECT_EQ(model.index(own, 0).data(), QStringLiteral("Phone charged"));
    undo.undo();
    EXPECT_EQ(model.index(own, 0).data(), QStringLiteral("Kiln wash on the lid"));
}

TEST(ChecklistModelTicks, TheLastOneIsWrittenInTheLogOnce) {
    test::NotebookOnDisk book;
    QUndoStack undo;
    const FiringId firing =
        book.addFiring(book.addKiln("Heron"), {.began = test::noonOfMarch(1), .live = true});
    ChecklistModel model(book.notebook(), undo);
    model.showFor(firing, false);
    ASSERT_GT(model.lineCount(), 2);
    const auto tick = [&model](int row) {
        EXPECT_TRUE(model.setData(model.index(row, 0), Qt::Checked, Qt::CheckStateRole));
    };
    for (int row = 1; row < model.lineCount(); ++row)
        tick(row);
    EXPECT_FALSE(model.goneThrough());
    tick(0);
    EXPECT_TRUE(model.goneThrough());
    model.setData(model.index(0, 0), Qt::Unchecked, Qt::CheckStateRole);
    tick(0);
    const auto events = book.notebook().reader().events(firing);
    ASSERT_EQ(events->size(), 1U) << "ticked again, told no second time";
    EXPECT_EQ(events->front().kind, "checklist");
    ChecklistModel again(book.notebook(), undo);
    again.showFor(firing, false);
    EXPECT_EQ(again.goneThrough(), events->front().at);
}

} // namespace
} // namespace ringhold
