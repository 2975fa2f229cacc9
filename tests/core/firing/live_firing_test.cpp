#include "core/firing/live_firing.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

const Instant start{std::chrono::hours(492000)};

class FakeJournal : public Journal {
  public:
    Ticket append(const Reading& reading) override {
        readings.push_back(reading);
        return readings.size();
    }
    void keep(const Channel& channel) override { channels.push_back(channel); }
    std::vector<Reading> readings;
    std::vector<Channel> channels;
};

/// Numbers what it gets; fails when told to.
class FakeLog : public FiringLog {
  public:
    Result<ChannelId> add(const Channel&) override { return made<ChannelId>(); }
    Status alter(const Channel&) override { return done(); }
    Result<LookId> add(const Look&) override { return made<LookId>(); }
    Result<SettingId> add(const Setting&) override { return made<SettingId>(); }
    Result<NoteId> add(const Note&) override { return made<NoteId>(); }
    Status add(const Reading&) override { return done(); }
    Status add(const AlarmEvent&) override { return done(); }
    Result<StepCorrectionId> add(const StepCorrection&) override { return made<StepCorrectionId>(); }
    Result<MeterStandId> add(const MeterStand&) override { return made<MeterStandId>(); }
    Status strike(LookId, Instant) override { return done(); }
    Status strike(SettingId, Instant) override { return done(); }
    Status strike(NoteId, Instant) override { return done(); }
    Status strike(StepCorrectionId, Instant) override { return done(); }
    Status strike(MeterStandId, Instant) override { return done(); }
    Status strike(ChannelId channel, Instant, Instant) override {
        struckIn = channel;
        return done();
    }
    Status restore(LookId, Instant) override { return done(); }
    Status restore(SettingId, Instant) override { return done(); }
    Status restore(NoteId, Instant) override { return done(); }
    Status restore(StepCorrectionId, Instant) override { return done(); }
    Status restore(MeterStandId, Instant) override { return done(); }
    Status restore(ChannelId, Instant, Instant) override { return done(); }
    Status file(const FiledOffset&) override { return done(); }
    Status end(FiringId, Instant) override { return done(); }

    bool full = false;
    std::optional<ChannelId> struckIn;

  private:
    static Error diskFull() { return {ErrorKind::unwritable, "the disk is full"}; }
    Status done() const { return full ? Status(diskFull()) : Status(); }
    template <class Id>
    Result<Id> made() {
        if (full)
            return diskFull();
        return Id(++m_last);
    }
    int m_last = 0;
};

class Ear : public LiveFiringListener {
  public:
    void onReading(const Channel&, const Reading&) override { ++readings; }
    void onLinesChanged(Instant from) override { changedFrom = from; }
    int readings = 0;
    std::optional<Instant> changedFrom;
};

class LiveFiringTest : public testing::Test {
  protected:
    LiveFiringTest() : firing(FiringRecord{}, journal, log) { firing.setListener(&ear); }

    Status sample(int seconds, std::optional<double> celsius, const char* label = "T1") {
        return firing.take({start + std::chrono::seconds(seconds), label, Quantity::temperature, celsius});
    }

    FakeJournal journal;
    FakeLog log;
    Ear ear;
    LiveFiring firing;
};

TEST_F(LiveFiringTest, AReadingIsPendingUntilItIsDurable) {
    for (int i = 0; i < 3; ++i)
        ASSERT_TRUE(sample(10 * i, 100 + i).ok());
    const auto channel = firing.controlChannel();
    ASSERT_TRUE(channel);
    EXPECT_EQ(firing.controlCurve().size(), 3u);
    EXPECT_EQ(firing.pendingCount(), 3u);
    EXPECT_EQ(firing.durableCount(*channel), 0u);
    EXPECT_EQ(ear.readings, 3);
    firing.markDurable(2);
    EXPECT_EQ(firing.pendingCount(), 1u);
    EXPECT_EQ(firing.durableCount(*channel), 2u);
}

TEST_F(LiveFiringTest, AClockSetBackLosesNothing) {
    ASSERT_TRUE(sample(100, 500).ok());
    EXPECT_FALSE(sample(100, 501).ok());
    EXPECT_FALSE(sample(40, 502).ok());
    ASSERT_TRUE(sample(110, 503).ok());
    EXPECT_EQ(firing.controlCurve().size(), 2u);
    EXPECT_EQ(journal.readings.size(), 2u);
}

TEST_F(LiveFiringTest, AValueGrowsStaleAfterTwiceItsPeriod) {
    EXPECT_EQ(firing.freshness(start), Freshness::none);
    for (int i = 0; i <= 12; ++i)
        ASSERT_TRUE(sample(10 * i, 500 + i).ok());
    EXPECT_EQ(firing.samplePeriod(), std::chrono::seconds(10));
    EXPECT_EQ(firing.freshness(start + std::chrono::seconds(120 + 20)), Freshness::live);
    EXPECT_EQ(firing.freshness(start + std::chrono::seconds(120 + 21)), Freshness::stale);
    ASSERT_TRUE(sample(130, std::nullopt).ok());
    EXPECT_EQ(firing.freshness(start + std::chrono::seconds(130)), Freshness::open);
    EXPECT_EQ(firing.controlCurve().back().temperature.celsius(), 512);
}

