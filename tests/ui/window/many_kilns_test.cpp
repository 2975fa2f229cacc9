// Two firings in one window: which is shown, and how the potter goes from one to the other.
#include "tests/support/notebook_on_disk.h"
#include "tests/support/screens.h"
#include "ui/spread/spread_page.h"
#include "ui/spread/strip.h"
#include "ui/theme/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QComboBox>
#include <QPushButton>
#include <QTest>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

/// Counts windows that come up. What is shown before it has its place in the page would flash up as one and
/// take the keyboard away.
class WindowsShown : public QObject {
  public:
    WindowsShown() { qApp->installEventFilter(this); }
    int count() const { return m_count; }

  private:
    bool eventFilter(QObject* object, QEvent* event) override {
        if (object->isWindowType() && event->type() == QEvent::Show)
            ++m_count;
        return false;
    }
    int m_count = 0;
};

class ManyKilns : public testing::Test {
  protected:
    ManyKilns() : window(disk.notebook(), theme) {
        theme.wear(*static_cast<QApplication*>(QApplication::instance()));
        test::present(window, 1280, 800);
        begin("Heron", 1180);
        begin("Wren", 640);
        QCoreApplication::processEvents(); // layouts show what was added to them
    }

    void begin(const char* kiln, double degrees) {
        NewFiring firing;
        firing.kiln = disk.addKiln(kiln);
        firing.title = QStringLiteral("frost");
        ASSERT_TRUE(disk->begin(firing).ok());
        auto& live = disk->sessions().back()->firing();
        ASSERT_TRUE(live.writeReading(disk.clock().now(), Temperature::fromCelsius(degrees)).ok());
    }

    FiringSession& session(std::size_t i) { return *disk->sessions()[i]; }
    bool shows(std::size_t i) const { return window.spreadOf(*disk.notebook().sessions()[i])->isVisible(); }
    Strip* strip(std::size_t i) {
        for (auto* strip : window.findChildren<Strip*>())
            if (strip->words().firing.startsWith(QString::fromStdString(session(i).record().kiln.name)))
                return strip;
        return nullptr;
    }
    void key(int key, Qt::KeyboardModifiers modifiers) {
        QTest::keyClick(&window, static_cast<Qt::Key>(key), modifiers);
    }

    mutable test::NotebookOnDisk disk;
    Theme theme;
    MainWindow window;
};

TEST_F(ManyKilns, TheNewestIsShownAndItsStripIsMarked) {
    EXPECT_TRUE(shows(1));
    EXPECT_EQ(strip(1)->standing(), Strip::Standing::shown);
    EXPECT_EQ(strip(0)->standing(), Strip::Standing::beside);
    EXPECT_TRUE(strip(1)->accessibleName().contains(QStringLiteral("shown")));
    EXPECT_TRUE(strip(0)->isVisible());
    EXPECT_LT(strip(0)->height(), strip(1)->height());
    keepScreens(window, theme, QStringLiteral("two-kilns"));
}

TEST_F(ManyKilns, AClickOnAStripShowsItsFiringFromAnyPage) {
    window.open(QStringLiteral("Glazes"));
    QTest::mouseClick(strip(0), Qt::LeftButton);
    EXPECT_TRUE(shows(0));
    EXPECT_FALSE(shows(1));
    EXPECT_EQ(strip(0)->standing(), Strip::Standing::shown);
}

TEST_F(ManyKilns, KeysGoRoundAndStraightThere) {
    key(Qt::Key_Tab, Qt::ControlModifier);
    EXPECT_TRUE(shows(0));
    key(Qt::Key_Tab, Qt::ControlModifier);
    EXPECT_TRUE(shows(1));
    key(Qt::Key_1, Qt::ControlModifier);
    EXPECT_TRUE(shows(0));
    key(Qt::Key_9, Qt::ControlModifier);
    EXPECT_TRUE(shows(0)) << "there is no ninth";
    key(Qt::Key_2, Qt::ControlModifier);
    EXPECT_TRUE(shows(1));
    strip(0)->setFocus();
    QTest::keyClick(strip(0), Qt::Key_Space);
    EXPECT_TRUE(shows(0));
}

TEST_F(ManyKilns, LinesAreForTheFiringThatIsShown) {
    key(Qt::Key_1, Qt::ControlModifier);
    key(Qt::Key_N, Qt::AltModifier);
    test::type(QStringLiteral("Damper in."));
    test::press(Qt::Key_Return);
    EXPECT_EQ(session(0).record().notes.size(), 1u);
    EXPECT_TRUE(session(1).record().notes.empty());
}

TEST_F(ManyKilns, ANewFiringBeginsWhileOthersAreLive) {
    disk.addKiln("Snipe");
    Q_EMIT disk->bookChanged();
    key(Qt::Key_N, Qt::ControlModifier);
    EXPECT_FALSE(shows(0) || shows(1));
    for (auto* kilns : window.findChildren<QComboBox*>())
        if (kilns->accessibleName() == QStringLiteral("Kiln") && kilns->isVisible())
            kilns->setCurrentText(QStringLiteral("Snipe"));
    for (auto* button : window.findChildren<QPushButton*>())
        if (button->text() == QStringLiteral("Begin the firing"))
            QTest::mouseClick(button, Qt::LeftButton);
    ASSERT_EQ(disk->sessions().size(), 3u);
    EXPECT_EQ(session(2).record().kiln.name, "Snipe");
    EXPECT_TRUE(shows(2));
}

TEST_F(ManyKilns, BeginningAFiringBringsUpNoWindow) {
    const WindowsShown shown;
    begin("Snipe", 20);
    QCoreApplication::processEvents();
    EXPECT_EQ(shown.count(), 0);
    EXPECT_TRUE(window.isActiveWindow());
}

TEST_F(ManyKilns, WhenOneEndsTheOtherIsShownAlone) {
    ASSERT_TRUE(disk->end(session(1)).ok());
    ASSERT_EQ(disk->sessions().size(), 1u);
    EXPECT_TRUE(shows(0));
    EXPECT_EQ(strip(0)->standing(), Strip::Standing::alone);
}

} // namespace
} // namespace ringhold
