#include "core/plan/plan_examples.h"
#include "tests/support/notebook_on_disk.h"
#include "tests/ui/report/pdf_tools.h"
#include "ui/report/log_sheet_window.h"
#include "ui/report/report_pane.h"
#include "ui/report/report_pdf.h"
#include "ui/report/report_preview.h"

namespace ringhold::test {
namespace {

LogSheet sheetWithPlan() {
    return {QStringLiteral("Firing 23, Heron"),
            QStringLiteral("lit 09:00"),
            QStringLiteral("°C"),
            {QStringLiteral("9"), QStringLiteral("10")},
            {{QStringLiteral("09:00"), QStringLiteral("climb to 1 100 °C")},
             {QStringLiteral("21:14"), QStringLiteral("hold 1 076 °C ± 6")}}};
}

SeenPdf seen(const LogSheet& sheet, Paper paper) {
    const auto pdf = toPdf(layOutLogSheet(sheet, paper));
    EXPECT_TRUE(pdf.ok());
    return SeenPdf(*pdf);
}

TEST(LogSheetPages, HaveColumnsAndThePlansTimes) {
    for (const auto paper : {Paper::a4, Paper::letter}) {
        const auto pdf = seen(sheetWithPlan(), paper);
        EXPECT_EQ(pdf.pages(), 2);
        const auto text = pdf.text();
        for (const char* words : {"Firing 23, Heron", "time", "reading °C", "setting", "look: 9 · 10", "note",
                                  "21:14", "± 6", "infrared-rated eyewear"})
            EXPECT_TRUE(text.contains(QString::fromUtf8(words))) << words << "\n" << text.toStdString();
        EXPECT_EQ(pdf.images(), 0);
    }
}

TEST(LogSheetPages, AnyFiringsSheetNeedsNoPlan) {
    const auto text = seen({{}, {}, QStringLiteral("°F"), {}, {}}, Paper::letter).text();
    EXPECT_TRUE(text.contains(QStringLiteral("Firing log")));
    EXPECT_TRUE(text.contains(QStringLiteral("reading °F")));
    EXPECT_FALSE(text.contains(QStringLiteral("the plan\n")));
}

TEST(LogSheetWindowTest, CountsAPlansTimesFromLighting) {
    NotebookOnDisk book;
    const auto plan = examplePlans().front();
    const auto sheet = logSheetOf(std::optional(plan.plan), book->preferences());
    ASSERT_EQ(sheet.plan.size(), plan.plan.steps.size());
    EXPECT_TRUE(sheet.plan.front().when.startsWith(u"+ "));
    LogSheetWindow window(sheet);
    present(window, 700, 700);
    EXPECT_EQ(window.pane().preview().pageCount(), 2);
    window.pane().setPaper(Paper::letter);
    EXPECT_EQ(window.pane().preview().document()->paper(), Paper::letter);
}

TEST(LogSheetWindowTest, TellsALiveFiringsTimesByTheClock) {
    NotebookOnDisk book;
    ASSERT_TRUE(book->preferences().setZone("UTC"));
    NewFiring firing;
    firing.kiln = book.addKiln("Heron");
    firing.plan = examplePlans().front().plan;
    const auto session = book->begin(firing);
    ASSERT_TRUE(session);
    ASSERT_TRUE(
        (*session)->firing().writeReading((*session)->record().firing.began, Temperature::fromCelsius(20)));
    const auto sheet = logSheetOf(**session, book->preferences());
    EXPECT_TRUE(sheet.title.contains(u"Heron"));
    ASSERT_FALSE(sheet.plan.empty());
    EXPECT_EQ(sheet.plan.front().when.size(), 5) << sheet.plan.front().when.toStdString();
}

} // namespace
} // namespace ringhold::test
