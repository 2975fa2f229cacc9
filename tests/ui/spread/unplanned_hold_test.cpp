// A hold that no plan tells, as card, glance view, strip and menu tell it.
#include "tests/support/live_climb.h"
#include "ui/alarm/live_alarms.h"
#include "ui/glance/glance_words.h"
#include "ui/spread/card_words.h"
#include "ui/spread/strip_words.h"
#include "ui/theme/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QMenu>
#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

/// Dropped from its peak, then an hour at 1076 °C; no plan, and nobody wrote that a cone was down.
class HeldWithoutPlan : public LiveClimb {
  public:
    HeldWithoutPlan() : LiveClimb({{0, 1100}, {162, 1262}, {190, 1076}, {250, 1076}}, std::nullopt) {}
};

std::string allOf(const CardWords& words) {
    return plainWords(words.lines.join(QLatin1Char('\n')));
}

TEST(UnplannedHoldTest, IsTheCard) {
    HeldWithoutPlan firing;
    const auto words = cardWords(firing.session(), firing.preferences());
    EXPECT_EQ(plainWords(words.title), "Hold 1 076 °C");
    EXPECT_EQ(plainWords(words.main).rfind("mean 1 076", 0), 0U) << plainWords(words.main);
    EXPECT_EQ(allOf(words).rfind("1 h 0", 0), 0U) << "no length is planned: " << allOf(words);
    EXPECT_NE(
        allOf(words).find("Nobody told this hold: alarms about it stay quiet until “hold: 1076 ± 6 °C”"),
        std::string::npos)
        << allOf(words);
}

TEST(UnplannedHoldTest, IsALineWhileTheConeIsStillToGoDown) {
    LiveClimb firing({{0, 1100}, {130, 1230}, {170, 1230}}, std::nullopt);
    const auto words = cardWords(firing.session(), firing.preferences());
    EXPECT_EQ(words.title, QStringLiteral("Heat work"));
    EXPECT_NE(allOf(words).find("Steady at 1 230 °C for 4"), std::string::npos) << allOf(words);
    EXPECT_FALSE(firing.session().watch().holdToKeep());
    firing.look(170, "9", 6);
    EXPECT_TRUE(firing.session().watch().holdToKeep());
}

TEST(UnplannedHoldTest, IsToldInGlanceViewAndStrip) {
    HeldWithoutPlan firing;
    LiveAlarms alarms(firing.disk().notebook());
    const auto glance = glanceWords(firing.session(), alarms, firing.preferences());
    EXPECT_EQ(plainWords(glance.step).rfind("hold 1 076 °C · 1 h 0", 0), 0U) << plainWords(glance.step);
    EXPECT_EQ(plainWords(glance.state), "in band");
    const auto strip = stripWords(firing.session(), firing.preferences());
    EXPECT_EQ(plainWords(strip.step), "hold 1 076 °C");
    EXPECT_EQ(plainWords(strip.stepLeft).rfind("for 1 h 0", 0), 0U);
    firing.disk().clock().set(firing.disk().clock().now() + std::chrono::hours(5));
    EXPECT_EQ(stripWords(firing.session(), firing.preferences()).stepLeft, strip.stepLeft)
        << "how it went on without readings nobody knows";
}

class UnplannedHoldInWindow : public testing::Test {
  protected:
    UnplannedHoldInWindow() : window(firing.disk().notebook(), theme) {
        theme.wear(*static_cast<QApplication*>(QApplication::instance()));
        present(window, 1280, 800);
    }
    QList<QAction*> bands() {
        for (auto* menu : window.findChildren<QMenu*>())
            if (menu->title() == QStringLiteral("The &hold’s band")) {
                Q_EMIT menu->aboutToShow();
                return menu->actions();
            }
        return {};
    }
    QAction* band(const std::string& words) {
        for (auto* action : bands())
            if (action->text().toStdString() == words)
                return action;
        return nullptr;
    }

    HeldWithoutPlan firing;
    Theme theme;
    MainWindow window;
};

TEST_F(UnplannedHoldInWindow, TakesItsBandFromTheMenu) {
    auto* narrow = band("1076 ± 3 °C");
    ASSERT_TRUE(narrow);
    EXPECT_FALSE(narrow->isChecked());
    narrow->trigger();
    const auto& settings = firing.session().record().settings;
    ASSERT_EQ(settings.size(), 1u);
    EXPECT_EQ(settings[0].what, "hold");
    EXPECT_EQ(settings[0].value, "1076 ± 3 °C");
    const auto& hold = firing.session().watch().holdUnderWay();
    ASSERT_TRUE(hold);
    EXPECT_EQ(hold->source, HoldSource::potter);
    EXPECT_EQ(hold->band.halfWidth.celsius(), 3);
    ASSERT_TRUE(band("1076 ± 3 °C"));
    EXPECT_TRUE(band("1076 ± 3 °C")->isChecked());
    const auto words = cardWords(firing.session(), firing.preferences());
    EXPECT_EQ(allOf(words).find("Nobody told"), std::string::npos);
    bands().back()->trigger(); // over
    EXPECT_FALSE(firing.session().watch().holdUnderWay());
}

} // namespace
} // namespace ringhold::test
