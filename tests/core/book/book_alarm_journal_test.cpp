#include "core/book/book_alarm_journal.h"
#include "core/book/reader.h"
#include "tests/core/book/faulty_disk.h"
#include "tests/core/book/sample_firing.h"

#include <future>

namespace ringhold::test {
namespace {

using std::chrono::milliseconds;

/// Remembers what the journal said, and waits for it.
class AlarmEar {
  public:
    BookAlarmJournal::Listener listener() {
        return [this](const Status& kept) {
            const std::lock_guard lock(m_mutex);
            kept ? ++m_kept : ++m_failed;
            if (!kept)
                m_why = kept.error();
            m_told.notify_all();
        };
    }
    /// Within a minute.
    bool hearsKept(int count) {
        std::unique_lock lock(m_mutex);
        return m_told.wait_for(lock, std::chrono::minutes(1), [&] { return m_kept >= count; });
    }
    bool hearsFailed(int count) {
        std::unique_lock lock(m_mutex);
        return m_told.wait_for(lock, std::chrono::minutes(1), [&] { return m_failed >= count; });
    }
    Error why() {
        const std::lock_guard lock(m_mutex);
        return m_why;
    }

  private:
    std::mutex m_mutex;
    std::condition_variable m_told;
    int m_kept = 0;
    int m_failed = 0;
    Error m_why;
};

class BookAlarmJournalTest : public testing::Test {
  protected:
    BookAlarmJournalTest() {
        const Book book = bookAt(m_file);
        BookWriter writer(book);
        m_firing = good(writer.add(firingFrom(good(writer.add(kilnCalled("a"))), "b", evening)));
    }
    AlarmEvent event(int second, AlarmChange change = AlarmChange::raised) const {
        return {m_firing,
                evening + std::chrono::seconds(second),
                "sag",
                change,
                AlarmLevel::warning,
                "Volts 5 % down.",
                change == AlarmChange::acknowledged ? "Ida" : ""};
    }
    std::vector<AlarmEvent> inBook() const {
        const Book book = good(Book::open(m_file, Access::read));
        return good(BookReader(book).alarmEvents(m_firing));
    }

    BookFolder m_folder;
    std::filesystem::path m_file = m_folder.path() / "a.ringhold";
    AlarmEar m_ear;
    FiringId m_firing{};
};

TEST_F(BookAlarmJournalTest, KeepsEventsInTheirOrder) {
    const std::vector<AlarmEvent> events{event(0), event(40, AlarmChange::worsened),
                                         event(70, AlarmChange::acknowledged),
                                         event(300, AlarmChange::ended)};
    {
        BookAlarmJournal journal(m_file, m_ear.listener());
        for (const auto& each : events)
            journal.append(each);
    }
    EXPECT_EQ(inBook(), events);
}

TEST_F(BookAlarmJournalTest, AFullDiskDelaysNobodyAndLosesNothing) {
    FaultyDisk disk;
    {
        BookAlarmJournal journal(m_file, m_ear.listener(), milliseconds(10));
        journal.append(event(0));
        ASSERT_TRUE(m_ear.hearsKept(1));
        disk.fillUp();
        journal.append(event(1));
        journal.append(event(2));
        ASSERT_TRUE(m_ear.hearsFailed(2));
        EXPECT_EQ(m_ear.why().kind, ErrorKind::unwritable);
        EXPECT_EQ(journal.pending(), 2u);
        disk.fillUp(false);
        ASSERT_TRUE(m_ear.hearsKept(3));
        EXPECT_EQ(journal.pending(), 0u);
    }
    EXPECT_EQ(inBook().size(), 3u);
}

TEST_F(BookAlarmJournalTest, WaitsForABookThatIsNotThereYet) {
    const auto away = m_folder.path() / "away.ringhold";
    std::filesystem::rename(m_file, away);
    {
        BookAlarmJournal journal(m_file, m_ear.listener(), milliseconds(10));
        journal.append(event(0));
        ASSERT_TRUE(m_ear.hearsFailed(1));
        std::filesystem::rename(away, m_file);
        ASSERT_TRUE(m_ear.hearsKept(1));
    }
    EXPECT_EQ(inBook().size(), 1u);
}

TEST_F(BookAlarmJournalTest, GivesUpOnlyWhatTheBookCanNeverTake) {
    {
        BookAlarmJournal journal(m_file, m_ear.listener(), milliseconds(10));
        AlarmEvent stray = event(0);
        stray.firing = FiringId{77};
        journal.append(stray);
        journal.append(event(1));
        ASSERT_TRUE(m_ear.hearsKept(1));
    }
    EXPECT_TRUE(m_ear.hearsFailed(1));
    EXPECT_EQ(inBook(), std::vector{event(1)});
}

} // namespace
} // namespace ringhold::test
