#include "tests/support/live_climb.h"
#include "tests/support/ring_firing.h"
#include "tests/support/screens.h"
#include "tests/support/silent_kiln.h"
#include "ui/alarm/live_alarms.h"
#include "ui/glance/glance_view.h"
#include "ui/theme/theme.h"

#include <QApplication>
#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

/// Up to 1262 °C, dropped, and 50 min into the hold at 1076 °C, a little under.
class HeldFiring : public LiveClimb {
  public:
    explicit HeldFiring(double held_C = 1075)
        : LiveClimb(std::vector<std::pair<int, double>>{
              {0, 1100}, {162, 1262}, {190, 1076}, {200, held_C}, {240, held_C}}) {
        look(162, "9", 6);
    }
};

TEST(GlanceWordsTest, TellAHold) {
    HeldFiring firing;
    LiveAlarms alarms(firing.disk().notebook());
    const auto words = glanceWords(firing.session(), alarms, firing.preferences());
    EXPECT_EQ(words.kiln, QStringLiteral("Heron"));
    EXPECT_EQ(plainWords(words.temperature), "1 075");
    EXPECT_TRUE(words.live);
    EXPECT_EQ(plainWords(words.state), "in band · 1 °C under");
    EXPECT_EQ(words.tone, GlanceTone::well);
    EXPECT_TRUE(plainWords(words.step).starts_with("hold 1 076 °C · ")) << words.step.toStdString();
    EXPECT_TRUE(words.step.endsWith(QStringLiteral(" of 3 h 00"))) << words.step.toStdString();
    EXPECT_TRUE(words.alarm.isEmpty());
    EXPECT_TRUE(spokenWords(words).endsWith(QStringLiteral("no alarm")));
}

TEST(GlanceWordsTest, TellThatTheBandIsLeft) {
    HeldFiring firing(1068);
    LiveAlarms alarms(firing.disk().notebook());
    const auto words = glanceWords(firing.session(), alarms, firing.preferences());
    EXPECT_EQ(plainWords(words.state), "out of band · 8 °C under");
    EXPECT_EQ(words.tone, GlanceTone::warning);
}

TEST(GlanceWordsTest, TellAnOldValueAsOld) {
    SilentKiln kiln;
    LiveAlarms alarms(kiln.notebook());
    kiln.waitMinutes(8);
    alarms.refresh();
    const auto words = glanceWords(kiln.session(), alarms, kiln.preferences());
    EXPECT_FALSE(words.live);
    EXPECT_EQ(words.state, QStringLiteral("not live"));
    EXPECT_TRUE(words.urgent);
    EXPECT_TRUE(words.alarm.startsWith(QStringLiteral("URGENT: Readings have stopped")))
        << words.alarm.toStdString();
    EXPECT_TRUE(words.age.contains(QStringLiteral("8 min")));
}

TEST(GlanceWordsTest, TellFahrenheitAsThePotterChose) {
    HeldFiring firing;
    ASSERT_TRUE(firing.preferences().setUnit(TemperatureUnit::fahrenheit).ok());
    LiveAlarms alarms(firing.disk().notebook());
    const auto words = glanceWords(firing.session(), alarms, firing.preferences());
    EXPECT_EQ(plainWords(words.temperature), "1 967");
    EXPECT_EQ(plainWords(words.state), "in band · 2 °F under");
}

TEST(GlanceWordsTest, CountTheRingDown) {
    RingFiring firing(147);
    LiveAlarms alarms(firing.disk().notebook());
    const auto words = glanceWords(firing.session(), alarms, firing.preferences());
    EXPECT_TRUE(words.step.startsWith(QStringLiteral("ring 1 of 2, low · "))) << words.step.toStdString();
}

class GlanceViewTest : public testing::Test {
  protected:
    GlanceViewTest() { theme.wear(*static_cast<QApplication*>(QApplication::instance())); }
    Theme theme;
};

TEST_F(GlanceViewTest, ShowsTheFigureInAThirdOfTheHeight) {
    HeldFiring firing;
    LiveAlarms alarms(firing.disk().notebook());
    GlanceView view(firing.disk().notebook(), alarms, theme);
    present(view, 1280, 800);
    ASSERT_EQ(view.words().size(), 1u);
    keepScreens(view, theme, QStringLiteral("glance-hold"));
    // ink, from the first row of the picture to the last that has it: the figure's height
    const auto picture = pictureOf(view, 1);
    int first = -1, last = -1;
    for (int y = 0; y < picture.height(); ++y)
        for (int x = 0; x < picture.width(); ++x)
            if (picture.pixelColor(x, y) == theme.palette().ink) {
                first = first < 0 ? y : first;
                last = y;
            }
    EXPECT_GT(last - first, 800 / 5) << "seen from five metres";
}

TEST_F(GlanceViewTest, ShowsAnAlarmOverItsWholeWidth) {
    SilentKiln kiln;
    LiveAlarms alarms(kiln.notebook());
    kiln.waitMinutes(8);
    GlanceView view(kiln.notebook(), alarms, theme);
    present(view, 1280, 800);
    keepScreens(view, theme, QStringLiteral("glance-urgent"));
    const auto picture = pictureOf(view, 1);
    EXPECT_EQ(picture.pixelColor(4, 790), theme.palette().warning);
    EXPECT_EQ(picture.pixelColor(1276, 790), theme.palette().warning);
    EXPECT_TRUE(view.accessibleDescription().contains(QStringLiteral("Readings have stopped")));
}

TEST_F(GlanceViewTest, GivesEachKilnAPart) {
    SilentKiln kiln;
    for (const char* name : {"Wren", "Snipe"}) {
        NewFiring firing;
        firing.kiln = kiln.disk().addKiln(name);
        ASSERT_TRUE(kiln.notebook().begin(firing).ok());
    }
    ASSERT_TRUE(kiln.notebook()
                    .sessions()
                    .back()
                    ->firing()
                    .writeReading(kiln.disk().clock().now(), Temperature::fromCelsius(640))
                    .ok());
    LiveAlarms alarms(kiln.notebook());
    GlanceView view(kiln.notebook(), alarms, theme);
    present(view, 1280, 800);
    ASSERT_EQ(view.words().size(), 3u);
    EXPECT_EQ(view.words()[2].temperature, QStringLiteral("640"));
    EXPECT_EQ(view.words()[1].temperature, QStringLiteral("–"));
    keepScreens(view, theme, QStringLiteral("glance-three"));
}

TEST_F(GlanceViewTest, SaysThatNothingIsFired) {
    NotebookOnDisk disk;
    LiveAlarms alarms(disk.notebook());
    GlanceView view(disk.notebook(), alarms, theme);
    present(view, 1280, 800);
    EXPECT_TRUE(view.words().empty());
    keepScreens(view, theme, QStringLiteral("glance-none"));
}

} // namespace
} // namespace ringhold::test
