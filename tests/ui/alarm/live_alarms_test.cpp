#include "tests/support/ring_firing.h"
#include "tests/support/silent_kiln.h"
#include "ui/alarm/alarm_caller.h"
#include "ui/alarm/live_alarms.h"
#include "ui/alarm/ring_cue.h"

#include <QTest>
#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

class LiveAlarmsTest : public testing::Test {
  protected:
    SilentKiln kiln;
    LiveAlarms alarms{kiln.notebook()};
    WritingSounder sounder;
};

TEST_F(LiveAlarmsTest, AreThoseOfTheSessionsAndGrowLouder) {
    EXPECT_TRUE(alarms.alarms().empty());
    EXPECT_EQ(alarms.stage(), AlarmStage::quiet);
    kiln.waitMinutes(3);
    ASSERT_EQ(alarms.alarms().size(), 1u);
    const auto& first = alarms.alarms().front();
    EXPECT_EQ(first.alarm.cause, AlarmCause::readingsStopped);
    EXPECT_EQ(first.alarm.level, AlarmLevel::warning);
    EXPECT_EQ(alarms.stage(), AlarmStage::sound);
    kiln.waitMinutes(4);
    EXPECT_EQ(alarms.alarms().front().alarm.level, AlarmLevel::urgent);
    EXPECT_EQ(alarms.stage(), AlarmStage::sound);
    kiln.wait(std::chrono::seconds(20));
    alarms.refresh();
    EXPECT_EQ(alarms.stage(), AlarmStage::repeatedSound);
    kiln.waitMinutes(1);
    alarms.refresh();
    EXPECT_EQ(alarms.stage(), AlarmStage::fullWindow);
}

TEST_F(LiveAlarmsTest, AnAnswerQuietensAndIsKeptWithItsName) {
    qputenv("USER", "ana");
    kiln.waitMinutes(3);
    alarms.acknowledge(kiln.session(), AlarmCause::readingsStopped);
    EXPECT_EQ(alarms.stage(), AlarmStage::quiet);
    EXPECT_EQ(alarms.loudest(), nullptr);
    ASSERT_EQ(alarms.alarms().size(), 1u) << "it goes on and is not hidden";
    EXPECT_EQ(alarms.alarms().front().alarm.acknowledgedBy, "ana");
}

TEST_F(LiveAlarmsTest, QuietHoursAreForWarningsOnly) {
    EXPECT_FALSE(alarms.quietUntil());
    alarms.keepQuietFor(std::chrono::hours(1));
    ASSERT_TRUE(alarms.quietUntil());
    EXPECT_EQ(*alarms.quietUntil() - kiln.session().now(), std::chrono::hours(1));
    kiln.waitMinutes(3);
    EXPECT_EQ(alarms.stage(), AlarmStage::banner);
    kiln.waitMinutes(4);
    EXPECT_EQ(alarms.stage(), AlarmStage::sound) << "urgent";
    alarms.endQuiet();
    EXPECT_FALSE(alarms.quietUntil());
}

TEST_F(LiveAlarmsTest, GoWithTheFiring) {
    kiln.waitMinutes(3);
    ASSERT_FALSE(alarms.alarms().empty());
    ASSERT_TRUE(kiln.notebook().end(kiln.session()).ok());
    EXPECT_TRUE(alarms.alarms().empty());
}

TEST_F(LiveAlarmsTest, SoundOnceThenAgainAndAgainUntilAnswered) {
    AlarmCaller caller(alarms, sounder, AlarmCaller::Again{40, 40});
    kiln.waitMinutes(3);
    EXPECT_EQ(sounder.played, std::vector<Sound>{Sound::call});
    alarms.refresh();
    EXPECT_EQ(sounder.played.size(), 1u) << "once";
    kiln.waitMinutes(4);
    ASSERT_EQ(sounder.played.size(), 2u);
    EXPECT_EQ(sounder.played.back(), Sound::urgent) << "it got worse";
    kiln.wait(std::chrono::seconds(20));
    alarms.refresh();
    ASSERT_TRUE(QTest::qWaitFor([&] { return sounder.played.size() >= 4; }, 5000));
    const int stops = sounder.stopped;
    alarms.acknowledge(kiln.session(), AlarmCause::readingsStopped);
    EXPECT_EQ(sounder.stopped, stops + 1);
    const auto before = sounder.played.size();
    QTest::qWait(150);
    EXPECT_EQ(sounder.played.size(), before);
}

TEST_F(LiveAlarmsTest, WhatCannotBeHeardIsSaidSo) {
    sounder.there = false;
    AlarmCaller caller(alarms, sounder);
    int unheard = 0;
    QObject::connect(&caller, &AlarmCaller::unheard, [&] { ++unheard; });
    kiln.waitMinutes(3);
    EXPECT_EQ(unheard, 1);
    sounder.there = true;
    caller.sound(Sound::call);
    EXPECT_EQ(unheard, 1);
    caller.setHeard(false);
    caller.sound(Sound::call);
    EXPECT_EQ(unheard, 2) << "a device that the potter does not hear is none";
}

TEST(RingCueTest, SoundsOncePerDwellBeforeItEndsAndNotInQuietHours) {
    RingFiring firing(147);
    LiveAlarms alarms(firing.disk().notebook());
    WritingSounder sounder;
    AlarmCaller caller(alarms, sounder);
    RingCue cue(firing.disk().notebook(), caller);
    sounder.played.clear();
    cue.listen();
    EXPECT_TRUE(sounder.played.empty());
    const auto left = firing.session().watch().ringClock(firing.session().now())->left;
    firing.wait(std::chrono::floor<std::chrono::seconds>(left) - std::chrono::seconds(40));
    cue.listen();
    cue.listen();
    EXPECT_EQ(sounder.played, std::vector<Sound>{Sound::cue});

    RingCue another(firing.disk().notebook(), caller);
    alarms.keepQuietFor(std::chrono::hours(1));
    another.listen();
    EXPECT_EQ(sounder.played.size(), 1u);
}

} // namespace
} // namespace ringhold::test
