#include "core/report/make_report.h"
#include "tests/core/report/made_up_firing.h"
#include "ui/report/report_pane.h"
#include "ui/report/report_preview.h"

#include <QFileInfo>
#include <QPrinter>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

ReportContent longReport() {
    auto record = test::madeUpFiring();
    for (int i = 0; i < 90; ++i)
        record.notes.push_back({NoteId{i + 1}, FiringId{23}, test::minuteIn(i * 5), "a note"});
    return makeReport(record);
}

class Pane : public testing::Test {
  protected:
    Pane() {
        pane.resize(700, 600);
        pane.setPaper(Paper::a4);
        pane.setContent(longReport());
        pane.show();
        pane.preview().setFocus();
    }

    ReportPane pane;
    QTemporaryDir folder;
};

TEST_F(Pane, TurnsPagesByKeys) {
    auto& preview = pane.preview();
    ASSERT_GE(preview.pageCount(), 2);
    EXPECT_EQ(preview.page(), 0);
    QTest::keyClick(&preview, Qt::Key_PageDown);
    EXPECT_EQ(preview.page(), 1);
    QTest::keyClick(&preview, Qt::Key_End);
    EXPECT_EQ(preview.page(), preview.pageCount() - 1);
    QTest::keyClick(&preview, Qt::Key_PageDown); // there is no further one
    EXPECT_EQ(preview.page(), preview.pageCount() - 1);
    QTest::keyClick(&preview, Qt::Key_Home);
    EXPECT_EQ(preview.page(), 0);
}

TEST_F(Pane, FitsAndZooms) {
    auto& preview = pane.preview();
    const double width = preview.scale();
    EXPECT_NEAR(width * sheetOf(Paper::a4).width(), preview.viewport()->width() - 32, 0.5);
    EXPECT_GT(preview.verticalScrollBar()->maximum(), 0);
    QTest::keyClick(&preview, Qt::Key_P);
    EXPECT_LT(preview.scale(), width);
    EXPECT_EQ(preview.verticalScrollBar()->maximum(), 0);
    QTest::keyClick(&preview, Qt::Key_Plus);
    QTest::keyClick(&preview, Qt::Key_Plus);
    const double zoomed = preview.scale();
    QTest::keyClick(&preview, Qt::Key_Minus);
    EXPECT_NEAR(preview.scale(), zoomed / 1.2, 1e-9);
    QTest::keyClick(&preview, Qt::Key_W);
    EXPECT_NEAR(preview.scale(), width, 1e-9);
}

TEST_F(Pane, ShowsTheSheet) {
    const QImage seen = pane.preview().viewport()->grab().toImage();
    // white paper below the top edge, left of the text; ink somewhere on it
    EXPECT_EQ(seen.pixelColor(40, 60), QColor(Qt::white));
    int dark = 0;
    for (int y = 0; y < seen.height(); ++y)
        for (int x = 0; x < seen.width(); ++x)
            dark += qGray(seen.pixel(x, y)) < 100;
    EXPECT_GT(dark, 500);
}

TEST_F(Pane, SavesWhereItIsTold) {
    QString proposed;
    const QString path = folder.filePath(QStringLiteral("kept.pdf"));
    pane.askForFile = [&](const QString& name, std::function<void(const QString&)> chosen) {
        proposed = name;
        chosen(path);
    };
    QSignalSpy told(&pane, &ReportPane::told);
    pane.savePdf();
    EXPECT_TRUE(proposed.endsWith(QStringLiteral("Firing 23, Heron.pdf"))) << proposed.toStdString();
    EXPECT_GT(QFileInfo(path).size(), 10'000);
    ASSERT_EQ(told.size(), 1);
    pane.askForFile = [](const QString&, auto chosen) { chosen(QStringLiteral("/nowhere/at/all.pdf")); };
    pane.savePdf();
    ASSERT_EQ(told.size(), 2);
    EXPECT_TRUE(told[1][0].toString().contains(QStringLiteral("/nowhere")))
        << told[1][0].toString().toStdString();
    pane.askForFile = [](const QString&, auto) {}; // changed his mind
    pane.savePdf();
    EXPECT_EQ(told.size(), 2);
}

TEST_F(Pane, PrintsOnThePrintersPaper) {
    const QString path = folder.filePath(QStringLiteral("printed.pdf"));
    pane.askForPrinter = [&](std::shared_ptr<QPrinter> printer, std::function<void()> go) {
        printer->setOutputFormat(QPrinter::PdfFormat);
        printer->setOutputFileName(path);
        printer->setPageSize(QPageSize(QPageSize::Letter));
        go();
    };
    pane.print();
    QFile printed(path);
    ASSERT_TRUE(printed.open(QIODevice::ReadOnly));
    EXPECT_TRUE(printed.readAll().contains("/MediaBox [0 0 612"));
}

} // namespace
} // namespace ringhold
