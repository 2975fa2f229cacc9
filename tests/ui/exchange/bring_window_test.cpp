#include "core/exchange/firing_json.h"
#include "tests/core/book/sample_firing.h"
#include "tests/core/exchange/scratch_folder.h"
#include "tests/support/notebook_on_disk.h"
#include "tests/support/screens.h"
#include "ui/common/words_on_page.h"
#include "ui/exchange/bring_window.h"
#include "ui/exchange/column_fields.h"
#include "ui/exchange/export_row.h"
#include "ui/exchange/file_exchange.h"
#include "ui/exchange/preview_model.h"
#include "ui/theme/theme.h"

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QComboBox>
#include <QDropEvent>
#include <QLineEdit>
#include <QMimeData>
#include <QPointer>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableView>
#include <QTest>
#include <QUrl>
#include <gmock/gmock.h>

namespace ringhold::test {
namespace {

using testing::HasSubstr;

const std::string night = "time;probe;line_V;remark\n2026-03-01T20:00:00;1832;230;hot\n"
                          "2026-03-01T20:01:00;1834,5;231;\n2026-03-01T20:02:00;;;\n";

class BringWindowTest : public testing::Test {
  protected:
    BringWindow& open(const std::string& name, const std::string& content) {
        const auto file = m_folder.with(name, content);
        m_window = new BringWindow(m_book.notebook(), m_theme, good(FileDraft::open(file)));
        m_window->show();
        return *m_window;
    }
    void TearDown() override { delete m_window; }

    template <class Control>
    Control& called(const QString& name) {
        for (auto* control : m_window->findChildren<Control*>())
            if (control->accessibleName() == name)
                return *control;
        ADD_FAILURE() << "no " << name.toStdString();
        return *m_window->findChild<Control*>();
    }
    void choose(const QString& name, const QString& what) {
        auto& choice = called<QComboBox>(name);
        choice.setCurrentIndex(choice.findText(what));
        Q_EMIT choice.activated(choice.currentIndex());
    }
    QPushButton& keep() {
        for (auto* button : m_window->findChildren<QPushButton*>())
            if (button->isDefault())
                return *button;
        ADD_FAILURE() << "no button";
        return *m_window->findChild<QPushButton*>();
    }
    std::string warning() {
        for (auto* remark : m_window->findChildren<Remark*>())
            if (remark->isVisible())
                m_said = remark->text();
        return m_said.toStdString();
    }
    QString heading(int column) {
        return m_window->findChild<PreviewModel*>()->headerData(column, Qt::Horizontal).toString();
    }

