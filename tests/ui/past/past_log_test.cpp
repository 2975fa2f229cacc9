#include "core/book/reader.h"
#include "tests/support/notebook_on_disk.h"
#include "ui/past/past_log.h"
#include "ui/spread/log_model.h"
#include "ui/spread/log_view.h"
#include "ui/theme/theme.h"

#include <QLineEdit>
#include <QSignalSpy>
#include <QTest>
#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

class PastLogTest : public testing::Test {
  protected:
    PastLogTest() {
        kiln = book.addKiln("Heron");
        probe = book.addProbe(kiln, "top");
        firing = book.addFiring(kiln, {.began = noonOfMarch(1), .probe = probe});
        EXPECT_TRUE(
            book->writer()
                .add(Note{{}, firing, noonOfMarch(1) + std::chrono::hours(1), "wind from the north", false})
                .ok());
        QObject::connect(&log, &PastLog::written, &log, [this] { open(); });
        open();
        present(log, 500, 300);
    }

    void open() { log.show(*openFiring(book->book(), firing)); }
    LogView* view() { return log.findChild<LogView*>(); }
    QLineEdit* note() { return log.findChild<QLineEdit*>(); }
    FiringRecord record() { return *book->reader().whole(firing); }
    LogKind kindAt(int row) {
        return static_cast<LogKind>(view()->model()->index(row, 0).data(LogModel::KindRole).toInt());
    }
    int rowOf(LogKind kind) {
        for (int row = 0; row < view()->model()->rowCount(); ++row)
            if (kindAt(row) == kind)
                return row;
        return -1;
    }
    void strike(int row) {
        view()->setFocus();
        view()->setCurrentIndex(view()->model()->index(row, 0));
        press(Qt::Key_Delete);
    }

    NotebookOnDisk book;
    KilnId kiln{};
    ProbeId probe{};
    FiringId firing{};
    Theme theme;
    PastLog log{book.notebook(), theme};
};

TEST_F(PastLogTest, ANoteIsAddedAndCanBeUndoneAndRedone) {
    QSignalSpy written(&log, &PastLog::written);
    note()->setFocus();
    type(QStringLiteral("opened: all came out well"));
    press(Qt::Key_Return);
    ASSERT_EQ(written.count(), 1);
    ASSERT_EQ(record().notes.size(), 2U);
    EXPECT_TRUE(note()->text().isEmpty());
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(record().notes.back().struck);
    EXPECT_EQ(record().notes.back().text, "opened: all came out well") << "it stays readable";
    press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_FALSE(record().notes.back().struck);
}

TEST_F(PastLogTest, DeleteStrikesALineAndTakesThatBack) {
    strike(rowOf(LogKind::note));
    EXPECT_TRUE(record().notes.front().struck);
    strike(rowOf(LogKind::note));
    EXPECT_FALSE(record().notes.front().struck);
}

TEST_F(PastLogTest, StrikingLooksFilesTheOffsetAnew) {
    const auto filed = [this] { return book->reader().filedOffsets(kiln)->size(); };
    for (int row = 0; row < view()->model()->rowCount(); ++row)
        if (kindAt(row) == LogKind::look)
            strike(row);
    for (const auto& look : record().looks)
        EXPECT_TRUE(look.struck);
    EXPECT_EQ(filed(), 0U) << "nothing tells it any more";
    strike(rowOf(LogKind::look));
    EXPECT_EQ(filed(), 1U);
    strike(rowOf(LogKind::look));
    EXPECT_EQ(filed(), 0U) << "what was filed before is taken out again";
}

TEST_F(PastLogTest, ALiveFiringIsOnlyRead) {
    firing = book.addFiring(book.addKiln("Wren"), {.began = noonOfMarch(3), .live = true});
    open();
    EXPECT_FALSE(note()->isEnabled());
    strike(rowOf(LogKind::look));
    EXPECT_FALSE(record().looks.front().struck);
}

TEST_F(PastLogTest, IsUsedByKeyboard) {
    expectUsableByKeyboard(log);
}

} // namespace
} // namespace ringhold::test
