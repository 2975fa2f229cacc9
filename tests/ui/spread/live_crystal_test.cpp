#include "tests/support/live_rings.h"
#include "tests/support/screens.h"
#include "ui/spread/crystal_card.h"
#include "ui/spread/crystal_panel.h"
#include "ui/spread/live_crystal.h"
#include "ui/spread/spread_page.h"
#include "ui/theme/theme.h"

#include <QApplication>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QTest>
#include <QToolButton>

namespace ringhold::test {
namespace {

/// 1076 °C for that long after a drop, by no plan's rings.
LiveClimb heldFor(int minutes) {
    return LiveClimb({{0, 1100}, {180, 1280}, {195, 1076}, {195 + minutes, 1076}});
}

TEST(LiveCrystalTest, NoneWhileTheKilnClimbs) {
    const LiveClimb firing;
    EXPECT_FALSE(liveCrystal(const_cast<LiveClimb&>(firing).session()));
}

/// 60 µm/min at 1090 °C and half of that at 1030 °C: by the law of the bell about 57 at 1076 °C, so an hour
/// of it adds 3.4 mm of radius.
TEST(LiveCrystalTest, GrowsByTheRateOfItsTemperature) {
    auto hour = heldFor(60);
    auto two = heldFor(120);
    const auto one = liveCrystal(hour.session());
    const auto longer = liveCrystal(two.session());
    ASSERT_TRUE(one && longer);
    const double atHold = publishedGrowthRate().at_um_per_min(Temperature::fromCelsius(1076)) * 60 / 1000;
    EXPECT_NEAR(atHold, 3.4, 0.15);
    EXPECT_NEAR(longer->drawn.radius.likely_mm - one->drawn.radius.likely_mm, atHold, 0.35)
        << "looks were none, so the offset is only that of the prior";
    EXPECT_LT(one->drawn.radius.low_mm, one->drawn.radius.likely_mm / 2) << "published rates differ widely";
    EXPECT_TRUE(ringLines(*one, hour.preferences()).isEmpty());
}

TEST(LiveCrystalTest, GrowsByTheGlazesOwnRateOnceThatIsKnown) {
    auto firing = heldFor(60);
    GrowthRate own = publishedGrowthRate();
    own.best_um_per_min *= 2;
    own.basis = GrowthBasis::measured;
    own.pieces = 5;
    LiveCrystalModel model(firing.session());
    ASSERT_TRUE(model.crystal());
    const double published_mm = model.crystal()->drawn.radius.likely_mm;
    model.setRate(own);
    ASSERT_TRUE(model.crystal());
    EXPECT_NEAR(model.crystal()->drawn.radius.likely_mm, 2 * published_mm, 1e-6);
    EXPECT_EQ(model.crystal()->drawn.rate.basis, GrowthBasis::measured);
}

TEST(LiveCrystalTest, TellsEachRingAndWhenToDip) {
    LiveRings firing;
    const auto crystal = liveCrystal(firing.session());
    ASSERT_TRUE(crystal);
    const auto lines = ringLines(*crystal, firing.preferences());
    ASSERT_EQ(lines.size(), 1);
    const auto line = plainWords(lines[0]);
    EXPECT_EQ(line.rfind("Ring 1: about ", 0), 0U) << line;
    EXPECT_NE(line.find(" mm wide; "), std::string::npos) << line;
    EXPECT_NE(line.find(" min at 1 040 °C, then "), std::string::npos) << line;
    const Instant now = firing.session().now();
    EXPECT_EQ(
        dipLine(*crystal, 0.5, now, firing.preferences()).toStdString().rfind("Likely passed already", 0),
        0U);
    const auto farther = dipLine(*crystal, 4, now, firing.preferences()).toStdString();
    EXPECT_EQ(farther.rfind("A ring at 4 mm: ", 0), 0U) << farther;
    const auto never = dipLine(*crystal, 100, now, firing.preferences()).toStdString();
    EXPECT_NE(never.find("farther out than this plan’s crystal grows"), std::string::npos) << never;
}

TEST(LiveCrystalTest, AnExcursionHasItsRadius) {
    LiveClimb firing({{0, 1100},
                      {180, 1280},
                      {195, 1076},
                      {255, 1076},
                      {258, 1060},
                      {266, 1060},
                      {269, 1076},
                      {320, 1076}});
    firing.look(180, "9", 6);
    const auto crystal = liveCrystal(firing.session());
    ASSERT_TRUE(crystal);
    const auto lines = excursionLines(*crystal, firing.preferences());
    ASSERT_EQ(lines.size(), 1);
    const auto line = plainWords(lines[0]);
    EXPECT_EQ(line.rfind("The excursion to 1 060 °C at 16:2", 0), 0U) << line;
    EXPECT_NE(line.find(" mm out ("), std::string::npos) << line;
}

class GrowthPanelTest : public testing::Test {
  protected:
    GrowthPanelTest() {
        m_theme.wear(*static_cast<QApplication*>(QApplication::instance()));
        present(m_page, 1100, 760);
    }
    CrystalPanel& panel() { return *m_page.findChild<CrystalPanel*>(); }
    void unfold() {
        press(Qt::Key_G, Qt::AltModifier);
        ASSERT_TRUE(QTest::qWaitFor([&] { return panel().isVisible(); }, 2000));
    }

    LiveRings m_firing;
    Theme m_theme;
    SpreadPage m_page{m_firing.session(), m_firing.disk().notebook(), m_theme};
};

TEST_F(GrowthPanelTest, TheCardIsSeenAndUnfoldsByKey) {
    EXPECT_TRUE(m_page.findChild<CrystalCard*>()->isVisible());
    EXPECT_FALSE(panel().isVisible());
    unfold();
    auto& radius = *panel().findChild<QDoubleSpinBox*>();
    EXPECT_TRUE(radius.hasFocus());
    const auto figures = plainWords(panel().findChild<QLabel*>(QStringLiteral("crystalFigures"))->text());
    EXPECT_NE(figures.find("Ring 1: about "), std::string::npos) << figures;
    EXPECT_NE(figures.find("by published growth rates"), std::string::npos) << figures;
    keepScreens(m_page, m_theme, QStringLiteral("growth"));
    press(Qt::Key_Escape);
    EXPECT_FALSE(panel().isVisible());
}

TEST_F(GrowthPanelTest, AnswersTheRadiusTyped) {
    unfold();
    type(QStringLiteral("100"));
    press(Qt::Key_Return);
    const auto answer = panel().findChild<QLabel*>(QStringLiteral("dipAnswer"))->text();
    EXPECT_TRUE(answer.startsWith(QStringLiteral("A ring at 100 mm: "))) << answer.toStdString();
    EXPECT_TRUE(panel().isVisible()) << "Return folds nothing";
}

TEST_F(GrowthPanelTest, FoldsByAClickOnItsButton) {
    auto& card = *m_page.findChild<CrystalCard*>();
    auto* button = card.findChild<QToolButton*>();
    QTest::mouseClick(button, Qt::LeftButton);
    EXPECT_TRUE(panel().isVisible());
    QTest::mouseClick(button, Qt::LeftButton);
    EXPECT_FALSE(panel().isVisible());
}

} // namespace
} // namespace ringhold::test
