#include "core/firing/firing_record.h"
#include "tests/support/notebook_on_disk.h"
#include "ui/spread/log_model.h"

#include <QAbstractItemModelTester>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

FiringRecord someRecord(Instant start) {
    FiringRecord record;
    record.packs.push_back({PackId{1}, {}, "middle shelf", ConeType::selfSupporting, {"8", "9"}, false});
    record.looks = {{LookId{1}, PackId{1}, start + std::chrono::minutes(5), "8", 4, false, false},
                    {LookId{2}, PackId{1}, start + std::chrono::minutes(5), "9", 0.5, false, false},
                    {LookId{3}, PackId{1}, start + std::chrono::minutes(9), "8", 6, false, true}};
    record.notes = {{NoteId{1}, {}, start + std::chrono::minutes(7), "Damper closed.", false}};
    return record;
}

TEST(LogModel, TellsLinesInTimeOrderAndLooksTogether) {
    test::NotebookOnDisk disk;
    const auto& preferences = disk->preferences();
    const auto lines = pageLines(someRecord(test::noonOfMarch(1)), {}, {}, preferences);
    ASSERT_EQ(lines.size(), 3u);
    EXPECT_EQ(lines[0].kind, LogKind::look);
    EXPECT_EQ(lines[0].keys.size(), 2u);
    EXPECT_TRUE(lines[0].words.contains(QStringLiteral("8"))) << lines[0].words.toStdString();
    EXPECT_EQ(lines[1].kind, LogKind::note);
    EXPECT_TRUE(lines[2].struck);
}

TEST(LogModel, KeepsTheRulesOfItsKind) {
    test::NotebookOnDisk disk;
    LogModel model;
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    auto record = someRecord(test::noonOfMarch(1));
    model.setLines(pageLines(record, {}, {}, disk->preferences()), disk->preferences());
    EXPECT_EQ(model.rowCount(), 3);
    record.notes.push_back({NoteId{2}, {}, test::noonOfMarch(2), "Cool enough to open.", false});
    model.setLines(pageLines(record, {}, {}, disk->preferences()), disk->preferences());
    EXPECT_EQ(model.rowCount(), 4);
    record.notes[0].struck = true;
    model.setLines(pageLines(record, {}, {}, disk->preferences()), disk->preferences());
    EXPECT_TRUE(model.index(1, 0).data(LogModel::StruckRole).toBool());
    EXPECT_TRUE(
        model.index(1, 0).data(Qt::AccessibleTextRole).toString().contains(QStringLiteral("struck out")));
}

} // namespace
} // namespace ringhold
