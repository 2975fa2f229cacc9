#include "core/book/book.h"
#include "core/book/schema.h"
#include "tests/core/book/book_folder.h"

#include <sys/stat.h>

#include <array>
#include <thread>

namespace ringhold::test {
namespace {

std::string pragma(const Book& book, const std::string& name) {
    return book.database().execAndGet("PRAGMA " + name).getString();
}

TEST(Book, IsMadeWithItsMarksAndSafetyOn) {
    const BookFolder folder;
    const Book book = bookAt(folder / "kiln.ringhold");
    EXPECT_EQ(pragma(book, "application_id"), std::to_string(bookApplicationId));
    EXPECT_EQ(pragma(book, "user_version"), std::to_string(migrations().size()));
    EXPECT_EQ(pragma(book, "journal_mode"), "wal");
    EXPECT_EQ(pragma(book, "synchronous"), "2"); // FULL
    EXPECT_EQ(pragma(book, "foreign_keys"), "1");
    EXPECT_EQ(pragma(book, "busy_timeout"), "5000");
    EXPECT_FALSE(book.readOnly());
    EXPECT_TRUE(book.inPlace());
    EXPECT_EQ(book.id().size(), 32U);
}

TEST(Book, LeavesOneFileWhenItCloses) {
    const BookFolder folder;
    const std::string id = bookAt(folder / "kiln.ringhold").id();
    EXPECT_EQ(folder.names(), std::vector<std::string>{"kiln.ringhold"});
    EXPECT_EQ(bookAt(folder / "kiln.ringhold", Access::write).id(), id);
    EXPECT_EQ(bookAt(folder / "kiln.ringhold", Access::read).id(), id);
    EXPECT_NE(bookAt(folder / "other.ringhold").id(), id);
    EXPECT_EQ(folder.names(), (std::vector<std::string>{"kiln.ringhold", "other.ringhold"}));
}

TEST(Book, IsMadeOnceByManyAtOnce) {
    const BookFolder folder;
    std::array<std::string, 4> ids;
    std::vector<std::thread> makers;
    for (auto& id : ids)
        makers.emplace_back([&] { id = bookAt(folder / "kiln.ringhold").id(); });
    for (auto& maker : makers)
        maker.join();
    for (const auto& id : ids)
        EXPECT_EQ(id, ids[0]);
    EXPECT_EQ(folder.names(), std::vector<std::string>{"kiln.ringhold"});
}

TEST(Book, TakesAnEmptyFileForANewBook) {
    const BookFolder folder;
    write(folder / "empty.ringhold", "");
    EXPECT_EQ(bookAt(folder / "empty.ringhold").id().size(), 32U);
}

TEST(Book, NoticesThatItsFileWasMovedAway) {
    const BookFolder folder;
    const Book book = bookAt(folder / "kiln.ringhold");
    fs::rename(folder / "kiln.ringhold", folder / "elsewhere.ringhold");
    EXPECT_FALSE(book.inPlace());
    fs::rename(folder / "elsewhere.ringhold", folder / "kiln.ringhold");
    EXPECT_TRUE(book.inPlace());
}

TEST(Book, KeepsWhatACrashedProgramCommitted) {
    const BookFolder folder;
    const Book book = bookAt(folder / "kiln.ringhold");
    book.database().exec("INSERT INTO preference VALUES ('a', 'b')");
    for (const char* side : {"", "-wal"})
        fs::copy_file(folder / (std::string("kiln.ringhold") + side),
                      folder / (std::string("crashed.ringhold") + side));
    for (const Access access : {Access::read, Access::write}) {
        const Book crashed = bookAt(folder / "crashed.ringhold", access);
        EXPECT_EQ(crashed.database().execAndGet("SELECT value FROM preference WHERE name = 'a'").getString(),
                  "b");
    }
}

struct Refusal {
    const char* name;
    void (*prepare)(const fs::path& file);
    Access access;
    ErrorKind kind;
    const char* says;
};

void PrintTo(const Refusal& refusal, std::ostream* out) {
    *out << refusal.name;
}

void nothing(const fs::path&) {}
void makeText(const fs::path& file) {
    write(file, "time,probe_C\n0,20\n1,21\n" + std::string(2000, 'x'));
}
void makeShortText(const fs::path& file) {
    write(file, "hello");
}
void makeFolder(const fs::path& file) {
    fs::create_directory(file);
}
void makePipe(const fs::path& file) {
    ASSERT_EQ(::mkfifo(file.c_str(), 0600), 0);
}
void makeForeign(const fs::path& file) {
    tamper(file, "CREATE TABLE song (title TEXT); INSERT INTO song VALUES ('x')");
}
void makeForeignEmpty(const fs::path& file) {
    tamper(file, "PRAGMA application_id = 77; PRAGMA user_version = 1");
}
void makeNewer(const fs::path& file) {
    bookAt(file);
    tamper(file, "PRAGMA user_version = 99");
}
void makeDamaged(const fs::path& file) {
    bookAt(file);
    std::string bytes = bytesOf(file);
    for (std::size_t i = 100; i < 4096; ++i)
        bytes[i] = 'x';
    write(file, bytes);
}
void makeEmpty(const fs::path& file) {
    write(file, "");
}

class Refused : public testing::TestWithParam<Refusal> {};

TEST_P(Refused, PolitelyAndLeftUntouched) {
    const BookFolder folder;
    const fs::path file = folder / "x.ringhold";
    GetParam().prepare(file);
    const auto names = folder.names();
    const bool plain = fs::is_regular_file(file);
    const std::string before = plain ? bytesOf(file) : "";
    const auto book = Book::open(file, GetParam().access);
    ASSERT_FALSE(book.ok());
    EXPECT_EQ(book.error().kind, GetParam().kind) << book.error().text();
    EXPECT_NE(book.error().what.find(GetParam().says), std::string::npos) << book.error().text();
    EXPECT_EQ(book.error().file, file.string());
    EXPECT_EQ(folder.names(), names);
    if (plain) {
        EXPECT_EQ(bytesOf(file), before);
    }
}

INSTANTIATE_TEST_SUITE_P(
    Book, Refused,
    testing::Values(
        Refusal{"MissingRead", nothing, Access::read, ErrorKind::notFound, "no such book"},
        Refusal{"MissingWrite", nothing, Access::write, ErrorKind::notFound, "no such book"},
        Refusal{"TextRead", makeText, Access::read, ErrorKind::foreign, "no book"},
        Refusal{"TextWrite", makeText, Access::write, ErrorKind::foreign, "no book"},
        Refusal{"TextCreate", makeText, Access::create, ErrorKind::foreign, "no book"},
        Refusal{"ShortText", makeShortText, Access::create, ErrorKind::foreign, "no book"},
        Refusal{"ShortTextRead", makeShortText, Access::read, ErrorKind::foreign, "no book"},
        Refusal{"EmptyRead", makeEmpty, Access::read, ErrorKind::foreign, "no book"},
        Refusal{"Folder", makeFolder, Access::create, ErrorKind::badInput, "folder"},
        Refusal{"FolderRead", makeFolder, Access::read, ErrorKind::badInput, "folder"},
        Refusal{"Pipe", makePipe, Access::write, ErrorKind::badInput, "no plain file"},
        Refusal{"ForeignRead", makeForeign, Access::read, ErrorKind::foreign, "some other program"},
        Refusal{"ForeignCreate", makeForeign, Access::create, ErrorKind::foreign, "some other program"},
        Refusal{"ForeignEmpty", makeForeignEmpty, Access::create, ErrorKind::foreign, "some other program"},
        Refusal{"NewerRead", makeNewer, Access::read, ErrorKind::foreign, "newer Ringhold"},
        Refusal{"NewerWrite", makeNewer, Access::write, ErrorKind::foreign, "newer Ringhold"},
        Refusal{"DamagedRead", makeDamaged, Access::read, ErrorKind::unreadable, "damaged"},
        Refusal{"DamagedWrite", makeDamaged, Access::write, ErrorKind::unreadable, "damaged"}),
    [](const auto& test) { return std::string(test.param.name); });

TEST(Book, RefusesANewOneInAFolderThatIsNotThere) {
    const BookFolder folder;
    const auto book = Book::open(folder / "nowhere/x.ringhold", Access::create);
    ASSERT_FALSE(book.ok());
    EXPECT_EQ(book.error().kind, ErrorKind::notFound);
}

TEST(Book, IsNotMadeBesideTheLateCommitsOfAnother) {
    const BookFolder folder;
    {
        const Book book = bookAt(folder / "kiln.ringhold");
        book.database().exec("INSERT INTO preference VALUES ('a', 'b')");
        fs::copy_file(folder / "kiln.ringhold-wal", folder / "new.ringhold-wal");
    }
    ASSERT_GT(fs::file_size(folder / "new.ringhold-wal"), 0U);
    const auto book = Book::open(folder / "new.ringhold", Access::create);
    ASSERT_FALSE(book.ok());
    EXPECT_EQ(book.error().kind, ErrorKind::badInput);
    EXPECT_EQ(folder.names(), (std::vector<std::string>{"kiln.ringhold", "new.ringhold-wal"}));
}

TEST(Book, SaysWhenItMayNotBeRead) {
    const BookFolder folder;
    bookAt(folder / "x.ringhold");
    fs::permissions(folder / "x.ringhold", fs::perms::none);
    const AsNobody nobody;
    const auto book = Book::open(folder / "x.ringhold", Access::read);
    ASSERT_FALSE(book.ok());
    EXPECT_EQ(book.error().kind, ErrorKind::unreadable);
}

} // namespace
} // namespace ringhold::test
