#include "core/book/reader.h"
#include "core/plan/plan_file.h"
#include "tests/core/book/sample_firing.h"

#include <cmath>
#include <random>

namespace ringhold::test {
namespace {

using std::chrono::seconds;

class ReadBook : public testing::Test {
  protected:
    BookFolder m_folder;
    Book m_book = bookAt(m_folder / "kiln.ringhold");
    BookWriter m_writer{m_book};
    BookReader m_reader{m_book};
};

void expectSample(const FiringRecord& found, const FiringRecord& wanted) {
    EXPECT_EQ(found.firing.id, wanted.firing.id);
    EXPECT_EQ(found.firing.title, wanted.firing.title);
    EXPECT_EQ(found.firing.began, wanted.firing.began);
    EXPECT_EQ(found.firing.ended, wanted.firing.ended);
    EXPECT_EQ(found.firing.modelJson, wanted.firing.modelJson);
    ASSERT_TRUE(found.firing.plan);
    EXPECT_EQ(formatPlan(*found.firing.plan), formatPlan(*wanted.firing.plan));
    EXPECT_TRUE(fields(found.kiln) == fields(wanted.kiln));
    expectSame(found.probes, wanted.probes);
    expectSame(found.channels, wanted.channels);
    expectSame(found.readings, wanted.readings);
    expectSame(found.packs, wanted.packs);
    expectSame(found.looks, wanted.looks);
    expectSame(found.settings, wanted.settings);
    expectSame(found.notes, wanted.notes);
    expectSame(found.pieces, wanted.pieces);
    expectSame(found.outcomes, wanted.outcomes);
    expectSame(found.filedOffsets, wanted.filedOffsets);
    EXPECT_EQ(found.alarmEvents, wanted.alarmEvents);
    EXPECT_EQ(found.stepCorrections, wanted.stepCorrections);
    EXPECT_EQ(found.meterStands, wanted.meterStands);
    EXPECT_EQ(found.photos, wanted.photos);
    EXPECT_EQ(found.photoMeasures, wanted.photoMeasures);
    EXPECT_EQ(found.ringRadii, wanted.ringRadii);
    EXPECT_EQ(found.sagsSeen, wanted.sagsSeen);
    EXPECT_EQ(found.glazeCards, wanted.glazeCards);
}

TEST_F(ReadBook, GivesAWholeFiringBackUnchanged) {
    const FiringRecord wanted = writeSample(m_book);
    expectSample(good(m_reader.whole(wanted.firing.id, Pictures::with)), wanted);
    EXPECT_TRUE(good(m_reader.whole(wanted.firing.id)).photos[0].jpeg.empty());
    const Book again = bookAt(m_book.file(), Access::read);
    expectSample(good(BookReader(again).whole(wanted.firing.id, Pictures::with)), wanted);
}

TEST_F(ReadBook, SumsUpFiringsWithoutTheStruckReadings) {
    const FiringRecord f = writeSample(m_book);
    const auto list = good(m_reader.firings());
    ASSERT_EQ(list.size(), 1U);
    EXPECT_EQ(list[0].id, f.firing.id);
    EXPECT_EQ(list[0].kilnName, f.kiln.name);
    EXPECT_EQ(list[0].title, "Vase day");
    EXPECT_EQ(list[0].began, evening);
    EXPECT_FALSE(list[0].ended);
    EXPECT_EQ(list[0].lastReading, evening + seconds(2));
    EXPECT_EQ(list[0].readings, 3);
    EXPECT_EQ(list[0].peak, Temperature::fromCelsius(1040.25)); // 1041 is struck
}

TEST_F(ReadBook, SumsUpAFiringWithoutReadings) {
    const KilnId kiln = good(m_writer.add(kilnCalled("a")));
    good(m_writer.add(firingFrom(kiln, "later", evening + seconds(5), evening + seconds(6))));
    good(m_writer.add(firingFrom(kiln, "earlier", evening, evening + seconds(1))));
    const auto list = good(m_reader.firings());
    ASSERT_EQ(list.size(), 2U);
    EXPECT_EQ(list[0].title, "earlier");
    EXPECT_EQ(list[0].ended, evening + seconds(1));
    EXPECT_EQ(list[0].readings, 0);
    EXPECT_FALSE(list[0].peak);
    EXPECT_FALSE(list[0].lastReading);
}

TEST_F(ReadBook, FindsTheOpenFiringOfAKiln) {
    const FiringRecord f = writeSample(m_book);
    EXPECT_EQ(good(m_reader.openFiring(f.kiln.id))->id, f.firing.id);
    expectGood(m_writer.end(f.firing.id, evening + seconds(60)));
    EXPECT_FALSE(good(m_reader.openFiring(f.kiln.id)));
    EXPECT_EQ(good(m_reader.firing(f.firing.id)).ended, evening + seconds(60));
}

TEST_F(ReadBook, FindsKilnsProbesAndOffsets) {
    const FiringRecord f = writeSample(m_book);
    good(m_writer.add(kilnCalled("Little")));
    EXPECT_EQ(good(m_reader.kilns()).size(), 2U);
    EXPECT_EQ(good(m_reader.kilnNamed("old bertha é"))->id, f.kiln.id);
    EXPECT_FALSE(good(m_reader.kilnNamed("Bertha")));
    expectSame(good(m_reader.probes(f.kiln.id)), f.probes);
    expectSame(good(m_reader.filedOffsets(f.kiln.id)), f.filedOffsets);
}

TEST_F(ReadBook, SaysWhenThereIsNoSuchFiring) {
    EXPECT_EQ(m_reader.whole(FiringId{7}).error().kind, ErrorKind::notFound);
    EXPECT_EQ(m_reader.firing(FiringId{7}).error().kind, ErrorKind::notFound);
    EXPECT_TRUE(good(m_reader.readings(ChannelId{7})).empty());
}

TEST_F(ReadBook, ReadsACurveWithoutStruckOrOlderLinesOfOneInstant) {
    const FiringRecord f = writeSample(m_book);
    const ChannelId channel = f.channels[0].id;
    const std::vector<Reading> twice{{channel, evening + seconds(4), 1042, Origin::instrument, false},
                                     {channel, evening + seconds(4), 1043, Origin::instrument, false}};
    good(m_writer.add(twice));
    const Curve curve = good(m_reader.curve(channel));
    ASSERT_EQ(curve.size(), 3U);
    EXPECT_EQ(curve[0].temperature.celsius(), 1039.7000000000001);
    EXPECT_EQ(curve[1].temperature.celsius(), 1040.25);
    EXPECT_EQ(curve[2].at, evening + seconds(4));
    EXPECT_EQ(curve[2].temperature.celsius(), 1043);
}

TEST_F(ReadBook, GivesManyReadingsBackToTheLastBit) {
    const FiringRecord f = writeSample(m_book);
    const ChannelId channel = good(m_writer.add(Channel{{}, f.firing.id, Quantity::duty, "many", {}}));
    std::mt19937_64 random(1);
    std::uniform_real_distribution<double> exponent(-300, 300);
    std::vector<Reading> readings;
    Instant at = evening;
    for (int i = 0; i < 100'000; ++i) {
        at += Duration(1 + random() % 5000);
        const double value = std::pow(10.0, exponent(random)) * (random() % 2 ? 1 : -1);
        readings.push_back({channel, at, value, random() % 2 ? Origin::hand : Origin::instrument, false});
    }
    readings[10].value = 5e-324; // the smallest double
    readings[20].value = 1.7976931348623157e308;
    readings[30].value = -1.7976931348623157e308;
    readings[40].value = 0.1;
    EXPECT_EQ(good(m_writer.add(readings)), readings.size());
    expectSame(good(m_reader.readings(channel)), readings);
    EXPECT_EQ(good(m_writer.add(readings)), 0U); // nothing is written twice
}

TEST_F(ReadBook, KeepsAlarmsAndEvents) {
    const FiringRecord f = writeSample(m_book);
    const auto happens = [&](int second, AlarmChange change, AlarmLevel level, const char* words) {
        const bool heard = change == AlarmChange::acknowledged;
        expectGood(m_writer.add(AlarmEvent{f.firing.id, evening + seconds(second), "band left", change, level,
                                           words, heard ? "me" : ""}));
    };
    happens(0, AlarmChange::raised, AlarmLevel::warning, "1047 °C");
    happens(3, AlarmChange::worsened, AlarmLevel::urgent, "1049 °C");
    happens(5, AlarmChange::acknowledged, AlarmLevel::urgent, "");
    happens(9, AlarmChange::ended, AlarmLevel::notice, "back at 1041 °C");
    happens(20, AlarmChange::raised, AlarmLevel::notice, "1046 °C");
    expectGood(m_writer.add(LogEvent{f.firing.id, evening, "resumed", ""}));
    const auto alarms = good(m_reader.alarms(f.firing.id));
    ASSERT_EQ(alarms.size(), 3U); // and the sample's own
    EXPECT_EQ(alarms[0].cause, "sag");
    EXPECT_EQ(alarms[2].level, "notice");
    EXPECT_FALSE(alarms[2].acknowledged);
    EXPECT_FALSE(alarms[2].ended);
    EXPECT_EQ(alarms[1].level, "urgent");
    EXPECT_EQ(alarms[1].cause, "band left");
    EXPECT_EQ(alarms[1].detail, "1049 °C");
    EXPECT_EQ(alarms[1].first, evening);
    EXPECT_EQ(alarms[1].acknowledged->at, evening + seconds(5));
    EXPECT_EQ(alarms[1].acknowledged->by, "me");
    EXPECT_EQ(alarms[1].ended, evening + seconds(9));
    EXPECT_EQ(good(m_reader.events(f.firing.id))[0].kind, "resumed");
}

TEST_F(ReadBook, KeepsPreferences) {
    EXPECT_FALSE(good(m_reader.preference("zone")));
    expectGood(m_writer.setPreference("zone", "Europe/Paris"));
    expectGood(m_writer.setPreference("zone", "Europe/Lisbon"));
    EXPECT_EQ(good(m_reader.preference("zone")), "Europe/Lisbon");
    EXPECT_EQ(good(m_reader.preference("book_id")), m_book.id());
}

} // namespace
} // namespace ringhold::test
