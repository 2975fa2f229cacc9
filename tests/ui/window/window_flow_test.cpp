// From an empty book to a firing written by hand, through the window alone.
#include "tests/support/notebook_on_disk.h"
#include "tests/support/screens.h"
#include "ui/spread/log_model.h"
#include "ui/spread/log_view.h"
#include "ui/spread/spread_page.h"
#include "ui/spread/strip.h"
#include "ui/theme/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QComboBox>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTest>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

template <class T>
T* named(QWidget& parent, const char* accessibleName) {
    for (auto* child : parent.findChildren<T*>())
        if (child->accessibleName() == QLatin1String(accessibleName))
            return child;
    return nullptr;
}

QPushButton* button(QWidget& parent, const QString& words) {
    for (auto* child : parent.findChildren<QPushButton*>())
        if (child->text() == words)
            return child;
    return nullptr;
}

class WindowFlow : public testing::Test {
  protected:
    WindowFlow() : window(disk.notebook(), theme) {
        theme.wear(*static_cast<QApplication*>(QApplication::instance()));
        test::present(window, 1280, 800);
    }

    void begin() {
        named<QComboBox>(window, "Kiln")->setCurrentText(QStringLiteral("Heron"));
        named<QComboBox>(window, "Probe")->setCurrentText(QStringLiteral("spyhole side"));
        named<QPlainTextEdit>(window, "Pieces, one a line: name; glaze; shelf")
            ->setPlainText(QStringLiteral("tall bottle; frost; middle\nbowl; lichen; middle"));
        QTest::mouseClick(button(window, QStringLiteral("Begin the firing")), Qt::LeftButton);
    }

    /// Writes a line some minutes into the firing.
    void write(int minute, const QString& text) {
        disk.clock().set(began + std::chrono::minutes(minute));
        auto* line = named<QLineEdit>(window, "Writing line");
        line->setFocus();
        line->setText(text);
        Q_EMIT line->textEdited(text);
        QTest::keyClick(line, Qt::Key_Return);
    }

    FiringSession& session() { return *disk.notebook().sessions().front(); }

    test::NotebookOnDisk disk;
    Theme theme;
    MainWindow window;
    Instant began = disk.clock().now();
};

TEST_F(WindowFlow, AFiringByHandFromAnEmptyBook) {
    begin();
    ASSERT_EQ(disk.notebook().sessions().size(), 1u);
    EXPECT_EQ(session().record().pieces.size(), 2u);
    ASSERT_EQ(session().record().packs.size(), 1u);
    ASSERT_EQ(session().record().probes.size(), 1u);

    write(0, QStringLiteral("20"));
    EXPECT_EQ(session().record().readings.size(), 0u); // two figures alone are a note
    EXPECT_EQ(session().record().notes.size(), 1u);
    write(0, QStringLiteral("20 C"));
    for (int minute = 30; minute <= 390; minute += 30)
        write(minute, QString::number(20 + minute * 3));
    for (int minute = 400; minute <= 430; minute += 10)
        write(minute, QString::number(1190 + (minute - 390)));
    EXPECT_EQ(session().firing().controlCurve().size(), 18u);
    EXPECT_EQ(named<QLineEdit>(window, "Writing line")->text(), QString());

    const auto before = session().forecast();
    ASSERT_TRUE(before);
    write(432, QStringLiteral("8 3"));
    ASSERT_EQ(session().record().looks.size(), 1u);
    ASSERT_TRUE(session().forecast());
    EXPECT_LT(session().forecast()->packs[0].offsetSd, before->packs[0].offsetSd);
    keepScreens(window, theme, QStringLiteral("spread-by-hand"));

    // everything is in the book, not only on screen
    const auto whole = disk.notebook().reader().whole(session().record().firing.id);
    ASSERT_TRUE(whole.ok());
    EXPECT_EQ(whole->readings.size(), 18u);
    EXPECT_EQ(whole->looks.size(), 1u);
    EXPECT_EQ(whole->notes.size(), 1u);
}

TEST_F(WindowFlow, ABadLineIsSaidAndStays) {
    begin();
    auto* spread = window.spreadOf(session());
    ASSERT_TRUE(spread);
    spread->beginWriting(LineKind::reading);
    auto* line = named<QLineEdit>(window, "Writing line");
    QTest::keyClicks(line, QStringLiteral("6000"));
    QTest::keyClick(line, Qt::Key_Return);
    EXPECT_EQ(line->text(), QStringLiteral("6000"));
    EXPECT_TRUE(session().record().readings.empty());
    QTest::keyClick(line, Qt::Key_Escape);
    EXPECT_TRUE(line->text().isEmpty());
}

