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
    EXPECT_EQ(model.index(own, 0).data(), QStringLiteral("Phone charged"));
    undo.undo();
    EXPECT_EQ(model.index(own, 0).data(), QStringLiteral("Kiln wash on the lid"));
}

} // namespace
} // namespace ringhold
