#include "tests/support/notebook_on_disk.h"
#include "ui/glaze/cards_model.h"

#include <QAbstractItemModelTester>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

GlazeCard named(const char* name) {
    GlazeCard card;
    card.name = name;
    return card;
}

TEST(CardsModelRows, KeepTheirContractWhileCardsComeAndGo) {
    test::NotebookOnDisk book;
    CardsModel model(book.notebook());
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.reload();
    EXPECT_EQ(model.rowCount(), 0);
    const auto moss = model.add(named("moss"));
    const auto frost = model.add(named("frost"));
    ASSERT_TRUE(moss && frost);
    ASSERT_EQ(model.rowCount(), 2);
    EXPECT_EQ(model.card(0).name, "frost"); // by name
    auto card = model.card(1);
    card.cone = "10";
    EXPECT_TRUE(model.alter(card, QStringLiteral("cone")));
    EXPECT_TRUE(model.remove(*frost));
    EXPECT_EQ(model.rowCount(), 1);
    model.undoStack().undo();
    EXPECT_EQ(model.rowCount(), 2);
    EXPECT_FALSE(model.add(named("MOSS"))); // there is one
    EXPECT_EQ(model.rowCount(), 2);
}

} // namespace
} // namespace ringhold
