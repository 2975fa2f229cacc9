#include "tests/support/notebook_on_disk.h"
#include "tests/support/screens.h"
#include "ui/common/entry_table.h"
#include "ui/past/paper_log_model.h"
#include "ui/past/paper_log_window.h"
#include "ui/session/paper_lines.h"
#include "ui/theme/theme.h"

#include <QAbstractItemModelTester>
#include <QPointer>
#include <QPushButton>
#include <QTest>

namespace ringhold::test {
namespace {

class PaperLogTest : public testing::Test {
  protected:
    ~PaperLogTest() override { delete m_window; }

    void open(FiringId firing) {
        auto window = PaperLogWindow::open(m_book.notebook(), firing, nullptr);
        ASSERT_TRUE(window);
        m_window = *window;
        present(*m_window, 820, 480);
        m_window->findChild<EntryTable*>()->setFocus();
    }
    PaperLogModel& model() { return *m_window->findChild<PaperLogModel*>(); }
    QString cell(int row, PaperColumn column) {
        return model().index(row, static_cast<int>(column)).data().toString();
    }
    void enter(const QString& text) {
        type(text);
        press(Qt::Key_Return);
    }
    void write() { QTest::mouseClick(m_window->findChild<QPushButton*>(), Qt::LeftButton); }

    NotebookOnDisk m_book;
    KilnId m_heron = m_book.addKiln("Heron");
    ProbeId m_probe = m_book.addProbe(m_heron, "T1");
    QPointer<PaperLogWindow> m_window;
};

} // namespace

TEST_F(PaperLogTest, IsTypedByKeyboardIntoAPastFiring) {
    const FiringId past = m_book.addFiring(m_heron, {.began = noonOfMarch(1), .probe = m_probe});
    open(past);
    const QAbstractItemModelTester tester(&model());
    enter(QStringLiteral("12:40"));
    enter(QStringLiteral("131"));
    enter(QStringLiteral("damper: half open"));
    enter(QStringLiteral("1:10"));
    enter(QStringLiteral("1076.5"));
    enter(QStringLiteral("power back"));
    ASSERT_EQ(model().rowCount(), 3);
    EXPECT_TRUE(cell(1, PaperColumn::meaning).contains(u"2 Mar 2026"))
        << cell(1, PaperColumn::meaning).toStdString();
    write();
    EXPECT_TRUE(model().isEmpty());
    const auto record = m_book->reader().whole(past);
    ASSERT_TRUE(record);
    std::vector<Reading> byHand;
    for (const auto& reading : record->readings)
        if (reading.origin == Origin::hand)
            byHand.push_back(reading);
    ASSERT_EQ(byHand.size(), 2u);
    EXPECT_EQ(byHand[0].at, noonOfMarch(1) + std::chrono::minutes(40));
    EXPECT_DOUBLE_EQ(byHand[1].value, 1076.5);
    EXPECT_EQ(byHand[1].at, noonOfMarch(1) + std::chrono::minutes(13 * 60 + 10));
    ASSERT_EQ(record->settings.size(), 1u);
    EXPECT_EQ(record->settings[0].value, "half open");
    EXPECT_EQ(record->notes.back().text, "power back");
}

TEST_F(PaperLogTest, GoesToALiveFiringThroughItsSession) {
    m_book.clock().set(noonOfMarch(1) + std::chrono::hours(3));
    NewFiring firing;
    firing.kiln = m_heron;
    const auto session = m_book->begin(firing);
    ASSERT_TRUE(session);
    const Instant began = (*session)->record().firing.began;
    m_book.clock().set(began + std::chrono::hours(2));
    const std::vector<WrittenLine> lines{
        {WrittenReading{Temperature::fromCelsius(200)}, began + std::chrono::minutes(60)},
        {WrittenNote{"dark"}, began + std::chrono::minutes(70)}};
    const auto written = writePaperLines(m_book.notebook(), (*session)->record().firing.id, lines);
    EXPECT_TRUE(written.trouble);
    EXPECT_EQ(written.lines, 2u);
    ASSERT_FALSE((*session)->firing().controlCurve().empty());
    EXPECT_DOUBLE_EQ((*session)->firing().controlCurve().back().temperature.celsius(), 200);
    EXPECT_EQ((*session)->record().notes.back().text, "dark");
}

TEST_F(PaperLogTest, KeepsTheRowsThatItDoesNotUnderstand) {
    const FiringId past = m_book.addFiring(m_heron, {.began = noonOfMarch(1), .probe = m_probe});
    open(past);
    for (const char16_t* cell : {u"12:40", u"hot", u"", u"12:50", u"140", u""})
        enter(QString::fromUtf16(cell));
    EXPECT_EQ(model().faults(), 1);
    EXPECT_TRUE(cell(0, PaperColumn::meaning).startsWith(u"!"));
    write();
    ASSERT_EQ(model().rowCount(), 2);
    EXPECT_EQ(cell(0, PaperColumn::reading), u"hot");
    m_window->reject();
    EXPECT_TRUE(m_window && m_window->isVisible()) << "rows are not lost by one key";
    m_window->reject();
    EXPECT_FALSE(m_window && m_window->isVisible());
}

TEST_F(PaperLogTest, NamesTheLineThatTheBookRefuses) {
    const FiringId past = m_book.addFiring(m_heron, {.began = noonOfMarch(1), .probe = m_probe});
    const std::vector<WrittenLine> lines{{WrittenNote{"fine"}, noonOfMarch(1)},
                                         {WrittenLooks{{{"017", 3}}}, noonOfMarch(1)}};
    const auto written = writePaperLines(m_book.notebook(), past, lines);
    EXPECT_EQ(written.lines, 1u);
    ASSERT_FALSE(written.trouble);
    EXPECT_NE(written.trouble.error().text().find("017"), std::string::npos);
}

TEST_F(PaperLogTest, LooksGood) {
    Theme theme;
    const FiringId past = m_book.addFiring(m_heron, {.began = noonOfMarch(1), .probe = m_probe});
    open(past);
    expectUsableByKeyboard(*m_window);
    m_window->findChild<EntryTable*>()->setFocus();
    for (const char16_t* cell :
         {u"12:40", u"131", u"damper: half open", u"12:55", u"hot", u"", u"13:10", u"166", u"10 1.5"})
        enter(QString::fromUtf16(cell));
    keepScreens(*m_window, theme, QStringLiteral("paper-log"));
}

} // namespace ringhold::test
