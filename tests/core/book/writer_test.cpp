#include "core/book/writer.h"
#include "tests/core/book/faulty_disk.h"
#include "tests/core/book/sample_firing.h"

#include <cmath>
#include <limits>

namespace ringhold::test {
namespace {

using std::chrono::seconds;

constexpr double infinity = std::numeric_limits<double>::infinity();

class WriteBook : public testing::Test {
  protected:
    std::int64_t count(const char* table) const {
        return m_book.database().execAndGet(std::string("SELECT count(*) FROM ") + table).getInt64();
    }
    BookFolder m_folder;
    Book m_book = bookAt(m_folder / "kiln.ringhold");
    BookWriter m_writer{m_book};
    BookReader m_reader{m_book};
    FiringRecord m_sample = writeSample(m_book);
};

template <class Outcome>
void expectRefused(const Outcome& outcome, ErrorKind kind, const std::string& says) {
    ASSERT_FALSE(outcome.ok()) << says;
    EXPECT_EQ(outcome.error().kind, kind) << outcome.error().text();
    EXPECT_NE(outcome.error().what.find(says), std::string::npos) << outcome.error().text();
}

TEST_F(WriteBook, KilnNamesAreUnique) {
    expectRefused(m_writer.add(kilnCalled("old BERTHA é")), ErrorKind::badInput, "a kiln of that name");
    Kiln other = kilnCalled("other");
    other.id = good(m_writer.add(other));
    other.name = m_sample.kiln.name;
    expectRefused(m_writer.alter(other), ErrorKind::badInput, "a kiln of that name");
}

TEST_F(WriteBook, AKilnHasOneOpenFiring) {
    expectRefused(m_writer.add(firingFrom(m_sample.kiln.id, "second", evening)), ErrorKind::badInput,
                  "open firing already");
    good(m_writer.add(firingFrom(m_sample.kiln.id, "past", evening, evening + seconds(1))));
}

TEST_F(WriteBook, RefusesWhatBreaksTheRules) {
    Kiln kiln = kilnCalled(" ");
    expectRefused(m_writer.add(kiln), ErrorKind::badInput, "a kiln has a name");
    kiln = kilnCalled("x");
    kiln.volume_L = -1;
    expectRefused(m_writer.add(kiln), ErrorKind::badInput, "a volume is above 0");
    kiln = kilnCalled("x");
    kiln.ratedPower = Power{infinity};
    expectRefused(m_writer.add(kiln), ErrorKind::badInput, "a rated power");
    const PackId pack = m_sample.packs[0].id;
    for (const double hour : {-0.5, 6.5, 2.25, 12.0, infinity})
        expectRefused(m_writer.add(lookAt(pack, "8", hour)), ErrorKind::badInput,
                      "a cone's hour is 0 to 6, in halves");
    expectRefused(m_writer.add(lookAt(pack, "7", 1)), ErrorKind::badInput, "refers to");
    expectRefused(m_writer.add(noteThat(m_sample.firing.id, " ")), ErrorKind::badInput, "a note has words");
    expectRefused(m_writer.add(noteThat(FiringId{99}, "x")), ErrorKind::badInput, "refers to");
    expectRefused(m_writer.end(m_sample.firing.id, evening - seconds(1)), ErrorKind::badInput,
                  "does not end before it begins");
    Outcome outcome = m_sample.outcomes[0];
    outcome.largest_mm = -1;
    expectRefused(m_writer.set(outcome), ErrorKind::badInput, "a crystal's size");
    expectRefused(m_writer.add(Channel{{}, m_sample.firing.id, Quantity::duty, "d", m_sample.probes[0].id}),
                  ErrorKind::badInput, "only a temperature comes from a probe");
    expectRefused(m_writer.add(Channel{{}, m_sample.firing.id, Quantity::lineVolts, "U", {}}),
                  ErrorKind::badInput, "such a channel already");
}

TEST_F(WriteBook, RefusesPlansAndModelsThatCouldNotBeReadAgain) {
    Firing firing = m_sample.firing;
    firing.modelJson = "{";
    expectRefused(m_writer.alter(firing), ErrorKind::badInput, "JSON");
    firing = m_sample.firing;
    std::get<Climb>(firing.plan->steps[0]).to = Temperature::fromCelsius(std::nan(""));
    EXPECT_EQ(m_writer.alter(firing).error().kind, ErrorKind::badInput);
    EXPECT_TRUE(m_reader.firing(firing.id).ok());
}

TEST_F(WriteBook, RefusesReadingsThatAreNoNumbersAndKeepsNoneOfTheLot) {
    const auto before = count("reading");
    for (const double value : {std::nan(""), infinity, -infinity}) {
        const std::vector<Reading> lot{{m_sample.channels[0].id, evening + seconds(20), 1, {}, false},
                                       {m_sample.channels[0].id, evening + seconds(21), value, {}, false}};
        EXPECT_EQ(m_writer.add(lot).error().kind, ErrorKind::badInput);
    }
    EXPECT_EQ(count("reading"), before);
}

TEST_F(WriteBook, AltersRecords) {
    Kiln kiln = m_sample.kiln;
    kiln.note = "new lid";
    kiln.volume_L.reset();
    expectGood(m_writer.alter(kiln));
    Probe probe = m_sample.probes[0];
    probe.retired = evening + seconds(99);
    expectGood(m_writer.alter(probe));
    Channel channel = m_sample.channels[1];
    channel.label = "volts";
    expectGood(m_writer.alter(channel));
    Piece piece = m_sample.pieces[1];
    piece.glaze = "ice 4";
    expectGood(m_writer.alter(piece));
    Outcome outcome = m_sample.outcomes[1];
    outcome.rings = 3;
    expectGood(m_writer.set(outcome));
    FiledOffset offset = m_sample.filedOffsets[0];
    offset.mean = TemperatureDifference::fromCelsius(4);
    expectGood(m_writer.file(offset));
    const FiringRecord now = good(m_reader.whole(m_sample.firing.id));
    EXPECT_TRUE(fields(now.kiln) == fields(kiln));
    expectSame(now.probes, {probe});
    expectSame(now.channels, {m_sample.channels[0], channel});
    expectSame(now.pieces, {m_sample.pieces[0], piece});
    expectSame(now.outcomes, {m_sample.outcomes[0], outcome});
    expectSame(now.filedOffsets, {offset});
}

TEST_F(WriteBook, SaysWhenThereIsNothingToAlter) {
    Kiln kiln = m_sample.kiln;
    kiln.id = KilnId{99};
    kiln.name = "nobody";
    EXPECT_EQ(m_writer.alter(kiln).error().kind, ErrorKind::notFound);
    EXPECT_EQ(m_writer.end(FiringId{99}, evening).error().kind, ErrorKind::notFound);
    EXPECT_EQ(m_writer.strike(NoteId{99}, evening).error().kind, ErrorKind::notFound);
    EXPECT_EQ(m_writer.strike(MeterStandId{99}, evening).error().kind, ErrorKind::notFound);
    EXPECT_EQ(m_writer.removeOutcome(PieceId{99}).error().kind, ErrorKind::notFound);
    Look look = m_sample.looks[0];
    look.id = LookId{99};
    EXPECT_EQ(m_writer.correct(look, evening).error().kind, ErrorKind::notFound);
    const Reading nowhere{m_sample.channels[0].id, evening + seconds(500), 1, {}, false};
    EXPECT_EQ(m_writer.correct(nowhere, evening).error().kind, ErrorKind::notFound);
}

TEST_F(WriteBook, PiecesAreAddedTogetherOrNotAtAll) {
    Piece bowl{{}, m_sample.firing.id, "small bowl", "ice 3", "1", false, false};
    Piece lost = bowl;
    lost.firing = FiringId{999};
    expectRefused(m_writer.add(std::vector{bowl, lost}), ErrorKind::badInput, "");
    EXPECT_EQ(count("piece"), 2);
    expectGood(m_writer.add(std::vector{bowl, bowl}));
    EXPECT_EQ(good(m_reader.pieces(m_sample.firing.id)).size(), 4U);
}

TEST_F(WriteBook, APieceGoesWithItsOutcome) {
    const PieceId vase = m_sample.pieces[0].id;
    expectGood(m_writer.remove(vase));
    m_sample.pieces.erase(m_sample.pieces.begin());
    m_sample.outcomes.erase(m_sample.outcomes.begin());
    expectSame(good(m_reader.pieces(m_sample.firing.id)), m_sample.pieces);
    expectSame(good(m_reader.outcomes(m_sample.firing.id)), m_sample.outcomes);
    expectRefused(m_writer.remove(vase), ErrorKind::notFound, "no such line");
}

TEST_F(WriteBook, APackKeepsTheConesThatWereLookedAt) {
    Pack pack = m_sample.packs[0];
    pack.cones = {"10", "9", "8", "11"};
    expectGood(m_writer.alter(pack));
    expectSame(good(m_reader.whole(m_sample.firing.id)).packs, {pack});
    Pack less = pack;
    less.cones = {"9"};
    expectRefused(m_writer.alter(less), ErrorKind::badInput, "refers to");
    less.cones = {"8", "10", "8"};
    expectRefused(m_writer.alter(less), ErrorKind::badInput, "each cone once");
    less.firing = FiringId{};
    expectRefused(m_writer.add(less), ErrorKind::badInput, "");
    expectSame(good(m_reader.whole(m_sample.firing.id)).packs, {pack});
    // A refusal in the middle leaves no transaction open: another program may write.
    const Book other = bookAt(m_book.file(), Access::write);
    expectGood(BookWriter(other).setPreference("a", "b"));
}

TEST_F(WriteBook, StrikingANoteKeepsItAndCanBeTakenBack) {
    const NoteId note = m_sample.notes[0].id;
    expectGood(m_writer.strike(note, evening + seconds(30)));
    EXPECT_EQ(m_writer.strike(note, evening).error().kind, ErrorKind::notFound);
    auto notes = good(m_reader.whole(m_sample.firing.id)).notes;
    EXPECT_EQ(notes[0].text, "smells of wax");
    EXPECT_TRUE(notes[0].struck);
    expectGood(m_writer.restore(note, evening + seconds(40)));
    expectSame(good(m_reader.whole(m_sample.firing.id)).notes, m_sample.notes);
    const auto events = good(m_reader.events(m_sample.firing.id));
    ASSERT_EQ(events.size(), 2U);
    EXPECT_EQ(events[0].kind, "struck");
    EXPECT_EQ(events[0].at, evening + seconds(30));
    EXPECT_EQ(events[1].kind, "restored");
}

TEST_F(WriteBook, CorrectingALookStrikesTheOldLine) {
    Look look = m_sample.looks[0];
    look.hour = 3;
    const LookId corrected = good(m_writer.correct(look, evening + seconds(30)));
    const auto looks = good(m_reader.whole(m_sample.firing.id)).looks;
    ASSERT_EQ(looks.size(), 3U);
    EXPECT_EQ(looks[0].hour, 2.5);
    EXPECT_TRUE(looks[0].struck);
    EXPECT_EQ(looks[1].id, corrected);
    EXPECT_EQ(looks[1].hour, 3);
    EXPECT_FALSE(looks[1].struck);
    EXPECT_EQ(good(m_reader.events(m_sample.firing.id))[0].kind, "corrected");
    look.hour = 99;
    look.id = corrected;
    EXPECT_FALSE(m_writer.correct(look, evening).ok());
    EXPECT_FALSE(good(m_reader.whole(m_sample.firing.id)).looks[1].struck);
}

TEST_F(WriteBook, CorrectingAReadingStrikesTheOldLine) {
    const ChannelId channel = m_sample.channels[0].id;
    expectGood(m_writer.correct(Reading{channel, evening, 1000, {}, false}, evening + seconds(30)));
    const auto readings = good(m_reader.readings(channel));
    ASSERT_EQ(readings.size(), 4U);
    EXPECT_EQ(readings[0].value, 1039.7000000000001);
    EXPECT_TRUE(readings[0].struck);
    EXPECT_EQ(readings[1].value, 1000);
    EXPECT_EQ(readings[1].origin, Origin::hand);
    EXPECT_FALSE(readings[1].struck);
}

TEST_F(WriteBook, StrikingReadingsKeepsTheSumsRight) {
    const ChannelId channel = m_sample.channels[0].id;
    const auto sums = [&] {
        const auto summary = good(m_reader.firings())[0];
        return std::pair(summary.readings, summary.peak ? summary.peak->celsius() : -1);
    };
    std::vector<Reading> more;
    for (int i = 10; i < 20; ++i)
        more.push_back({channel, evening + seconds(i), 1050.0 + i, Origin::instrument, false});
    good(m_writer.add(more));
    EXPECT_EQ(sums(), std::pair(std::int64_t{13}, 1069.0));
    EXPECT_EQ(good(m_writer.strikeReadings(channel, evening + seconds(15), evening + seconds(30), evening)),
              5U);
    EXPECT_EQ(sums(), std::pair(std::int64_t{8}, 1064.0));
    EXPECT_EQ(good(m_writer.strikeReadings(channel, evening + seconds(10), evening + seconds(11), evening)),
              2U);
    EXPECT_EQ(sums(), std::pair(std::int64_t{6}, 1064.0));
    EXPECT_EQ(good(m_writer.restoreReadings(channel, evening, evening + seconds(17), evening)), 5U);
    EXPECT_EQ(sums(), std::pair(std::int64_t{11}, 1067.0));
    EXPECT_EQ(good(m_writer.strikeReadings(channel, evening, evening + seconds(99), evening)), 10U);
    EXPECT_EQ(sums(), std::pair(std::int64_t{1}, -1.0)); // only the volts are left
    EXPECT_EQ(count("reading"), 14);                     // and nothing has gone
}

TEST_F(WriteBook, TheBookItselfKeepsLinesFromBeingOverwritten) {
    for (const char* statement :
         {"UPDATE reading SET value = 1", "UPDATE look SET hour = 1", "UPDATE note SET text = 'x'",
          "UPDATE setting SET value = 'x'", "UPDATE meter_stand SET stand = 1",
          "UPDATE step_correction SET step = 9", "UPDATE alarm_event SET words = 'x'",
          "DELETE FROM alarm_event", "DELETE FROM firing", "DELETE FROM channel", "DELETE FROM pack"})
        EXPECT_THROW(m_book.database().exec(statement), SQLite::Exception) << statement;
}

TEST_F(WriteBook, ATransactionIsAllOrNothing) {
    const auto notes = count("note");
    {
        auto transaction = good(WriteTransaction::begin(m_book));
        good(m_writer.add(noteThat(m_sample.firing.id, "one")));
        good(m_writer.add(Pack{{}, m_sample.firing.id, "top", {}, {"8"}, false}));
    }
    EXPECT_EQ(count("note"), notes);
    EXPECT_EQ(count("pack"), 1);
    auto transaction = good(WriteTransaction::begin(m_book));
    good(m_writer.add(noteThat(m_sample.firing.id, "one")));
    good(m_writer.add(Pack{{}, m_sample.firing.id, "top", {}, {"8"}, false}));
    EXPECT_EQ(BookReader(bookAt(m_book.file(), Access::read)).whole(m_sample.firing.id)->packs.size(), 1U);
    expectGood(transaction.commit());
    EXPECT_EQ(BookReader(bookAt(m_book.file(), Access::read)).whole(m_sample.firing.id)->packs.size(), 2U);
}

TEST_F(WriteBook, SaysWhenAnotherProgramHoldsTheBook) {
    const Book other = good(Book::open(m_book.file(), Access::write, std::chrono::milliseconds(20)));
    const auto held = good(WriteTransaction::begin(m_book));
    expectRefused(BookWriter(other).setPreference("a", "b"), ErrorKind::failed, "another program");
    expectRefused(WriteTransaction::begin(other), ErrorKind::failed, "another program");
    EXPECT_TRUE(BookReader(other).whole(m_sample.firing.id).ok()); // reading goes on
}

TEST_F(WriteBook, AReadOnlyBookTakesNothing) {
    const Book book = bookAt(m_book.file(), Access::read);
    expectRefused(BookWriter(book).setPreference("a", "b"), ErrorKind::unwritable, "");
}

TEST(WriteBookOnAFullDisk, KeepsAllOrNothing) {
    const BookFolder folder;
    FaultyDisk disk;
    const Book book = bookAt(folder / "kiln.ringhold");
    BookWriter writer(book);
    const FiringRecord sample = writeSample(book);
    disk.fillUp();
    expectRefused(writer.add(noteThat(sample.firing.id, "lost?")), ErrorKind::unwritable, "full");
    expectRefused(writer.add(Pack{{}, sample.firing.id, "top", {}, {"8"}, false}), ErrorKind::unwritable,
                  "full");
    auto transaction = good(WriteTransaction::begin(book));
    good(writer.add(noteThat(sample.firing.id, "lost?")));
    EXPECT_EQ(transaction.commit().error().kind, ErrorKind::unwritable);
    disk.fillUp(false);
    const auto now = good(BookReader(book).whole(sample.firing.id));
    expectSame(now.notes, sample.notes);
    expectSame(now.packs, sample.packs);
    good(writer.add(noteThat(sample.firing.id, "kept")));
}

} // namespace
} // namespace ringhold::test
