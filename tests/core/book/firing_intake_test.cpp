// Firings handed on from one book to another.
#include "core/book/check.h"
#include "core/book/firing_intake.h"
#include "core/book/ware_finds.h"
#include "core/exchange/firing_json.h"
#include "tests/core/book/sample_firing.h"

#include <gmock/gmock.h>

namespace ringhold::test {
namespace {

class FiringIntake : public testing::Test {
  protected:
    FiringRecord wholeFrom(const Book& book, FiringId id) {
        return good(BookReader(book).whole(id, Pictures::with));
    }
    BookFolder m_folder;
    const Book m_from = bookAt(m_folder / "from.ringhold", Access::create);
    const Book m_to = bookAt(m_folder / "to.ringhold", Access::create);
    const FiringRecord m_sample = writeSample(m_from);
};

/// All that is told of a firing but for the ids, which another book gives anew. The writing of JSON is used
/// to see everything: its own test proves that it leaves nothing out.
std::string withoutIds(FiringRecord record) {
    std::map<std::int64_t, std::int64_t> pieces;
    for (std::size_t i = 0; i < record.pieces.size(); ++i)
        pieces[static_cast<std::int64_t>(record.pieces[i].id)] = static_cast<std::int64_t>(i);
    const auto number = [](auto& list) {
        std::int64_t next = 0;
        for (auto& each : list)
            each.id = static_cast<std::decay_t<decltype(each.id)>>(next++);
    };
    const auto here = [](auto& list) {
        for (auto& each : list)
            each.firing = FiringId{};
    };
    const auto ofPiece = [&](auto& list) {
        for (auto& each : list)
            each.piece = PieceId{pieces.at(static_cast<std::int64_t>(each.piece))};
    };
    const auto rankIn = [](const auto& list, auto id) {
        return std::ranges::find(list, id, [](const auto& each) { return each.id; }) - list.begin();
    };
    for (auto& each : record.readings)
        each.channel = ChannelId{rankIn(record.channels, each.channel)};
    for (auto& each : record.looks)
        each.pack = PackId{rankIn(record.packs, each.pack)};
    for (auto& each : record.photoMeasures)
        each.photo = PhotoId{rankIn(record.photos, each.photo)};
    for (auto& each : record.channels)
        each.probe = each.probe ? std::optional(ProbeId{rankIn(record.probes, *each.probe)}) : std::nullopt;
    for (auto& each : record.filedOffsets) {
        each.probe = ProbeId{rankIn(record.probes, each.probe)};
        each.kiln = KilnId{};
    }
    for (auto& each : record.probes)
        each.kiln = KilnId{};
    record.firing.id = FiringId{};
    record.firing.kiln = record.kiln.id = KilnId{};
    ofPiece(record.outcomes);
    ofPiece(record.photos);
    ofPiece(record.ringRadii);
    ofPiece(record.sagsSeen);
    number(record.probes), number(record.channels), number(record.packs), number(record.looks);
    number(record.settings), number(record.notes), number(record.pieces), number(record.photos);
    number(record.photoMeasures), number(record.stepCorrections), number(record.meterStands);
    number(record.glazeCards);
    here(record.channels), here(record.packs), here(record.settings), here(record.notes);
    here(record.pieces), here(record.filedOffsets), here(record.alarmEvents), here(record.stepCorrections);
    here(record.meterStands), here(record.logEvents);
    return formatFiring(record);
}

TEST_F(FiringIntake, KeepsEverythingUnderNewIds) {
    BookWriter(m_to).add(kilnCalled("another")).value(); // so that ids differ
    auto record = wholeFrom(m_from, m_sample.firing.id);
    record.firing.ended = evening + std::chrono::hours(20);
    const auto taken = good(takeIn(m_to, record));
    EXPECT_TRUE(taken.newKiln);
    EXPECT_FALSE(taken.endedWith);
    EXPECT_TRUE(taken.keptCards.empty());
    const auto found = wholeFrom(m_to, taken.firing);
    EXPECT_NE(found.kiln.id, record.kiln.id);
    EXPECT_EQ(withoutIds(found), withoutIds(record));
    EXPECT_EQ(found.photos.at(0).jpeg, sampleJpeg());
    EXPECT_TRUE(good(checkBook(m_to.file())).empty());
}

TEST_F(FiringIntake, EndsWhatHadNoEnd) {
    const auto taken = good(takeIn(m_to, m_sample));
    EXPECT_EQ(taken.endedWith, evening + std::chrono::seconds(2)); // not the look at the cold pack
    EXPECT_EQ(good(BookReader(m_to).firing(taken.firing)).ended, taken.endedWith);
}

TEST_F(FiringIntake, UsesTheKilnProbeAndCardThatAreThere) {
    BookWriter writer(m_to);
    Kiln kiln = kilnCalled("old bertha é");
    kiln.note = "mine";
    kiln.id = good(writer.add(kiln));
    Probe probe = m_sample.probes[0];
    probe.kiln = kiln.id;
    const auto known = good(writer.add(probe));
    GlazeCard card;
    card.name = "ICE 3";
    card.notes = "my own";
    good(GlazeCards(m_to).add(card));
    const auto taken = good(takeIn(m_to, m_sample));
    EXPECT_FALSE(taken.newKiln);
    EXPECT_EQ(taken.keptCards, std::vector<std::string>{"ICE 3"});
    const auto found = wholeFrom(m_to, taken.firing);
    EXPECT_EQ(found.kiln.note, "mine");
    EXPECT_EQ(found.channels[0].probe, known);
    EXPECT_EQ(good(GlazeCards(m_to).all()).size(), 1U);
    EXPECT_EQ(found.glazeCards.at(0).notes, "my own");
}

TEST_F(FiringIntake, KeepsACorrectionThatLeftTheSameValue) {
    auto record = m_sample;
    const auto channel = record.channels[0].id;
    record.readings = {{channel, evening, 1043, Origin::hand, true},
                       {channel, evening, 1043, Origin::hand, false}};
    const auto taken = good(takeIn(m_to, record));
    const auto found = wholeFrom(m_to, taken.firing).readings;
    ASSERT_EQ(found.size(), 2U);
    EXPECT_TRUE(found[0].struck);
    EXPECT_FALSE(found[1].struck);
}

TEST_F(FiringIntake, CallsStruckLinesByTheirNewNumbers) {
    BookWriter writer(m_from);
    const auto now = good(writer.correct(m_sample.looks[0], evening));
    expectGood(writer.strike(m_sample.notes[0].id, evening));
    good(BookWriter(m_to).add(kilnCalled("another")));
    for (int shift = 0; shift < 2; ++shift) // the second time numbers differ
        good(takeIn(m_to, wholeFrom(m_from, m_sample.firing.id)));
    const auto found = wholeFrom(m_to, FiringId{2});
    ASSERT_EQ(found.logEvents.size(), 2U);
    const auto numberOf = [](auto id) { return std::to_string(static_cast<std::int64_t>(id)); };
    const auto record = wholeFrom(m_from, m_sample.firing.id);
    const auto rank = [&](LookId id) {
        return std::ranges::find(record.looks, id, &Look::id) - record.looks.begin();
    };
    EXPECT_EQ(found.logEvents[0].detail, "look " + numberOf(found.looks.at(rank(m_sample.looks[0].id)).id) +
                                             " by look " + numberOf(found.looks.at(rank(now)).id));
    EXPECT_EQ(found.logEvents[1].detail, "note " + numberOf(found.notes.at(0).id));
    EXPECT_NE(found.notes.at(0).id, m_sample.notes[0].id);
}

TEST_F(FiringIntake, WritesNothingOfARecordThatTheBookRefuses) {
    auto record = m_sample;
    record.photos[0].jpeg = "no picture";
    const auto taken = takeIn(m_to, record);
    ASSERT_FALSE(taken.ok());
    EXPECT_EQ(taken.error().kind, ErrorKind::badInput);
    EXPECT_TRUE(good(BookReader(m_to).kilns()).empty());
    auto dangling = m_sample;
    dangling.readings[0].channel = ChannelId{999};
    EXPECT_EQ(takeIn(m_to, dangling).error().kind, ErrorKind::badInput);
    EXPECT_TRUE(good(BookReader(m_to).kilns()).empty());
    EXPECT_TRUE(good(BookReader(m_to).firings()).empty());
}

TEST_F(FiringIntake, RecognisesAFiringByItsReadings) {
    EXPECT_FALSE(good(sameFiring(m_to, m_sample)));
    const auto taken = good(takeIn(m_to, m_sample));
    auto again = m_sample;
    again.firing.title = "Renamed";
    again.kiln.name = "another";
    const auto same = good(sameFiring(m_to, again));
    ASSERT_TRUE(same);
    EXPECT_EQ(same->id, taken.firing);
    again.readings[0].value += 0.04; // rounded by some spreadsheet
    EXPECT_TRUE(good(sameFiring(m_to, again)));
    for (auto& reading : again.readings)
        reading.value += 1;
    EXPECT_FALSE(good(sameFiring(m_to, again)));
    again = m_sample;
    for (auto& reading : again.readings)
        reading.at += std::chrono::milliseconds(1);
    EXPECT_FALSE(good(sameFiring(m_to, again)));
}

TEST_F(FiringIntake, RecognisesAFiringWithoutReadingsByItsName) {
    auto quiet = m_sample;
    quiet.readings.clear();
    good(takeIn(m_to, quiet));
    EXPECT_TRUE(good(sameFiring(m_to, quiet)));
    quiet.firing.title = "another";
    EXPECT_FALSE(good(sameFiring(m_to, quiet)));
}

} // namespace
} // namespace ringhold::test
