#include "core/watch/firing_watch.h"
#include "tests/support/watched_practice.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace std::chrono_literals;
using testing::HasSubstr;
using testing::IsEmpty;

const Instant start{std::chrono::hours(492000)};

Temperature celsius(double degrees) {
    return Temperature::fromCelsius(degrees);
}

Plan holdPlan() {
    return {"hold",
            {Hold{celsius(1090), 3h, TemperatureDifference::fromCelsius(6)},
             Rings{2, celsius(1050), 10min, celsius(1090), 10min}, Cool{celsius(700), {}}}};
}

class FiringWatchTest : public testing::Test, private LiveFiringListener {
  protected:
    void begin(WatchSettings settings = {}, std::vector<AlarmEvent> earlier = {},
               std::optional<Plan> plan = holdPlan()) {
        FiringRecord record;
        record.firing = {FiringId{4}, KilnId{1}, "test", start, {}, std::move(plan), {}};
        m_firing = std::make_unique<LiveFiring>(std::move(record), m_journal, m_log);
        watch = std::move(FiringWatch::make({m_firing.get(), {}, std::move(earlier)}, settings).value());
        m_firing->setListener(this);
    }
    LiveFiring& firing() { return *m_firing; }
    /// A reading every 10 s from there to there; the events of checks at each.
    std::vector<AlarmEvent> read(Duration from, Duration to, double celsius_) {
        std::vector<AlarmEvent> events;
        for (Duration t = from; t < to; t += 10s) {
            const double wobble = (t.count() / 10'000) % 2 == 0 ? 0.2 : -0.1;
            EXPECT_TRUE(m_firing->take({start + t, "T1", Quantity::temperature, celsius_ + wobble}).ok());
            for (auto& event : watch->check(start + t))
                events.push_back(std::move(event));
        }
        return events;
    }

    std::unique_ptr<FiringWatch> watch;

  private:
    void onReading(const Channel& channel, const Reading& reading) override {
        watch->onReading(channel, reading);
    }
    void onLinesChanged(Instant from) override { watch->onLinesChanged(from); }

    test::ForgetfulJournal m_journal;
    test::ForgetfulLog m_log;
    std::unique_ptr<LiveFiring> m_firing;
};

TEST_F(FiringWatchTest, IsQuietInASteadyHold) {
    begin();
    EXPECT_THAT(read(0s, 2h, 1090), IsEmpty());
    ASSERT_TRUE(watch->hold());
    EXPECT_LE(watch->hold()->from() - start, 10s);
    EXPECT_FALSE(watch->ringClock(start + 2h));
}

TEST_F(FiringWatchTest, RaisesAHoldThatIsLeft) {
    begin();
    read(0s, 60min, 1090);
    std::vector<AlarmEvent> events;
    for (int i = 0; i < 45; ++i) // 9 °C in 7 min
        for (auto& event : read(60min + 10s * i, 60min + 10s * (i + 1), 1090 - 0.2 * i))
            events.push_back(std::move(event));
    ASSERT_GE(events.size(), 2u);
    EXPECT_EQ(events[0].cause, "drifting"); // before it leaves
    EXPECT_THAT(events[0].words, HasSubstr("At this drift it leaves the band in about"));
    EXPECT_EQ(events[1].cause, "band-left");
    EXPECT_EQ(events[1].firing, FiringId{4});
    EXPECT_THAT(events[1].words, HasSubstr("below the hold’s 1090 °C"));
}

TEST_F(FiringWatchTest, WatchesAHoldWithoutAPlanAndSaysSoQuietly) {
    begin({}, {}, std::nullopt);
    EXPECT_THAT(read(0s, 40min, 1090), IsEmpty());
    ASSERT_TRUE(watch->holdUnderWay());
    EXPECT_EQ(watch->holdUnderWay()->source, HoldSource::curve);
    EXPECT_EQ(watch->holdUnderWay()->from, start);
    const auto events = read(40min, 45min, 1080);
    ASSERT_FALSE(events.empty());
    const auto left = std::ranges::find(events, "band-left", &AlarmEvent::cause);
    ASSERT_NE(left, events.end());
    EXPECT_EQ(left->level, AlarmLevel::notice);
    EXPECT_THAT(left->words, HasSubstr("Nobody told this hold: 1090 °C is the level since"));
}

TEST_F(FiringWatchTest, IsAsLoudAsWithAPlanOnceThePotterToldTheHold) {
    begin({}, {}, std::nullopt);
    read(0s, 40min, 1090);
    ASSERT_TRUE(firing().writeSetting(start + 40min, "hold", "1090 ± 4 °C").ok());
    ASSERT_TRUE(watch->holdUnderWay());
    EXPECT_EQ(watch->holdUnderWay()->source, HoldSource::potter);
    const auto events = read(40min, 45min, 1084.5);
    const auto left = std::ranges::find(events, "band-left", &AlarmEvent::cause);
    ASSERT_NE(left, events.end());
    EXPECT_EQ(left->level, AlarmLevel::warning);
    EXPECT_THAT(left->words, testing::Not(HasSubstr("Nobody told")));
}

TEST_F(FiringWatchTest, RaisesReadingsThatStop) {
    begin();
    read(0s, 10min, 1090);
    EXPECT_THAT(watch->check(start + 10min), IsEmpty());
    const auto stale = watch->check(start + 10min + 20s);
    ASSERT_EQ(stale.size(), 1u);
    EXPECT_EQ(stale[0].cause, "readings-stopped");
    EXPECT_EQ(stale[0].level, AlarmLevel::warning);
    const auto worse = watch->check(start + 16min);
    ASSERT_EQ(worse.size(), 1u);
    EXPECT_EQ(worse[0].change, AlarmChange::worsened);
    EXPECT_EQ(worse[0].level, AlarmLevel::urgent);
}

TEST_F(FiringWatchTest, RaisesAnOpenProbe) {
    begin();
    read(0s, 10min, 1090);
    ASSERT_TRUE(firing().take({start + 10min, "T1", Quantity::temperature, {}}).ok());
    const auto events = watch->check(start + 10min);
    ASSERT_EQ(events.size(), 1u);
    EXPECT_EQ(events[0].cause, "probe-open");
}

TEST_F(FiringWatchTest, RaisesWhatTheCallerKnows) {
    begin();
    read(0s, 1min, 1090);
    const auto events = watch->check(start + 1min, {"unplugged", "the disk is full"});
    ASSERT_EQ(events.size(), 2u);
    EXPECT_EQ(events[0].cause, "disk-failing");
    EXPECT_EQ(events[0].words, "the disk is full");
    EXPECT_EQ(events[1].cause, "instrument-lost");
}

TEST_F(FiringWatchTest, RemindsWhenNobodyWasThere) {
    WatchSettings settings;
    settings.attendance = 30min;
    begin(settings);
    EXPECT_THAT(read(0s, 30min, 1090), IsEmpty());
    auto events = read(30min, 31min, 1090);
    ASSERT_EQ(events.size(), 1u);
    EXPECT_EQ(events[0].cause, "attendance");
    EXPECT_EQ(events[0].level, AlarmLevel::notice);
    events = read(31min, 61min, 1090);
    ASSERT_EQ(events.size(), 1u);
    EXPECT_EQ(events[0].change, AlarmChange::worsened);
    // a note is a sign of life
    ASSERT_TRUE(firing().writeNote(start + 61min, "all well").ok());
    events = read(61min, 64min, 1090);
    ASSERT_EQ(events.size(), 1u);
    EXPECT_EQ(events[0].change, AlarmChange::ended);
}

TEST_F(FiringWatchTest, CountsTheRingsDwellsDown) {
    begin();
    read(0s, 3h, 1090);
    for (int degrees = 1088; degrees > 1050; degrees -= 2) // 2 °C every 10 s
        read(3h + 10s * (1088 - degrees) / 2, 3h + 10s * (1088 - degrees) / 2 + 10s, degrees);
    read(3h + 200s, 3h + 8min, 1050);
    const auto clock = watch->ringClock(start + 3h + 8min);
    ASSERT_TRUE(clock);
    EXPECT_EQ(clock->ring, 1);
    EXPECT_EQ(clock->count, 2);
    EXPECT_TRUE(clock->dwelling());
    EXPECT_TRUE(clock->atLow);
    EXPECT_NEAR(inMinutes(clock->left), 5.2, 0.5);
    EXPECT_FALSE(clock->cue);
    EXPECT_TRUE(watch->ringClock(start + 3h + 12min + 30s)->cue);
    EXPECT_FALSE(watch->hold());
}

TEST_F(FiringWatchTest, ObeysAStepCorrection) {
    begin();
    read(0s, 10min, 1090);
    const auto correction = firing().writeStep(start + 10min, 2);
    ASSERT_TRUE(correction.ok());
    ASSERT_TRUE(watch->follower()->position());
    EXPECT_EQ(watch->follower()->position()->step, 2u);
    EXPECT_FALSE(watch->hold());
    read(10min, 12min, 1085);
    EXPECT_EQ(watch->follower()->position()->step, 2u);
    ASSERT_TRUE(firing().strike(*correction, start + 13min).ok());
    EXPECT_NE(watch->follower()->position()->step, 2u) << "struck, the readings count again";
}

TEST_F(FiringWatchTest, DoesNotForgetTheUsualVoltsOverANote) {
    begin();
    const auto line = [&](Duration from, Duration to, double volts) {
        for (Duration t = from; t < to; t += 10s) {
            EXPECT_TRUE(firing().take({start + t, "V", Quantity::lineVolts, volts}).ok());
            read(t, t + 10s, 1090);
        }
    };
    line(0s, 20min, 240);
    line(20min, 23min, 226);
    ASSERT_TRUE(watch->board().find(AlarmCause::sag));
    ASSERT_TRUE(firing().writeNote(start + 23min, "the neighbour’s kiln is on").ok());
    line(23min, 28min, 226);
    ASSERT_TRUE(watch->board().find(AlarmCause::sag));
    EXPECT_FALSE(watch->board().find(AlarmCause::sag)->over());
}

TEST_F(FiringWatchTest, TakesUpAlarmsOfAnEarlierRun) {
    const AlarmEvent raised{FiringId{4}, start, "sag", AlarmChange::raised, AlarmLevel::warning, "226 V", {}};
    begin({}, {raised});
    ASSERT_EQ(watch->board().alarms().size(), 1u);
    const auto seen = watch->acknowledge(AlarmCause::sag, start + 1min, "Mara");
    ASSERT_EQ(seen.size(), 1u);
    EXPECT_EQ(seen[0].who, "Mara");
}

TEST(FiringWatchPractice, RaisesAStuckRelayBeforeTheWareIsLost) {
    PracticeSettings settings;
    settings.plan = {"short",
                     {Climb{celsius(800), Rate::fromCelsiusPerHour(400)},
                      Hold{celsius(800), 60min, TemperatureDifference::fromCelsius(6)}}};
    settings.faults = {{FaultKind::stuckRelay, 150min, {}, 0}};
    test::WatchedPractice practice(settings, {});
    practice.runUntil(156min);
    const auto* raised = practice.firstRaised(practice.began(), [](const AlarmEvent&) { return true; });
    ASSERT_TRUE(raised);
    EXPECT_EQ(raised->cause, "relay-stuck");
    EXPECT_EQ(raised->level, AlarmLevel::urgent);
    EXPECT_LT(inMinutes(raised->at - practice.began()), 153);
}

} // namespace
} // namespace ringhold
