#include "core/book/check.h"
#include "tests/core/book/sample_firing.h"

namespace ringhold::test {
namespace {

std::string told(const std::vector<Finding>& findings) {
    std::string all;
    for (const auto& finding : findings)
        all += std::string(name(finding.kind)) + ": " + finding.what + "\n";
    return all;
}

TEST(CheckBook, FindsNothingInAWholeBook) {
    const BookFolder folder;
    const fs::path file = folder / "kiln.ringhold";
    const Book book = bookAt(file);
    writeSample(book);
    EXPECT_EQ(told(good(checkBook(file))), "");
    book.database().exec("ANALYZE"); // SQLite's own tables are no fault
    EXPECT_EQ(told(good(checkBook(file))), "");
}

struct Fault {
    const char* name;
    const char* statements;
    const char* says;
};

void PrintTo(const Fault& fault, std::ostream* out) {
    *out << fault.name;
}

class Faults : public testing::TestWithParam<Fault> {};

TEST_P(Faults, AreFound) {
    const BookFolder folder;
    const fs::path file = folder / "kiln.ringhold";
    writeSample(bookAt(file));
    tamper(file, std::string("PRAGMA foreign_keys = OFF; PRAGMA writable_schema = ON;"
                             "PRAGMA ignore_check_constraints = ON;") +
                     GetParam().statements);
    const std::string before = bytesOf(file);
    EXPECT_NE(told(good(checkBook(file))).find(GetParam().says), std::string::npos)
        << told(good(checkBook(file)));
    EXPECT_EQ(bytesOf(file), before);
}

INSTANTIATE_TEST_SUITE_P(
    CheckBook, Faults,
    testing::Values(
        Fault{"Orphan", "DELETE FROM piece", "orphan: outcome 1 belongs to a piece that is not there"},
        Fault{"OrphanReading", "DELETE FROM channel WHERE id = 1",
              "orphan: reading belongs to a channel that is not there"},
        Fault{"BrokenRule", "DROP TRIGGER look_kept; UPDATE look SET hour = 7",
              "damage: CHECK constraint failed in look"},
        Fault{"MissingTrigger", "DROP TRIGGER look_kept", "form: trigger look_kept is missing"},
        Fault{"MissingIndex", "DROP INDEX note_of_firing", "form: index note_of_firing is missing"},
        Fault{"StrangeTable", "CREATE TABLE song (x)", "form: table song does not belong to a book"},
        Fault{"AlteredTable", "ALTER TABLE note ADD COLUMN x TEXT",
              "form: table note is not as it should be"},
        Fault{"WrongCount", "UPDATE channel SET readings = 9 WHERE id = 1",
              "sum: channel 1 says it has 9 readings, it has 2"},
        Fault{"WrongPeak", "UPDATE channel SET peak = 9 WHERE id = 1",
              "sum: channel 1 says its peak is 9.0, it is 1040.25"},
        Fault{"ForeignProbe",
              "INSERT INTO kiln (id, name, fuel, note) VALUES (9, 'x', 'gas', ''); UPDATE probe SET kiln = 9",
              "sense: channel 1 has a probe of another kiln"},
        Fault{"ForeignOffset",
              "INSERT INTO kiln (id, name, fuel, note) VALUES (9, 'x', 'gas', '');"
              "UPDATE filed_offset SET kiln = 9",
              "sense: the offset filed by firing 1 is of another kiln"},
        Fault{"LostId", "DELETE FROM preference", "sense: the book has lost its id"},
        Fault{"BrokenPlan", "UPDATE firing SET plan = '{'", "sense: the plan of firing 1"}),
    [](const auto& test) { return std::string(test.param.name); });

TEST(CheckBook, FindsDamagedPages) {
    const BookFolder folder;
    const fs::path file = folder / "kiln.ringhold";
    writeSample(bookAt(file));
    const std::string whole = bytesOf(file);
    int found = 0;
    for (std::size_t page = 1; page * 4096 < whole.size(); ++page) {
        std::string bytes = whole;
        for (std::size_t i = 0; i < 200; ++i)
            bytes[page * 4096 + i] = '\xA5';
        write(file, bytes);
        ++found;
        EXPECT_NE(told(good(checkBook(file))).find("damage: "), std::string::npos) << "page " << page;
    }
    EXPECT_GT(found, 20);
}

TEST(CheckBook, FindsThatABookIsTooDamagedToBeOpened) {
    const BookFolder folder;
    const fs::path file = folder / "kiln.ringhold";
    bookAt(file);
    std::string bytes = bytesOf(file);
    bytes.replace(100, 3000, 3000, 'x');
    write(file, bytes);
    const auto findings = good(checkBook(file));
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].kind, FindingKind::damage);
}

TEST(CheckBook, RefusesWhatIsNoBook) {
    const BookFolder folder;
    write(folder / "text", "time,probe_C\n");
    EXPECT_EQ(checkBook(folder / "text").error().kind, ErrorKind::foreign);
    EXPECT_EQ(checkBook(folder / "none").error().kind, ErrorKind::notFound);
    EXPECT_EQ(checkBook(folder.path()).error().kind, ErrorKind::badInput);
    tamper(folder / "other", "CREATE TABLE t (x)");
    EXPECT_EQ(checkBook(folder / "other").error().kind, ErrorKind::foreign);
}

} // namespace
} // namespace ringhold::test
