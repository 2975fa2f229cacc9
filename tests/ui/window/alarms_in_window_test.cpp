// Alarms as the potter meets them: bar, keys, curtain, quiet hours, the trial of the sound.
#include "tests/support/screens.h"
#include "tests/support/silent_kiln.h"
#include "ui/alarm/alarm_bar.h"
#include "ui/alarm/alarm_curtain.h"
#include "ui/alarm/alarm_list.h"
#include "ui/alarm/quiet_bar.h"
#include "ui/alarm/sound_trial.h"
#include "ui/alarm/window_flash.h"
#include "ui/glance/glance_view.h"
#include "ui/spread/spread_page.h"
#include "ui/spread/strip.h"
#include "ui/theme/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QMenuBar>
#include <QPushButton>
#include <QTest>
#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

class AlarmsInWindow : public testing::Test {
  protected:
    AlarmsInWindow() : window(kiln.notebook(), theme, &sounder) {
        theme.wear(*static_cast<QApplication*>(QApplication::instance()));
        present(window, 1280, 800);
    }

    template <class T>
    T* part() {
        return window.findChild<T*>();
    }
    QPushButton* button(QWidget* in, const QString& beginning) {
        for (auto* found : in->findChildren<QPushButton*>())
            if (found->text().startsWith(beginning))
                return found;
        return nullptr;
    }
    QMenu* menu(const QString& title) {
        for (auto* found : window.findChildren<QMenu*>())
            if (found->title() == title)
                return found;
        return nullptr;
    }
    QAction* action(QMenu* in, const QString& words) {
        Q_EMIT in->aboutToShow();
        for (auto* found : in->actions())
            if (found->text() == words)
                return found;
        return nullptr;
    }
    void key(int key) { QTest::keyClick(&window, static_cast<Qt::Key>(key)); }
    const Alarm& alarm() { return kiln.session().alarms().alarms().front(); }
    /// Until the silence has come to the stage of the full window.
    void toTheCurtain() {
        kiln.waitMinutes(6);
        kiln.waitMinutes(2);
    }

    SilentKiln kiln;
    Theme theme;
    WritingSounder sounder;
    MainWindow window;
};

TEST_F(AlarmsInWindow, AnAlarmIsSeenFromEveryPage) {
    auto* bar = part<AlarmBar>();
    EXPECT_FALSE(bar->isVisible());
    kiln.waitMinutes(3);
    for (const auto& spread : window.spreads()) {
        window.open(spread);
        EXPECT_TRUE(bar->isVisible()) << spread.toStdString();
    }
    const auto words = bar->words();
    for (const char* wanted :
         {"WARNING", "Readings have stopped", "Heron", "since 13:03", "Nothing for 3 min"})
        EXPECT_TRUE(words.contains(QLatin1String(wanted))) << wanted << " in " << words.toStdString();
    EXPECT_EQ(part<Strip>()->words().trouble, QStringLiteral("Alarm: Readings have stopped"));
    window.open(QStringLiteral("Firing"));
    keepScreens(window, theme, QStringLiteral("alarm-bar"));
}

TEST_F(AlarmsInWindow, OneClickOrKeyAnswersIt) {
    kiln.waitMinutes(3);
    QTest::mouseClick(button(part<AlarmBar>(), QStringLiteral("Acknowledge")), Qt::LeftButton);
    EXPECT_TRUE(alarm().acknowledged);
    EXPECT_TRUE(part<AlarmBar>()->isVisible()) << "it goes on";
    EXPECT_TRUE(
        part<AlarmBar>()->words().startsWith(QStringLiteral("Acknowledged, goes on: Readings have stopped")))
        << part<AlarmBar>()->words().toStdString();
    kiln.waitMinutes(4);
    EXPECT_FALSE(alarm().acknowledged) << "urgent now, so it calls anew";
    key(Qt::Key_F8);
    EXPECT_TRUE(alarm().acknowledged);
}

TEST_F(AlarmsInWindow, TheListComesByKey) {
    EXPECT_FALSE(part<AlarmList>()->isVisible());
    key(Qt::Key_F9);
    EXPECT_TRUE(part<AlarmList>()->isVisible());
}

TEST_F(AlarmsInWindow, TheCurtainFallsAndIsNotAnsweredByTyping) {
    window.spreadOf(kiln.session())->beginWriting(LineKind::note);
    type(QStringLiteral("Wadd"));
    auto* line = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    ASSERT_TRUE(line);
    auto* curtain = part<AlarmCurtain>();
    kiln.waitMinutes(6);
    EXPECT_FALSE(curtain->isVisible());
    kiln.waitMinutes(2);
    ASSERT_TRUE(curtain->isVisible());
    EXPECT_EQ(curtain->size(), window.size());
    keepScreens(window, theme, QStringLiteral("alarm-curtain"));
    type(QStringLiteral("ing o n"));
    press(Qt::Key_Space);
    press(Qt::Key_Return);
    EXPECT_FALSE(alarm().acknowledged);
    EXPECT_TRUE(curtain->isVisible());
    EXPECT_EQ(line->text(), QStringLiteral("Wadd")) << "what was begun stays";
    press(Qt::Key_Escape);
    EXPECT_FALSE(curtain->isVisible());
    EXPECT_FALSE(alarm().acknowledged) << "put aside is not answered";
    EXPECT_EQ(QApplication::focusWidget(), line);
}

TEST_F(AlarmsInWindow, TheCurtainIsAnsweredByF8) {
    toTheCurtain();
    ASSERT_TRUE(part<AlarmCurtain>()->isVisible());
    key(Qt::Key_F8);
    EXPECT_TRUE(alarm().acknowledged);
    EXPECT_FALSE(part<AlarmCurtain>()->isVisible());
}