TEST_F(WindowFlow, OneKeyWritesThatTheFiringConeIsDownAndUndoStrikesIt) {
    begin();
    for (int minute = 0; minute <= 40; minute += 10)
        write(minute, QString::number(1200 + minute) + QStringLiteral(" C"));
    disk.clock().set(began + std::chrono::minutes(42));
    window.open(QStringLiteral("Kilns"));
    QTest::keyClick(&window, Qt::Key_D, Qt::AltModifier);
    ASSERT_EQ(session().record().looks.size(), 1u);
    const auto& look = session().record().looks[0];
    EXPECT_EQ(look.hour, 6);
    EXPECT_EQ(look.at, began + std::chrono::minutes(42));
    EXPECT_TRUE(window.spreadOf(session())->isVisible());
    auto* line = named<QLineEdit>(window, "Writing line");
    QTest::keyClick(line, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(session().record().looks[0].struck);
}

TEST_F(WindowFlow, UndoStrikesTheLastLineAndItStaysReadable) {
    begin();
    write(1, QStringLiteral("Vent fan on."));
    auto* line = named<QLineEdit>(window, "Writing line");
    QTest::keyClick(line, Qt::Key_Z, Qt::ControlModifier);
    ASSERT_EQ(session().record().notes.size(), 1u);
    EXPECT_TRUE(session().record().notes[0].struck);
    const auto* log = window.spreadOf(session())->findChild<LogView*>();
    ASSERT_EQ(log->model()->rowCount(), 1);
    EXPECT_TRUE(log->model()->index(0, 0).data(LogModel::StruckRole).toBool());
}

TEST_F(WindowFlow, AConeDownLookMovesThePlanOnAndStrikingItPutsItBack) {
    begin();
    ASSERT_TRUE(session().follower());
    for (int minute = 0; minute <= 800; minute += 50)
        write(minute, QStringLiteral("%1 C").arg(std::min(1262, 20 + minute * 2)));
    const auto waiting = session().follower()->position();
    ASSERT_TRUE(waiting);
    ASSERT_TRUE(std::holds_alternative<ConeWait>(session().follower()->plan().steps[waiting->step]));
    write(801, QStringLiteral("9 down"));
    EXPECT_EQ(session().follower()->position()->step, waiting->step + 1) << "at once, by no reading yet";
    write(802, QStringLiteral("1255 C"));
    EXPECT_EQ(session().follower()->position()->step, waiting->step + 1);
    ASSERT_TRUE(session().firing().strike(session().record().looks[0].id, disk.clock().now()).ok());
    EXPECT_EQ(session().follower()->position()->step, waiting->step);
}

TEST_F(WindowFlow, AnOldReadingIsShownAsOld) {
    begin();
    write(1, QStringLiteral("400"));
    const auto* strip = window.findChild<Strip*>();
    ASSERT_TRUE(strip);
    EXPECT_EQ(strip->words().freshness, Freshness::live);
    disk.clock().set(began + std::chrono::minutes(90));
    const auto words = stripWords(session(), disk.notebook().preferences());
    EXPECT_EQ(words.freshness, Freshness::stale);
    EXPECT_TRUE(words.age.contains(QStringLiteral("no longer live"))) << words.age.toStdString();
}

TEST_F(WindowFlow, EndingFilesTheOffsetForTheNextFiring) {
    begin();
    for (int minute = 0; minute <= 600; minute += 60)
        write(minute, QStringLiteral("%1 C").arg(20 + minute * 2));
    write(620, QStringLiteral("1240 C"));
    write(627, QStringLiteral("1247 C"));
    write(627, QStringLiteral("8 2"));
    const auto kiln = session().record().kiln.id;
    ASSERT_TRUE(disk.notebook().end(session()).ok());
    EXPECT_TRUE(disk.notebook().sessions().empty());
    const auto filed = disk.notebook().reader().filedOffsets(kiln);
    ASSERT_TRUE(filed.ok());
    ASSERT_EQ(filed->size(), 1u);
    EXPECT_LT(filed->front().sd.celsius(), 6);
}

TEST_F(WindowFlow, EveryControlHasAName) {
    begin();
    int checked = 0;
    for (const auto* widget : window.findChildren<QWidget*>()) {
        const bool control =
            qobject_cast<const QLineEdit*>(widget) || qobject_cast<const QComboBox*>(widget) ||
            qobject_cast<const QAbstractButton*>(widget) || qobject_cast<const QAbstractItemView*>(widget);
        if (!control || widget->isHidden() || widget->focusPolicy() == Qt::NoFocus ||
            widget->objectName().startsWith(QLatin1String("qt_")) ||
            (qobject_cast<const QAbstractItemView*>(widget) && widget->inherits("QComboBoxListView")) ||
            qobject_cast<const QComboBox*>(widget->parentWidget()))
            continue;
        const auto* pressed = qobject_cast<const QAbstractButton*>(widget);
        const QString words =
            widget->accessibleName().isEmpty() && pressed ? pressed->text() : widget->accessibleName();
        EXPECT_FALSE(words.isEmpty()) << widget->metaObject()->className() << " in "
                                      << widget->parentWidget()->metaObject()->className();
        ++checked;
    }
    EXPECT_GT(checked, 15);
}

} // namespace
} // namespace ringhold
