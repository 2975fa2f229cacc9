#include "core/firing/firing_record.h"
#include "core/watch/look_doubt.h"
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

TEST(LogModel, RemarksOnALookThatDoesNotFit) {
    test::NotebookOnDisk disk;
    const auto record = someRecord(test::noonOfMarch(1));
    const LookDoubt doubt{record.looks[1], 0.9, 0, {}, {}};
    const auto lines = pageLines(record, {}, {}, disk->preferences(), {doubt});
    EXPECT_TRUE(lines[0].remark.startsWith(QStringLiteral("9: Does not fit the rest")))
        << "the second look of two";
    EXPECT_TRUE(lines[1].remark.isEmpty());
    LogModel model;
    model.setLines(lines, disk->preferences());
    EXPECT_EQ(model.index(0, 0).data(LogModel::RemarkRole).toString(), lines[0].remark);
    EXPECT_TRUE(model.index(0, 0).data(Qt::AccessibleTextRole).toString().contains(lines[0].remark));
}

TEST(LogModel, SaysBesideASettingWhatTheCurveAnswered) {
    test::NotebookOnDisk disk;
    const Instant noon = test::noonOfMarch(1);
    auto record = someRecord(noon);
    record.settings = {{SettingId{4}, {}, noon + std::chrono::minutes(30), "damper", "half open", false}};
    Curve curve;
    for (int minute = 0; minute <= 60; ++minute)
        curve.push_back({noon + std::chrono::minutes(minute),
                         Temperature::fromCelsius(900 + minute - std::max(0, minute - 30) * 0.5)});
    const auto lines =
        pageLines(record, {}, {}, disk->preferences(), {}, settingAnswers(record.settings, curve));
    ASSERT_EQ(lines.size(), 4u);
    EXPECT_EQ(lines[3].kind, LogKind::setting);
    EXPECT_TRUE(lines[3].remark.startsWith(QStringLiteral("Climb 60.0"))) << lines[3].remark.toStdString();
    EXPECT_TRUE(lines[3].remark.contains(QStringLiteral("30.0"))) << lines[3].remark.toStdString();
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
