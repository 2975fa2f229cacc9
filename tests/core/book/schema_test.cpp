#include "core/book/open.h"
#include "core/book/schema.h"
#include "tests/core/book/book_folder.h"
#include "tests/core/book/faulty_disk.h"

#include <array>

namespace ringhold::test {
namespace {

const std::chrono::milliseconds briefly{50};

/// Today's book and two steps beyond it.
const std::array grown{migrations()[0], migrations()[1],
                       Migration{"CREATE TABLE glaze (id INTEGER PRIMARY KEY, name TEXT NOT NULL) STRICT"},
                       Migration{"ALTER TABLE piece ADD COLUMN glaze_card INTEGER REFERENCES glaze"}};

std::unique_ptr<SQLite::Database> connect(const fs::path& file) {
    return std::make_unique<SQLite::Database>(file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
}

int versionOf(const fs::path& file) {
    return schemaVersion(*connect(file));
}

TEST(Schema, Created) {
    const BookFolder folder;
    const auto database = connect(folder / "x");
    const auto outcome = bringUpToDate(*database, folder / "x", Backup::make);
    EXPECT_EQ(outcome.result, SchemaResult::created);
    EXPECT_EQ(outcome.from, 0);
    EXPECT_EQ(outcome.to, static_cast<int>(migrations().size()));
    EXPECT_FALSE(outcome.backup);
    EXPECT_FALSE(outcome.error);
    EXPECT_EQ(identify(*database, outcome.to), BookKind::book);
}

TEST(Schema, Current) {
    const BookFolder folder;
    bookAt(folder / "x");
    const auto outcome = bringUpToDate(*connect(folder / "x"), folder / "x", Backup::make);
    EXPECT_EQ(outcome.result, SchemaResult::current);
    EXPECT_EQ(folder.names(), std::vector<std::string>{"x"});
}

TEST(Schema, UpgradedWithTheOldBookBesideIt) {
    const BookFolder folder;
    bookAt(folder / "x.ringhold").database().exec("INSERT INTO preference VALUES ('a', 'b')");
    const auto outcome =
        bringUpToDate(*connect(folder / "x.ringhold"), folder / "x.ringhold", Backup::make, grown);
    ASSERT_EQ(outcome.result, SchemaResult::upgraded);
    EXPECT_EQ(outcome.from, 2);
    EXPECT_EQ(outcome.to, 4);
    EXPECT_EQ(outcome.backup, folder / "x.v2.ringhold");
    EXPECT_EQ(folder.names(), (std::vector<std::string>{"x.ringhold", "x.v2.ringhold"}));
    EXPECT_EQ(versionOf(folder / "x.ringhold"), 4);
    const Book old = bookAt(folder / "x.v2.ringhold", Access::read);
    EXPECT_EQ(old.database().execAndGet("SELECT value FROM preference WHERE name = 'a'").getString(), "b");
}

TEST(Schema, NeverOverwritesABackup) {
    const BookFolder folder;
    bookAt(folder / "x.ringhold");
    write(folder / "x.v2.ringhold", "precious");
    fs::create_symlink("nowhere", folder / "x.v2-2.ringhold");
    const auto outcome =
        bringUpToDate(*connect(folder / "x.ringhold"), folder / "x.ringhold", Backup::make, grown);
    EXPECT_EQ(outcome.backup, folder / "x.v2-3.ringhold");
    EXPECT_EQ(bytesOf(folder / "x.v2.ringhold"), "precious");
}

TEST(Schema, NotUpgradedWithoutABackup) {
    const BookFolder folder;
    bookAt(folder / "x.ringhold");
    fs::permissions(folder / "x.ringhold", fs::perms::all);
    FaultyDisk disk;
    {
        const auto database = connect(folder / "x.ringhold");
        database->exec("SELECT count(*) FROM kiln");
        disk.fillUp();
        const auto outcome = bringUpToDate(*database, folder / "x.ringhold", Backup::make, grown);
        EXPECT_EQ(outcome.result, SchemaResult::failed);
        ASSERT_TRUE(outcome.error);
        EXPECT_EQ(outcome.error->kind, ErrorKind::unwritable) << outcome.error->text();
    }
    disk.fillUp(false);
    EXPECT_EQ(versionOf(folder / "x.ringhold"), 2);
    EXPECT_EQ(folder.names(), std::vector<std::string>{"x.ringhold"});
}

TEST(Schema, Newer) {
    const BookFolder folder;
    bookAt(folder / "x");
    tamper(folder / "x", "PRAGMA user_version = 7");
    const auto outcome = bringUpToDate(*connect(folder / "x"), folder / "x", Backup::make);
    EXPECT_EQ(outcome.result, SchemaResult::newer);
    EXPECT_EQ(outcome.error->kind, ErrorKind::foreign);
    EXPECT_EQ(versionOf(folder / "x"), 7);
}

TEST(Schema, Foreign) {
    const BookFolder folder;
    tamper(folder / "x", "CREATE TABLE t (x)");
    const auto outcome = bringUpToDate(*connect(folder / "x"), folder / "x", Backup::make);
    EXPECT_EQ(outcome.result, SchemaResult::foreign);
    EXPECT_EQ(outcome.error->kind, ErrorKind::foreign);
    EXPECT_EQ(versionOf(folder / "x"), 0);
}

TEST(Schema, FailedLeavesTheLastGoodStep) {
    const BookFolder folder;
    bookAt(folder / "x");
    const std::array broken{migrations()[0], migrations()[1], grown[2],
                            Migration{"CREATE TABLE half (x); CREATE TABLE kiln (x)"}};
    const auto database = connect(folder / "x");
    const auto outcome = bringUpToDate(*database, folder / "x", Backup::none, broken);
    EXPECT_EQ(outcome.result, SchemaResult::failed);
    ASSERT_TRUE(outcome.error);
    EXPECT_EQ(outcome.to, 3);
    EXPECT_EQ(schemaVersion(*database), 3);
    EXPECT_TRUE(database->tableExists("glaze"));
    EXPECT_FALSE(database->tableExists("half"));
}

TEST(Schema, FailedWhenAStepWouldLeaveOrphans) {
    const BookFolder folder;
    bookAt(folder / "x")
        .database()
        .exec("INSERT INTO kiln (id, name, fuel, note) VALUES (1, 'a', 'gas', '');"
              "INSERT INTO probe (kiln, label, type, position) VALUES (1, '', 'K', '')");
    const std::array orphaning{migrations()[0], migrations()[1], Migration{"DELETE FROM kiln"}};
    const auto database = connect(folder / "x");
    const auto outcome = bringUpToDate(*database, folder / "x", Backup::none, orphaning);
    EXPECT_EQ(outcome.result, SchemaResult::failed);
    EXPECT_EQ(database->execAndGet("SELECT count(*) FROM kiln").getInt(), 1);
    EXPECT_EQ(schemaVersion(*database), 2);
}

TEST(Schema, UpgradeWaitsForAnotherProgramAndSaysSo) {
    const BookFolder folder;
    const Book other = bookAt(folder / "x");
    other.database().exec("BEGIN IMMEDIATE");
    const auto opened = openToWrite(folder / "x", briefly, grown);
    ASSERT_FALSE(opened.ok());
    EXPECT_EQ(opened.error().kind, ErrorKind::failed);
    EXPECT_NE(opened.error().what.find("another program"), std::string::npos);
    other.database().exec("ROLLBACK");
    EXPECT_TRUE(openToWrite(folder / "x", briefly, grown).ok());
}

TEST(Schema, OpeningToWriteUpgradesAndNamesTheBackup) {
    const BookFolder folder;
    bookAt(folder / "x.ringhold");
    const auto opened = openToWrite(folder / "x.ringhold", briefly, grown);
    ASSERT_TRUE(opened.ok()) << opened.error().text();
    EXPECT_EQ(opened->backup, folder / "x.v2.ringhold");
    EXPECT_EQ(opened->database->execAndGet("PRAGMA foreign_keys").getInt(), 1);
}

TEST(Schema, OpeningToReadUpgradesOnlyACopy) {
    const BookFolder folder;
    bookAt(folder / "x.ringhold").database().exec("INSERT INTO preference VALUES ('a', 'b')");
    const std::string before = bytesOf(folder / "x.ringhold");
    fs::path scratch;
    {
        const auto opened = openToRead(folder / "x.ringhold", briefly, grown);
        ASSERT_TRUE(opened.ok()) << opened.error().text();
        EXPECT_TRUE(opened->database->tableExists("glaze"));
        EXPECT_EQ(opened->database->execAndGet("SELECT value FROM preference WHERE name = 'a'").getString(),
                  "b");
        ASSERT_TRUE(opened->scratch);
        scratch = opened->scratch->path();
    }
    EXPECT_FALSE(fs::exists(scratch));
    EXPECT_EQ(bytesOf(folder / "x.ringhold"), before);
    EXPECT_EQ(folder.names(), std::vector<std::string>{"x.ringhold"});
}

} // namespace
} // namespace ringhold::test
