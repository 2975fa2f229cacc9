// A look through the spyhole from the window, and back.
#include "tests/support/notebook_on_disk.h"
#include "ui/common/key_hint.h"
#include "ui/spread/spread_page.h"
#include "ui/spyhole/spyhole_page.h"
#include "ui/theme/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QTest>
#include <gtest/gtest.h>

#include <algorithm>

namespace ringhold {
namespace {

class SpyholeInWindow : public testing::Test {
  protected:
    SpyholeInWindow() : window(disk.notebook(), theme) {
        test::present(window, 1280, 800);
        NewFiring firing;
        firing.kiln = disk.addKiln("Heron");
        firing.packs = {{{}, {}, "middle shelf", ConeType::selfSupporting, {"8", "9", "10"}, false}};
        EXPECT_TRUE(disk->begin(firing).ok());
        for (int minute = 0; minute <= 30; minute += 10)
            EXPECT_TRUE(session()
                            .firing()
                            .writeReading(began + std::chrono::minutes(minute),
                                          Temperature::fromCelsius(1180 + minute))
                            .ok());
        disk.clock().set(began + std::chrono::minutes(31));
    }

    FiringSession& session() { return *disk->sessions().front(); }
    SpyholePage* page() const { return window.findChild<SpyholePage*>(); }
    bool looking() const { return page() && page()->isVisible(); }
    void alt(Qt::Key key) { QTest::keyClick(&window, key, Qt::AltModifier); }

    test::NotebookOnDisk disk;
    Theme theme;
    MainWindow window;
    Instant began = disk.clock().now();
};

TEST_F(SpyholeInWindow, WritesALookAndComesBackToTheSpread) {
    EXPECT_FALSE(looking());
    alt(Qt::Key_L);
    ASSERT_TRUE(looking());
    test::type(QStringLiteral("8 2.5"));
    test::press(Qt::Key_Return);
    ASSERT_EQ(session().record().looks.size(), 1u);
    EXPECT_DOUBLE_EQ(session().record().looks.front().hour, 2.5);
    EXPECT_FALSE(looking());
    EXPECT_TRUE(window.spreadOf(session())->isVisible());
}

TEST_F(SpyholeInWindow, KeepsWhatWasEnteredWhileAnotherLineIsWritten) {
    alt(Qt::Key_L);
    test::type(QStringLiteral("8 2"));
    alt(Qt::Key_N);
    EXPECT_FALSE(looking());
    EXPECT_TRUE(window.spreadOf(session())->isVisible());
    alt(Qt::Key_L);
    ASSERT_TRUE(looking());
    EXPECT_EQ(page()->model().entered(0), 2);
    test::press(Qt::Key_Escape);
    EXPECT_FALSE(looking());
    EXPECT_TRUE(session().record().looks.empty());
}

TEST_F(SpyholeInWindow, IsOpenedByTheHintBelowTheSpread) {
    const auto hints = window.findChildren<KeyHint*>();
    const auto look = std::ranges::find(hints, QStringLiteral("spyhole"), &KeyHint::text);
    ASSERT_NE(look, hints.end());
    QTest::mouseClick(*look, Qt::LeftButton);
    EXPECT_TRUE(looking());
}

TEST_F(SpyholeInWindow, BelongsToTheFiringThatIsShown) {
    NewFiring other;
    other.kiln = disk.addKiln("Wren");
    other.packs = {{{}, {}, "top shelf", ConeType::selfSupporting, {"6", "7"}, false}};
    ASSERT_TRUE(disk->begin(other).ok());
    alt(Qt::Key_L);
    const auto pages = window.findChildren<SpyholePage*>();
    const auto shown = std::ranges::find_if(pages, &SpyholePage::isVisible);
    ASSERT_NE(shown, pages.end());
    const auto* firing = &(*shown)->session();
    for (const auto key : {Qt::Key_L, Qt::Key_N, Qt::Key_L}) { // there and back
        alt(key);
        EXPECT_EQ((*shown)->isVisible(), key == Qt::Key_L);
        EXPECT_EQ(window.spreadOf(*firing)->isVisible(), key == Qt::Key_N);
    }
}

TEST_F(SpyholeInWindow, IsGoneWithItsFiring) {
    alt(Qt::Key_L);
    ASSERT_TRUE(looking());
    ASSERT_TRUE(disk->end(session()).ok());
    EXPECT_EQ(page(), nullptr);
}

} // namespace
} // namespace ringhold
