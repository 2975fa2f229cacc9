// Books on disks that are read-only or full.
#include "tests/core/book/book_folder.h"
#include "tests/core/book/faulty_disk.h"

namespace ringhold::test {
namespace {

/// A folder with one book in it, neither of which may be written.
class ReadOnlyDisk : public testing::Test {
  protected:
    ReadOnlyDisk() {
        Book book = bookAt(m_file);
        book.database().exec("INSERT INTO preference VALUES ('a', 'b')");
        m_open = std::make_unique<Book>(std::move(book));
    }
    void lock() {
        for (const auto& name : m_folder.names())
            fs::permissions(m_folder / name, fs::perms(0444));
        fs::permissions(m_folder.path(), fs::perms(0555));
        m_names = m_folder.names();
        m_bytes = bytesOf(m_file);
    }
    void expectUntouched() const {
        EXPECT_EQ(m_folder.names(), m_names);
        EXPECT_EQ(bytesOf(m_file), m_bytes);
    }
    /// Copies the book with some of its side files as a crash would leave them, and closes the first.
    void crash(const std::vector<std::string>& sides) {
        for (const auto& side : sides)
            fs::copy_file(sideFile(side), m_folder / ("kept" + side));
        m_open.reset();
        for (const auto& side : sides)
            fs::rename(m_folder / ("kept" + side), sideFile(side));
    }
    fs::path sideFile(const std::string& side) const { return m_folder / ("kiln #1?.ringhold" + side); }
    static std::string lateLine(const Book& book) {
        return book.database().execAndGet("SELECT value FROM preference WHERE name = 'a'").getString();
    }

    BookFolder m_folder;
    fs::path m_file = m_folder / "kiln #1?.ringhold";
    std::unique_ptr<Book> m_open;
    std::vector<std::string> m_names;
    std::string m_bytes;
};

TEST_F(ReadOnlyDisk, ReadsAClosedBook) {
    m_open.reset();
    lock();
    const AsNobody nobody;
    EXPECT_EQ(lateLine(bookAt(m_file, Access::read)), "b");
    expectUntouched();
}

TEST_F(ReadOnlyDisk, ReadsACrashedBookWithItsLateCommits) {
    crash({"", "-wal"});
    lock();
    ASSERT_EQ(m_names.size(), 2U);
    const AsNobody nobody;
    EXPECT_EQ(lateLine(bookAt(m_file, Access::read)), "b");
    expectUntouched();
}

TEST_F(ReadOnlyDisk, ReadsACrashedBookWithAllItsFiles) {
    crash({"", "-wal", "-shm"});
    lock();
    ASSERT_EQ(m_names.size(), 3U);
    const AsNobody nobody;
    EXPECT_EQ(lateLine(bookAt(m_file, Access::read)), "b");
    expectUntouched();
}

TEST_F(ReadOnlyDisk, RefusesToWrite) {
    m_open.reset();
    lock();
    const AsNobody nobody;
    const auto book = Book::open(m_file, Access::write);
    ASSERT_FALSE(book.ok());
    EXPECT_EQ(book.error().kind, ErrorKind::unwritable) << book.error().text();
    expectUntouched();
}

TEST_F(ReadOnlyDisk, RefusesToWriteWhenOnlyTheFolderIsLocked) {
    m_open.reset();
    lock();
    fs::permissions(m_file, fs::perms::all);
    const AsNobody nobody;
    const auto book = Book::open(m_file, Access::write);
    ASSERT_FALSE(book.ok());
    EXPECT_EQ(book.error().kind, ErrorKind::unwritable) << book.error().text();
    expectUntouched();
}

TEST_F(ReadOnlyDisk, RefusesToMakeABook) {
    m_open.reset();
    lock();
    const AsNobody nobody;
    const auto book = Book::open(m_folder / "new.ringhold", Access::create);
    ASSERT_FALSE(book.ok());
    EXPECT_EQ(book.error().kind, ErrorKind::unwritable) << book.error().text();
    expectUntouched();
}

TEST(FullDisk, LeavesNothingHalfMade) {
    const BookFolder folder;
    FaultyDisk disk;
    disk.fillUp();
    const auto book = Book::open(folder / "x.ringhold", Access::create);
    ASSERT_FALSE(book.ok());
    EXPECT_EQ(book.error().kind, ErrorKind::unwritable) << book.error().text();
    EXPECT_EQ(book.error().file, (folder / "x.ringhold").string());
    EXPECT_TRUE(folder.names().empty());
}

TEST(FullDisk, StillReadsABook) {
    const BookFolder folder;
    const std::string id = bookAt(folder / "x.ringhold").id();
    FaultyDisk disk;
    disk.fillUp();
    EXPECT_EQ(bookAt(folder / "x.ringhold", Access::read).id(), id);
    const auto book = Book::open(folder / "x.ringhold", Access::write);
    ASSERT_FALSE(book.ok());
    EXPECT_EQ(book.error().kind, ErrorKind::unwritable);
}

TEST(Disk, IsSyncedAtEveryCommit) {
    const BookFolder folder;
    FaultyDisk disk;
    const Book book = bookAt(folder / "x.ringhold");
    for (int i = 0; i < 5; ++i) {
        const int before = disk.syncs();
        book.database().exec("INSERT INTO preference VALUES ('n" + std::to_string(i) + "', '')");
        EXPECT_GT(disk.syncs(), before);
    }
}

} // namespace
} // namespace ringhold::test
