#include "core/book/check.h"
#include "core/book/copy.h"
#include "core/book/journal.h"
#include "tests/core/book/faulty_disk.h"
#include "tests/core/book/sample_firing.h"

namespace ringhold::test {
namespace {

using Names = std::vector<std::string>;

TEST(CopyBook, CopiesAlsoWhatWasCommittedLate) {
    const BookFolder folder;
    {
        const Book book = bookAt(folder / "kiln.ringhold");
        const FiringRecord sample = writeSample(book); // still in the log of late commits
        expectGood(copyBook(book.file(), folder / "copy.ringhold"));
        const Book copy = bookAt(folder / "copy.ringhold", Access::write);
        EXPECT_EQ(copy.id(), book.id());
        expectSame(good(BookReader(copy).whole(sample.firing.id)).looks, sample.looks);
        EXPECT_TRUE(good(checkBook(copy.file())).empty());
    }
    EXPECT_EQ(folder.names(), (Names{"copy.ringhold", "kiln.ringhold"}));
}

TEST(CopyBook, NeverOverwrites) {
    const BookFolder folder;
    bookAt(folder / "kiln.ringhold");
    write(folder / "precious", "x");
    fs::create_symlink("nowhere", folder / "link");
    for (const char* name : {"precious", "link", "kiln.ringhold"})
        EXPECT_EQ(copyBook(folder / "kiln.ringhold", folder / name).error().kind, ErrorKind::badInput)
            << name;
    EXPECT_EQ(copyBook(folder / "kiln.ringhold", folder.path()).error().kind, ErrorKind::badInput);
    EXPECT_EQ(bytesOf(folder / "precious"), "x");
    EXPECT_EQ(folder.names(), (Names{"kiln.ringhold", "link", "precious"}));
}

TEST(CopyBook, SaysWhatIsMissing) {
    const BookFolder folder;
    EXPECT_EQ(copyBook(folder / "none", folder / "to").error().kind, ErrorKind::notFound);
    bookAt(folder / "kiln.ringhold");
    const Status copied = copyBook(folder / "kiln.ringhold", folder / "nowhere/to");
    EXPECT_EQ(copied.error().kind, ErrorKind::notFound);
    write(folder / "text", "hello");
    EXPECT_EQ(copyBook(folder / "text", folder / "to").error().kind, ErrorKind::foreign);
    EXPECT_EQ(folder.names(), (Names{"kiln.ringhold", "text"}));
}

TEST(CopyBook, LeavesNothingHalfWrittenOnAFullDisk) {
    const BookFolder folder;
    const BookFolder stick;
    FaultyDisk disk;
    const Book book = bookAt(folder / "kiln.ringhold");
    writeSample(book);
    disk.fillUp();
    const Status copied = copyBook(book.file(), stick / "to");
    EXPECT_EQ(copied.error().kind, ErrorKind::unwritable) << copied.error().text();
    EXPECT_TRUE(stick.names().empty());
    disk.fillUp(false);
    expectGood(copyBook(book.file(), stick / "to"));
}

TEST(CopyBook, LeavesNothingHalfWrittenInALockedFolder) {
    const BookFolder folder;
    const BookFolder locked;
    bookAt(folder / "kiln.ringhold");
    fs::permissions(folder / "kiln.ringhold", fs::perms(0444));
    fs::permissions(locked.path(), fs::perms(0555));
    const AsNobody nobody;
    const Status copied = copyBook(folder / "kiln.ringhold", locked / "to");
    EXPECT_EQ(copied.error().kind, ErrorKind::unwritable) << copied.error().text();
    EXPECT_TRUE(locked.names().empty());
}

TEST(CopyBook, MakesNoCopyOfADamagedBook) {
    const BookFolder folder;
    const fs::path file = folder / "kiln.ringhold";
    writeSample(bookAt(file));
    std::string bytes = bytesOf(file);
    bytes.replace(bytes.size() - 4096, 200, 200, '\xA5');
    write(file, bytes);
    EXPECT_EQ(copyBook(file, folder / "to").error().kind, ErrorKind::unreadable);
    EXPECT_EQ(folder.names(), Names{"kiln.ringhold"});
}

class Deaf : public JournalListener {
    void onDurable(Ticket) override {}
    void onRefused(Ticket, const Reading&, const Error&) override {}
    void onFailing(const Error&) override {}
    void onRecovered() override {}
};

TEST(CopyBook, IsOneMomentOfABookThatIsBeingWritten) {
    const BookFolder folder;
    const Book book = bookAt(folder / "kiln.ringhold");
    const ChannelId channel = writeSample(book).channels[1].id;
    Deaf listener;
    const auto journal = good(BookJournal::open(book.file(), listener));
    for (int i = 0; i < 5; ++i) {
        for (int j = 0; j < 400; ++j)
            journal->append({channel, evening + std::chrono::minutes(1 + i * 400 + j), 230.0, {}, false});
        const Ticket acknowledged = journal->durable();
        const fs::path copy = folder / ("copy" + std::to_string(i));
        expectGood(copyBook(book.file(), copy));
        EXPECT_TRUE(good(checkBook(copy)).empty());
        const auto kept = good(BookReader(bookAt(copy, Access::read)).readings(channel));
        EXPECT_GE(kept.size(), 1 + acknowledged);
        for (std::size_t k = 1; k < kept.size(); ++k)
            EXPECT_EQ(kept[k].at, evening + std::chrono::minutes(k)); // no hole
    }
}

} // namespace
} // namespace ringhold::test