TEST_F(LiveFiringTest, AnInstrumentIsTheControlEvenWhenReadingsByHandCameFirst) {
    ASSERT_TRUE(firing.writeReading(start, Temperature::fromCelsius(200)).ok());
    EXPECT_EQ(firing.controlCurve().size(), 1u);
    EXPECT_EQ(firing.freshness(start + std::chrono::minutes(59)), Freshness::live);
    EXPECT_EQ(firing.freshness(start + std::chrono::minutes(61)), Freshness::stale);
    ASSERT_TRUE(sample(60, 205).ok());
    EXPECT_EQ(firing.controlCurve().front().temperature.celsius(), 205);
}

TEST(LiveFiring, TheFirstProbeHeardTakesTheChannelThatWaitsForIt) {
    FakeJournal journal;
    FakeLog log;
    FiringRecord record;
    record.channels.push_back({ChannelId{7}, {}, Quantity::temperature, "", ProbeId{3}});
    LiveFiring firing(record, journal, log);
    ASSERT_TRUE(firing.take({start, "T1", Quantity::temperature, 100.0}).ok());
    ASSERT_TRUE(firing.take({start, "T2", Quantity::temperature, 90.0}).ok());
    ASSERT_EQ(firing.record().channels.size(), 2u);
    EXPECT_EQ(firing.controlChannel(), ChannelId{7});
    ASSERT_EQ(journal.channels.size(), 2u) << "the journal writes them: no disk holds a sample up";
    EXPECT_EQ(journal.channels[0].id, ChannelId{7});
    EXPECT_EQ(journal.channels[0].label, "T1");
    EXPECT_LT(journal.channels[1].id, ChannelId{});
    EXPECT_EQ(firing.controlCurve().back().temperature.celsius(), 100);
}

TEST_F(LiveFiringTest, LateReadingsByHandFindTheirPlaceAndAreToldOf) {
    ASSERT_TRUE(firing.writeReading(start + std::chrono::minutes(30), Temperature::fromCelsius(300)).ok());
    ASSERT_TRUE(firing.writeReading(start + std::chrono::minutes(10), Temperature::fromCelsius(220)).ok());
    ASSERT_EQ(firing.controlCurve().size(), 2u);
    EXPECT_EQ(firing.controlCurve().front().temperature.celsius(), 220);
    EXPECT_EQ(ear.changedFrom, start + std::chrono::minutes(10));
}

TEST_F(LiveFiringTest, StrikingKeepsTheLineAndTakesItOffTheCurve) {
    ASSERT_TRUE(firing.writeReading(start, Temperature::fromCelsius(200)).ok());
    ASSERT_TRUE(firing.writeReading(start + std::chrono::minutes(10), Temperature::fromCelsius(2000)).ok());
    const auto channel = *firing.controlChannel();
    ASSERT_TRUE(firing.strikeReading(channel, start + std::chrono::minutes(10), start).ok());
    EXPECT_EQ(firing.controlCurve().size(), 1u);
    EXPECT_EQ(firing.record().readings.size(), 2u);
    EXPECT_TRUE(firing.record().readings[1].struck);
    ASSERT_TRUE(firing.restoreReading(channel, start + std::chrono::minutes(10), start).ok());
    EXPECT_EQ(firing.controlCurve().size(), 2u);
    EXPECT_FALSE(firing.strikeReading(channel, start + std::chrono::minutes(11), start).ok());

    const auto look = firing.writeLook(PackId{1}, start, "8", 2.5);
    ASSERT_TRUE(look.ok());
    ASSERT_TRUE(firing.strike(*look, start).ok());
    ASSERT_EQ(firing.record().looks.size(), 1u);
    EXPECT_TRUE(firing.record().looks[0].struck);
    ASSERT_TRUE(firing.restore(*look, start).ok());
    EXPECT_FALSE(firing.record().looks[0].struck);
}

TEST_F(LiveFiringTest, ANewChannelIsStruckInByTheIdThatTheBookGaveIt) {
    log.full = true; // a new channel does not ask the disk
    ASSERT_TRUE(sample(0, 100).ok());
    log.full = false;
    const auto channel = *firing.controlChannel();
    EXPECT_EQ(journal.channels.at(0).id, channel);
    EXPECT_EQ(journal.readings.at(0).channel, channel);
    EXPECT_FALSE(firing.strikeReading(channel, start, start).ok()) << "it is not in the book yet";
    EXPECT_FALSE(firing.record().readings.at(0).struck);
    firing.markKept(channel, ChannelId{41});
    ASSERT_TRUE(firing.strikeReading(channel, start, start).ok());
    EXPECT_EQ(log.struckIn, ChannelId{41});
    EXPECT_EQ(firing.controlChannel(), channel) << "its id here stays";
}

TEST_F(LiveFiringTest, AFullDiskLeavesNoLineBehindButReadingsGoOn) {
    ASSERT_TRUE(sample(0, 100).ok());
    log.full = true;
    EXPECT_FALSE(firing.writeNote(start, "vent open").ok());
    EXPECT_TRUE(firing.record().notes.empty());
    EXPECT_FALSE(firing.writeReading(start, Temperature::fromCelsius(20)).ok());
    ASSERT_TRUE(sample(10, 101).ok());
    EXPECT_EQ(firing.controlCurve().size(), 2u);
}

} // namespace
} // namespace ringhold
