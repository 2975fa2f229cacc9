#include "core/book/journal.h"
#include "core/book/reading_store.h"
#include "tests/core/book/faulty_disk.h"
#include "tests/core/book/sample_firing.h"

#include <sys/wait.h>

#include <cmath>
#include <condition_variable>
#include <csignal>
#include <functional>
#include <mutex>
#include <set>
#include <thread>

namespace ringhold::test {
namespace {

using std::chrono::milliseconds;

const JournalTiming hasty{milliseconds(20), milliseconds(10)};

/// Remembers what the journal said, and waits for it.
class Ear : public JournalListener {
  public:
    void onDurable(Ticket upTo) override {
        tell([&] { m_durable = upTo; });
        if (whenDurable)
            whenDurable(upTo);
    }
    void onRefused(Ticket ticket, const Reading&, const Error& why) override {
        tell([&] { refused.emplace_back(ticket, why); });
    }
    void onFailing(const Error& why) override {
        tell([&] { failures.push_back(why); });
    }
    void onRecovered() override {
        tell([&] { ++recoveries; });
    }

    void onChannel(ChannelId given, ChannelId kept) override {
        tell([&] { channels.emplace_back(given, kept); });
    }

    /// Whether all that became true within a minute; read nothing else while the journal runs.
    bool hears(const std::function<bool()>& wanted) {
        std::unique_lock lock(m_mutex);
        return m_told.wait_for(lock, std::chrono::minutes(1), wanted);
    }
    bool hearsDurable(Ticket upTo) {
        return hears([&] { return m_durable >= upTo; });
    }
    bool hearsFailure(std::size_t count) {
        return hears([&] { return failures.size() >= count; });
    }

    std::function<void(Ticket)> whenDurable;
    std::vector<Error> failures;
    std::vector<std::pair<Ticket, Error>> refused;
    std::vector<std::pair<ChannelId, ChannelId>> channels;
    int recoveries = 0;

  private:
    void tell(const std::function<void()>& change) {
        const std::lock_guard lock(m_mutex);
        change();
        m_told.notify_all();
    }
    std::mutex m_mutex;
    std::condition_variable m_told;
    Ticket m_durable = 0;
};

class JournalTest : public testing::Test {
  protected:
    JournalTest() {
        const Book book = bookAt(m_file);
        BookWriter writer(book);
        const KilnId kiln = good(writer.add(kilnCalled("a")));
        m_firing = good(writer.add(firingFrom(kiln, "b", evening)));
        m_channel = good(writer.add(Channel{{}, m_firing, Quantity::temperature, "T1", {}}));
    }
    std::unique_ptr<BookJournal> open() { return good(BookJournal::open(m_file, m_ear, hasty)); }
    /// The reading with that number, always the same.
    Reading reading(int number) const {
        return {m_channel, evening + milliseconds(number), 20.0 + number / 7.0, Origin::instrument, false};
    }
    std::vector<Reading> readings(int count) const {
        std::vector<Reading> all;
        for (int i = 0; i < count; ++i)
            all.push_back(reading(i));
        return all;
    }
    std::vector<Reading> kept(const fs::path& file) const {
        return good(BookReader(bookAt(file, Access::read)).readings(m_channel));
    }
    std::vector<Reading> kept() const { return kept(m_file); }