    NotebookOnDisk m_book;
    Theme m_theme;
    ScratchFolder m_folder;
    QPointer<BringWindow> m_window;
    QString m_said;
};

} // namespace

TEST_F(BringWindowTest, ShowsTheFileAndAsksForWhatItDoesNotSay) {
    m_book.addKiln("Heron");
    open("night.csv", night);
    auto& table = *m_window->findChild<QTableView*>();
    const QAbstractItemModelTester tester(table.model(),
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    EXPECT_EQ(table.model()->rowCount(), 3);
    EXPECT_EQ(table.model()->index(1, 1).data().toString(), u"1834,5");
    EXPECT_FALSE(keep().isEnabled());
    EXPECT_THAT(warning(), HasSubstr("does not say whether it is °C or °F"));
    choose(QStringLiteral("Degrees"), QStringLiteral("°F"));
    EXPECT_TRUE(keep().isEnabled());
    EXPECT_EQ(heading(0), u"time\nthe time");
    EXPECT_EQ(heading(1), u"probe\ncontrol probe, °F");
    EXPECT_EQ(heading(2), u"line_V\nline volts");
    EXPECT_EQ(heading(3), u"remark\nleft out");
    EXPECT_THAT(m_window->draft().brought()->notTaken, testing::ElementsAre("remark"));
    EXPECT_EQ(m_window->draft().brought()->rowsSkipped, 1u);
    keepScreens(*m_window, m_theme, QStringLiteral("bring-csv"));
}

TEST_F(BringWindowTest, WritesOnlyWhenToldAndThenSaysWhere) {
    open("night.csv", night);
    choose(QStringLiteral("Degrees"), QStringLiteral("°F"));
    called<QComboBox>(QStringLiteral("Kiln")).setEditText(QStringLiteral("Heron"));
    called<QLineEdit>(QStringLiteral("Title")).setText(QStringLiteral("By night"));
    EXPECT_TRUE(good(m_book->reader().firings()).empty());
    const QSignalSpy brought(m_window, &BringWindow::brought);
    const QSignalSpy changed(&m_book.notebook(), &Notebook::bookChanged);
    keep().click();
    EXPECT_EQ(brought.size(), 1);
    EXPECT_EQ(changed.size(), 1);
    const auto firings = good(m_book->reader().firings());
    ASSERT_EQ(firings.size(), 1U);
    EXPECT_EQ(firings[0].title, "By night");
    EXPECT_EQ(firings[0].kilnName, "Heron");
    EXPECT_EQ(firings[0].readings, 4);
    EXPECT_NEAR(firings[0].peak->celsius(), 1001.4, 0.05);
}

TEST_F(BringWindowTest, TakesColumnsAsTheyAreSaidToBe) {
    open("odd.csv", "when,a,b\n0,1000,230\n10,1001,231\n");
    called<QComboBox>(QStringLiteral("Kiln")).setEditText(QStringLiteral("Heron"));
    EXPECT_FALSE(keep().isEnabled());
    choose(QStringLiteral("Time is in"), QStringLiteral("when"));
    choose(QStringLiteral("counted in"), QStringLiteral("minutes"));
    choose(QStringLiteral("Column"), QStringLiteral("a"));
    choose(QStringLiteral("holds"), QStringLiteral("°C"));
    choose(QStringLiteral("Column"), QStringLiteral("b"));
    EXPECT_EQ(called<QComboBox>(QStringLiteral("holds")).currentIndex(), 0);
    choose(QStringLiteral("holds"), QStringLiteral("line volts"));
    EXPECT_THAT(warning(), HasSubstr("its times have no date"));
    auto& began = called<QLineEdit>(QStringLiteral("Began at"));
    began.setText(QStringLiteral("soon"));
    Q_EMIT began.editingFinished();
    EXPECT_FALSE(keep().isEnabled());
    began.setText(QStringLiteral("2026-03-01T20:00Z"));
    Q_EMIT began.editingFinished();
    ASSERT_TRUE(keep().isEnabled()) << warning();
    const auto& record = m_window->draft().brought()->record;
    ASSERT_EQ(record.channels.size(), 2U);
    EXPECT_EQ(record.channels[1].quantity, Quantity::lineVolts);
    EXPECT_EQ(*record.firing.ended - record.firing.began, std::chrono::minutes(10));
}

TEST_F(BringWindowTest, SaysThatTheBookHasAFiringAlready) {
    NotebookOnDisk other;
    const auto sample = writeSample(other->book());
    expectGood(
        writeFiring(m_folder / "vase.json", good(other->reader().whole(sample.firing.id, Pictures::with))));
    const auto text = ScratchFolder::bytesOf(m_folder / "vase.json");
    open("vase.json", text);
    EXPECT_FALSE(m_window->findChild<QTableView*>()->isVisible());
    ASSERT_TRUE(keep().isEnabled()) << warning();
    keepScreens(*m_window, m_theme, QStringLiteral("bring-json"));
    keep().click();
    ASSERT_EQ(good(m_book->reader().firings()).size(), 1U);
    delete m_window;
    open("vase.json", text);
    EXPECT_THAT(warning(), HasSubstr("The book has this firing already: Vase day"));
    EXPECT_THAT(keep().text().toStdString(), HasSubstr("once more"));
    keep().click();
    EXPECT_EQ(good(m_book->reader().firings()).size(), 2U);
}

TEST_F(BringWindowTest, WorksByKeyboard) {
    open("night.csv", night);
    present(*m_window, 900, 620);
    expectUsableByKeyboard(*m_window);
}

TEST_F(BringWindowTest, OpensForADroppedFileAndTellsOfABrokenOne) {
    QWidget window;
    FileExchange exchange(m_book.notebook(), m_theme, window);
    const QSignalSpy troubled(&exchange, &FileExchange::troubled);
    // A window that was not entered by a drag gets no drop from the application: it is handed to the filter.
    QObject& filter = exchange;
    const auto drop = [&](const std::filesystem::path& file) {
        QMimeData data;
        data.setUrls({QUrl::fromLocalFile(QString::fromStdString(file.string()))});
        QDropEvent event(QPointF(5, 5), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        event.ignore();
        return filter.eventFilter(&window, &event) && event.isAccepted();
    };
    EXPECT_TRUE(drop(m_folder.with("night.csv", night)));
    EXPECT_EQ(window.findChildren<BringWindow*>().size(), 1);
    EXPECT_TRUE(drop(m_folder.with("empty.csv", "")));
    EXPECT_TRUE(drop(m_folder / "none.csv"));
    ASSERT_EQ(troubled.size(), 2);
    EXPECT_THAT(troubled[0][0].toString().toStdString(), HasSubstr("empty.csv:1: is empty"));
    EXPECT_EQ(window.findChildren<BringWindow*>().size(), 1);
}

TEST_F(BringWindowTest, HandsAFiringOnAsFiles) {
    const FiringId firing = m_book.addFiring(m_book.addKiln("Heron"), {.began = noonOfMarch(1)});
    ExportRow row(m_book.notebook());
    present(row, 800, 60);
    EXPECT_FALSE(row.isEnabled());
    row.show(firing);
    row.write(QString::fromStdString((m_folder / "f.json").string()));
    row.write(QString::fromStdString((m_folder / "f.csv").string()));
    const auto back = good(readFiring(m_folder / "f.json"));
    EXPECT_EQ(formatFiring(back), formatFiring(good(m_book->reader().whole(firing, Pictures::with))));
    EXPECT_THAT(ScratchFolder::bytesOf(m_folder / "f.csv"), testing::StartsWith("time_utc,"));
    row.write(QStringLiteral("/dev/full"));
    EXPECT_TRUE(row.findChild<Remark*>()->isVisible());
    expectUsableByKeyboard(row);
}

} // namespace ringhold::test