TEST_F(AlarmsInWindow, QuietIsChosenSaidAndEnded) {
    EXPECT_FALSE(part<QuietBar>()->isVisible());
    action(menu(QStringLiteral("&Quiet, but for urgent ones")), QStringLiteral("for 4 hours"))->trigger();
    auto* bar = part<QuietBar>();
    ASSERT_TRUE(bar->isVisible());
    EXPECT_TRUE(bar->findChild<QLabel*>()->text().contains(QStringLiteral("17:00")));
    const auto before = sounder.played.size();
    kiln.waitMinutes(3);
    EXPECT_EQ(sounder.played.size(), before);
    EXPECT_TRUE(part<AlarmBar>()->isVisible());
    QTest::mouseClick(button(bar, QStringLiteral("Sound again")), Qt::LeftButton);
    EXPECT_FALSE(bar->isVisible());
    EXPECT_EQ(sounder.played.size(), before + 1);
}

TEST_F(AlarmsInWindow, TheSoundIsTriedAtTheStartAndTheAnswerIsALine) {
    auto* trial = part<SoundTrial>();
    ASSERT_TRUE(trial->isVisible());
    EXPECT_EQ(sounder.played, std::vector<Sound>{Sound::call});
    EXPECT_EQ(trial->findChild<QLabel*>()->text(),
              QStringLiteral("An alarm has just sounded. Did you hear it?"));
    keepScreens(window, theme, QStringLiteral("sound-trial"));
    QTest::mouseClick(button(trial, QStringLiteral("Play")), Qt::LeftButton);
    EXPECT_EQ(sounder.played.size(), 2u);
    QTest::mouseClick(button(trial, QStringLiteral("No")), Qt::LeftButton);
    EXPECT_FALSE(trial->isVisible());
    const auto events = kiln.notebook().reader().events(kiln.session().record().firing.id);
    ASSERT_TRUE(events.ok());
    ASSERT_FALSE(events->empty());
    EXPECT_EQ(events->back().kind, "alarm sound");
    EXPECT_EQ(events->back().detail, "not heard, the window flashes too");
    kiln.waitMinutes(3);
    EXPECT_TRUE(part<WindowFlash>()->flashing()) << "nobody hears it, so it is shown";

    Theme other;
    MainWindow again(kiln.notebook(), other, &sounder);
    EXPECT_TRUE(again.findChild<SoundTrial*>()->isHidden()) << "asked once a firing";
}

TEST(AlarmsWithoutSound, FlashTheWindowAndSaySo) {
    SilentKiln kiln;
    Theme theme;
    MainWindow window(kiln.notebook(), theme);
    present(window, 1280, 800);
    auto* trial = window.findChild<SoundTrial*>();
    EXPECT_TRUE(trial->findChild<QLabel*>()->text().startsWith(QStringLiteral("This computer has no sound")));
    auto* flash = window.findChild<WindowFlash*>();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !flash->flashing(); }, 10000));
    kiln.waitMinutes(3);
    EXPECT_TRUE(flash->flashing());
}

TEST_F(AlarmsInWindow, AttendanceIsChosenFromTheMenu) {
    auto* choices = menu(QStringLiteral("&Nobody at the kiln"));
    action(choices, QStringLiteral("say so after 30 min"))->trigger();
    EXPECT_EQ(kiln.preferences().attendanceInterval(), std::optional<Duration>(std::chrono::minutes(30)));
    EXPECT_TRUE(action(choices, QStringLiteral("say so after 30 min"))->isChecked());
    action(choices, QStringLiteral("say nothing"))->trigger();
    EXPECT_FALSE(kiln.preferences().attendanceInterval());
}

TEST_F(AlarmsInWindow, TheStepIsCorrectedFromTheMenu) {
    auto* steps = menu(QStringLiteral("The kiln is in &step"));
    Q_EMIT steps->aboutToShow();
    ASSERT_EQ(steps->actions().size(), 4); // three steps, and the end
    EXPECT_TRUE(steps->actions()[0]->isChecked());
    steps->actions()[1]->trigger();
    ASSERT_EQ(kiln.session().record().stepCorrections.size(), 1u);
    EXPECT_EQ(kiln.session().record().stepCorrections[0].step, 1u);
    EXPECT_EQ(kiln.session().follower()->position()->step, 1u);
}

TEST_F(AlarmsInWindow, GlanceComesAndGoesByOneKey) {
    key(Qt::Key_F11);
    auto* glance = part<GlanceView>();
    ASSERT_TRUE(glance->isVisible());
    EXPECT_TRUE(glance->isFullScreen());
    ASSERT_EQ(glance->words().size(), 1u);
    QTest::keyClick(glance, Qt::Key_F11);
    EXPECT_FALSE(glance->isVisible());
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    key(Qt::Key_F11);
    ASSERT_TRUE(glance->isVisible());
    QTest::keyClick(glance, Qt::Key_Escape);
    EXPECT_FALSE(glance->isVisible());
}

TEST_F(AlarmsInWindow, GlanceAnswersByF8) {
    key(Qt::Key_F11);
    kiln.waitMinutes(3);
    auto* glance = part<GlanceView>();
    EXPECT_TRUE(glance->words().front().alarm.startsWith(QStringLiteral("WARNING: Readings have stopped")));
    QTest::keyClick(glance, Qt::Key_F8);
    EXPECT_TRUE(alarm().acknowledged);
    EXPECT_TRUE(glance->words().front().alarm.isEmpty());
}

} // namespace
} // namespace ringhold::test