    BookFolder m_folder;
    fs::path m_file = m_folder / "kiln.ringhold";
    FiringId m_firing{};
    ChannelId m_channel{};
    Ear m_ear;
};

TEST_F(JournalTest, WritesAndAcknowledges) {
    const auto journal = open();
    for (int i = 0; i < 10; ++i)
        EXPECT_EQ(journal->append(reading(i)), static_cast<Ticket>(i + 1));
    EXPECT_TRUE(m_ear.hearsDurable(10));
    expectSame(kept(), readings(10));
    expectGood(journal->flush());
    EXPECT_EQ(journal->durable(), 10U);
    EXPECT_TRUE(journal->pending().empty());
    EXPECT_TRUE(m_ear.failures.empty());
}

TEST_F(JournalTest, AcknowledgedMeansThatOthersCanReadIt) {
    std::size_t shortfalls = 0;
    m_ear.whenDurable = [&](Ticket upTo) { shortfalls += kept().size() < upTo ? 1 : 0; };
    const auto journal = open();
    for (int i = 0; i < 200; ++i) {
        journal->append(reading(i));
        if (i % 20 == 0)
            expectGood(journal->flush());
    }
    expectGood(journal->close());
    EXPECT_EQ(shortfalls, 0U);
    EXPECT_EQ(kept().size(), 200U);
}

TEST_F(JournalTest, ClosingWritesAllThatWaits) {
    {
        const auto journal = open();
        for (int i = 0; i < 12'000; ++i) // more than go into one transaction
            journal->append(reading(i));
    }
    expectSame(kept(), readings(12'000));
}

TEST_F(JournalTest, SurvivesAFullDisk) {
    FaultyDisk disk;
    const auto journal = open();
    journal->append(reading(0));
    expectGood(journal->flush());
    disk.fillUp();
    for (int i = 1; i < 50; ++i)
        journal->append(reading(i));
    ASSERT_TRUE(m_ear.hearsFailure(1));
    EXPECT_EQ(m_ear.failures[0].kind, ErrorKind::unwritable);
    EXPECT_EQ(journal->flush().error().kind, ErrorKind::unwritable);
    EXPECT_EQ(journal->durable(), 1U);
    EXPECT_EQ(journal->pending().size(), 49U);
    EXPECT_EQ(kept().size(), 1U);
    disk.fillUp(false);
    ASSERT_TRUE(m_ear.hearsDurable(50));
    expectGood(journal->close());
    EXPECT_EQ(m_ear.recoveries, 1);
    EXPECT_EQ(m_ear.failures.size(), 1U); // said once, not at every try
    expectSame(kept(), readings(50));
}

TEST_F(JournalTest, SurvivesADiskThatCannotBeSynced) {
    FaultyDisk disk;
    const auto journal = open();
    disk.failSync();
    for (int i = 0; i < 50; ++i)
        journal->append(reading(i));
    ASSERT_TRUE(m_ear.hearsFailure(1));
    EXPECT_EQ(journal->durable(), 0U);
    disk.failSync(false);
    ASSERT_TRUE(m_ear.hearsDurable(50));
    expectGood(journal->close());
    expectSame(kept(), readings(50));
}

/// An old memory card takes a second to settle: readings come as fast as ever.
TEST_F(JournalTest, ASlowDiskHoldsNobodyUp) {
    FaultyDisk disk;
    const auto journal = open();
    disk.slowDown(milliseconds(200));
    const auto from = std::chrono::steady_clock::now();
    for (int i = 0; i < 50; ++i)
        journal->append(reading(i));
    EXPECT_LT(std::chrono::steady_clock::now() - from, milliseconds(150)) << "shorter than one sync";
    EXPECT_LT(journal->durable(), 50U) << "not acknowledged before it is on the platter";
    ASSERT_TRUE(m_ear.hearsDurable(50));
    disk.slowDown(milliseconds(0));
    expectGood(journal->close());
    EXPECT_TRUE(m_ear.failures.empty());
    expectSame(kept(), readings(50));
}

TEST_F(JournalTest, SaysWhatItCouldNotWriteWhenItEnds) {
    FaultyDisk disk;
    const auto journal = open();
    disk.fillUp();
    for (int i = 0; i < 3; ++i)
        journal->append(reading(i));
    EXPECT_EQ(journal->close().error().kind, ErrorKind::unwritable);
    expectSame(journal->pending(), readings(3));
    disk.fillUp(false);
}

TEST_F(JournalTest, WaitsForAProgramThatHoldsTheBook) {
    const auto journal = open();
    {
        const Book other = bookAt(m_file, Access::write);
        const auto held = good(WriteTransaction::begin(other));
        journal->append(reading(0));
        ASSERT_TRUE(m_ear.hearsFailure(1));
        EXPECT_EQ(m_ear.failures[0].kind, ErrorKind::failed);
    }
    EXPECT_TRUE(m_ear.hearsDurable(1));
    EXPECT_EQ(kept().size(), 1U);
}

TEST_F(JournalTest, RefusesAloudWhatCannotBeKeptAndGoesOn) {
    const auto journal = open();
    journal->append(reading(0));
    Reading stray = reading(1);
    stray.channel = ChannelId{99};
    const Ticket first = journal->append(stray);
    Reading nothing = reading(2);
    nothing.value = std::nan("");
    const Ticket second = journal->append(nothing);
    journal->append(reading(3));
    ASSERT_TRUE(m_ear.hearsDurable(4));
    expectGood(journal->close());
    ASSERT_EQ(m_ear.refused.size(), 2U);
    EXPECT_EQ(m_ear.refused[0].first, first);
    EXPECT_EQ(m_ear.refused[0].second.kind, ErrorKind::badInput);
    EXPECT_EQ(m_ear.refused[1].first, second);
    expectSame(kept(), {reading(0), reading(3)});
}

/// In one transaction, where one statement serves all of them.
TEST_F(JournalTest, KeepsWhatComesRightAfterARefusedReading) {
    auto store = good(ReadingStore::open(m_file, milliseconds(20)));
    Reading nothing = reading(1);
    nothing.value = std::nan("");
    const Batch batch{{}, {reading(0), nothing, reading(2), reading(3)}};
    const auto refused = good(store.commit(batch)).refused;
    ASSERT_EQ(refused.size(), 1U);
    EXPECT_EQ(refused[0].place, 1U);
    expectSame(kept(), {reading(0), reading(2), reading(3)});
}

TEST_F(JournalTest, WritesNewChannelsBeforeTheirReadings) {
    const auto journal = open();
    journal->keep(Channel{ChannelId{-3}, m_firing, Quantity::lineVolts, "V", {}});
    Reading volts = reading(0);
    volts.channel = ChannelId{-3};
    journal->append(volts);
    ASSERT_TRUE(m_ear.hearsDurable(1));
    volts.at += milliseconds(1);
    journal->append(volts); // in a later batch, by the same id
    journal->append(reading(5));
    expectGood(journal->close());
    ASSERT_EQ(m_ear.channels.size(), 1U);
    EXPECT_EQ(m_ear.channels[0].first, ChannelId{-3});
    const auto channels = good(BookReader(bookAt(m_file, Access::read)).channels(m_firing));
    ASSERT_EQ(channels.size(), 2U);
    EXPECT_EQ(channels[1].id, m_ear.channels[0].second);
    EXPECT_EQ(channels[1].label, "V");
    EXPECT_EQ(good(BookReader(bookAt(m_file, Access::read)).readings(channels[1].id)).size(), 2U);
    EXPECT_EQ(kept().size(), 1U);
    EXPECT_TRUE(m_ear.refused.empty());
}

TEST_F(JournalTest, WritesAChannelThatIsThereOnlyOnce) {
    for (int i = 0; i < 2; ++i) {
        const auto journal = open();
        journal->keep(Channel{ChannelId{-1}, m_firing, Quantity::temperature, "T1", {}});
        Reading first = reading(i);
        first.channel = ChannelId{-1};
        journal->append(first);
        expectGood(journal->close());
    }
    EXPECT_EQ(good(BookReader(bookAt(m_file, Access::read)).channels(m_firing)).size(), 1U);
    EXPECT_EQ(kept().size(), 2U);
}

TEST_F(JournalTest, NamesAChannelAndRefusesOneOfNoFiring) {
    const auto journal = open();
    journal->keep(Channel{m_channel, m_firing, Quantity::temperature, "middle", {}});
    journal->keep(Channel{ChannelId{-1}, FiringId{99}, Quantity::lineVolts, "V", {}});
    Reading stray = reading(0);
    stray.channel = ChannelId{-1};
    journal->append(stray);
    journal->append(reading(1));
    ASSERT_TRUE(m_ear.hearsDurable(2));
    expectGood(journal->close());
    ASSERT_EQ(m_ear.refused.size(), 1U);
    EXPECT_EQ(m_ear.refused[0].first, 1U);
    EXPECT_EQ(good(BookReader(bookAt(m_file, Access::read)).channels(m_firing)).at(0).label, "middle");
    expectSame(kept(), {reading(1)});
}

TEST_F(JournalTest, KeepsAChannelThatWaitedForAFullDisk) {
    FaultyDisk disk;
    const auto journal = open();
    disk.fillUp();
    journal->keep(Channel{ChannelId{-1}, m_firing, Quantity::lineVolts, "V", {}});
    Reading volts = reading(0);
    volts.channel = ChannelId{-1};
    journal->append(volts);
    ASSERT_TRUE(m_ear.hearsFailure(1));
    disk.fillUp(false);
    ASSERT_TRUE(m_ear.hearsDurable(1));
    expectGood(journal->close());
    EXPECT_EQ(good(BookReader(bookAt(m_file, Access::read)).channels(m_firing)).size(), 2U);
    EXPECT_TRUE(m_ear.refused.empty());
}

TEST_F(JournalTest, TakesNoOtherBookForOneThatWasMovedAway) {
    const auto journal = open();
    journal->append(reading(0));
    expectGood(journal->flush());
    fs::rename(m_file, m_folder / "away.ringhold");
    journal->append(reading(1));
    ASSERT_TRUE(m_ear.hearsFailure(1));
    EXPECT_EQ(m_ear.failures[0].kind, ErrorKind::notFound);
    expectSame(kept(m_folder / "away.ringhold"), readings(1));
    bookAt(m_file);
    ASSERT_TRUE(
        m_ear.hears([&] { return m_ear.failures.back().what.find("another book") != std::string::npos; }));
    fs::rename(m_folder / "away.ringhold", m_file);
    ASSERT_TRUE(m_ear.hearsDurable(2));
    expectGood(journal->close());
    expectSame(kept(), readings(2));
}

TEST_F(JournalTest, WritesNothingTwice) {
    {
        const auto journal = open();
        for (int i = 0; i < 20; ++i)
            journal->append(reading(i));
    }
    const auto again = open();
    for (int i = 0; i < 25; ++i)
        again->append(reading(i));
    expectGood(again->close());
    expectSame(kept(), readings(25));
}

TEST_F(JournalTest, TakesReadingsFromManyThreadsBesideAWriter) {
    constexpr int threads = 4;
    constexpr int each = 1000;
    const auto journal = open();
    std::array<std::vector<Ticket>, threads> tickets;
    std::vector<std::thread> running;
    for (int t = 0; t < threads; ++t)
        running.emplace_back([&, t] {
            for (int i = 0; i < each; ++i)
                tickets[static_cast<std::size_t>(t)].push_back(journal->append(reading(t * each + i)));
        });
    running.emplace_back([&] {
        const Book book = bookAt(m_file, Access::write);
        BookWriter writer(book);
        for (int i = 0; i < 20; ++i)
            good(writer.add(noteThat(m_firing, "note")));
    });
    for (auto& thread : running)
        thread.join();
    expectGood(journal->flush());
    std::set<Ticket> all;
    for (const auto& some : tickets) {
        EXPECT_TRUE(std::is_sorted(some.begin(), some.end()));
        all.insert(some.begin(), some.end());
    }
    EXPECT_EQ(all.size(), static_cast<std::size_t>(threads * each));
    EXPECT_EQ(*all.rbegin(), static_cast<Ticket>(threads * each));
    expectGood(journal->close());
    expectSame(kept(), readings(threads * each));
    EXPECT_EQ(good(BookReader(bookAt(m_file, Access::read)).whole(m_firing)).notes.size(), 20U);
}

TEST_F(JournalTest, ACrashKeepsAllThatWasAcknowledged) {
    // A reader at work keeps late commits out of the main file, so that it stays as it is while both are
    // copied.
    const Book reader = bookAt(m_file, Access::write);
    reader.database().exec("BEGIN; SELECT count(*) FROM reading");
    const auto journal = open();
    std::thread instrument([&] {
        for (int i = 0; i < 3000; ++i)
            journal->append(reading(i));
    });
    for (int crash = 0; crash < 5; ++crash) {
        const fs::path copy = m_folder / ("crash" + std::to_string(crash));
        ASSERT_TRUE(m_ear.hearsDurable(static_cast<Ticket>(1 + crash * 500)));
        fs::copy_file(m_file, copy);
        const Ticket acknowledged = journal->durable();
        fs::copy_file(m_folder / "kiln.ringhold-wal", m_folder / (copy.filename().string() + "-wal"));
        const auto found = kept(copy);
        EXPECT_GE(found.size(), acknowledged);
        expectSame(found, readings(static_cast<int>(found.size())));
    }
    instrument.join();
}

/// Runs a journal in another process until it is killed; every acknowledged ticket goes into the pipe first.
[[noreturn]] void logUntilKilled(const fs::path& file, const std::vector<Reading>& readings, int pipe) {
    Ear ear;
    ear.whenDurable = [&](Ticket upTo) {
        if (::write(pipe, &upTo, sizeof upTo) != sizeof upTo)
            ::_exit(1);
    };
    const auto journal = BookJournal::open(file, ear, hasty);
    for (const auto& reading : readings)
        (*journal)->append(reading);
    static_cast<void>((*journal)->flush());
    ::pause();
    ::_exit(1);
}

TEST_F(JournalTest, AKilledProcessLosesNothingAcknowledged) {
    const auto all = readings(200'000);
    std::array<int, 2> pipe{};
    ASSERT_EQ(::pipe(pipe.data()), 0);
    const pid_t child = ::fork();
    if (child == 0)
        logUntilKilled(m_file, all, pipe[1]);
    ::close(pipe[1]);
    Ticket acknowledged = 0;
    Ticket heard = 0;
    int acknowledgements = 0;
    while (::read(pipe[0], &heard, sizeof heard) == sizeof heard) {
        acknowledged = heard;
        if (++acknowledgements == 3)
            ::kill(child, SIGKILL);
    }
    ::close(pipe[0]);
    int status = 0;
    ASSERT_EQ(::waitpid(child, &status, 0), child);
    EXPECT_TRUE(WIFSIGNALED(status));
    EXPECT_GE(acknowledgements, 3);
    const auto found = kept();
    EXPECT_GE(found.size(), acknowledged);
    EXPECT_LT(found.size(), all.size()); // it was killed in the middle
    expectSame(found, {all.begin(), all.begin() + static_cast<long>(found.size())});
}

/// Another process that logs to the book and ends well when all is written.
pid_t logElsewhere(const fs::path& file, const std::vector<Reading>& readings) {
    const pid_t child = ::fork();
    if (child != 0)
        return child;
    Ear ear;
    const auto journal = BookJournal::open(file, ear);
    if (!journal)
        ::_exit(1);
    for (const auto& reading : readings) {
        (*journal)->append(reading);
        if (reading.at.time_since_epoch().count() % 50 == 0 && !(*journal)->flush())
            ::_exit(2);
    }
    ::_exit((*journal)->close() ? 0 : 3);
}

TEST_F(JournalTest, TwoProcessesShareABook) {
    ChannelId other{};
    {
        const Book book = bookAt(m_file, Access::write);
        other = good(BookWriter(book).add(Channel{{}, m_firing, Quantity::lineVolts, "U", {}}));
    }
    auto theirs = readings(1000);
    for (auto& reading : theirs)
        reading.channel = other;
    const pid_t child = logElsewhere(m_file, theirs);
    const auto journal = good(BookJournal::open(m_file, m_ear));
    for (int i = 0; i < 1000; ++i) {
        journal->append(reading(i));
        if (i % 50 == 0)
            expectGood(journal->flush());
    }
    expectGood(journal->close());
    int status = -1;
    ASSERT_EQ(::waitpid(child, &status, 0), child);
    EXPECT_EQ(status, 0);
    expectSame(kept(), readings(1000));
    expectSame(good(BookReader(bookAt(m_file, Access::read)).readings(other)), theirs);
}

TEST(Journal, NeedsABookThatIsThere) {
    const BookFolder folder;
    Ear ear;
    EXPECT_EQ(BookJournal::open(folder / "none.ringhold", ear).error().kind, ErrorKind::notFound);
    EXPECT_TRUE(folder.names().empty());
}

} // namespace
} // namespace ringhold::test
