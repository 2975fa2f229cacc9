// Books that earlier versions made open for ever. Each was written by the program of its time and is never
// made again; only its pages were made smaller than usual, to spare room.
#include "core/book/check.h"
#include "core/book/schema.h"
#include "core/plan/plan_file.h"
#include "tests/core/book/sample_firing.h"
#include "tests/support/places.h"

namespace ringhold::test {
namespace {

/// A copy of a fixture that may be written.
fs::path fetched(const BookFolder& folder, const std::string& name) {
    const fs::path copy = folder / name;
    fs::copy_file(sourceFolder() / "tests/reference/books" / name, copy);
    return copy;
}

Instant at(const char* text) {
    return *parseIso8601(text);
}

/// What book v1 is known to hold. Written out: what writeSample() makes may change, the fixture must not.
void expectFirstBook(const Book& book) {
    const BookReader reader(book);
    EXPECT_EQ(book.id(), "76a3ff25f7f2af7a22feb0e7ba5d26ae");
    EXPECT_EQ(good(reader.preference("zone")), "Europe/Lisbon");
    const auto list = good(reader.firings());
    ASSERT_EQ(list.size(), 2U);
    EXPECT_EQ(list[1].readings, 362);
    EXPECT_EQ(list[1].peak, Temperature::fromCelsius(1262.5));
    EXPECT_EQ(list[1].lastReading, at("2026-03-02T02:40:00.125Z"));
    EXPECT_EQ(list[0].title, "Bisque");
    EXPECT_EQ(list[0].ended, at("2026-02-20T18:00:00Z"));

    const auto f = good(reader.whole(list[1].id));
    EXPECT_EQ(f.firing.title, "Vase day");
    EXPECT_EQ(f.firing.began, at("2026-03-01T20:41:00.125Z"));
    EXPECT_FALSE(f.firing.ended);
    EXPECT_EQ(f.firing.modelJson, R"({"p":1.35})");
    ASSERT_TRUE(f.firing.plan);
    EXPECT_EQ(f.firing.plan->name, "big rings");
    ASSERT_EQ(f.firing.plan->steps.size(), 2U);
    EXPECT_EQ(std::get<Climb>(f.firing.plan->steps[0]).rate.celsiusPerHour(), 123.4);
    EXPECT_TRUE(fields(f.kiln) == fields(Kiln{f.firing.kiln, "Old Bertha é", Fuel::electric, 120.5,
                                              Power{9600}, Volts{230}, 0.31, "drafty\nlid"}));
    ASSERT_EQ(f.probes.size(), 1U);
    EXPECT_EQ(f.probes[0].type, ThermocoupleType::S);
    ASSERT_EQ(f.channels.size(), 2U);
    EXPECT_EQ(f.channels[1].quantity, Quantity::lineVolts);
    EXPECT_EQ(f.readings.size(), 363U);
    EXPECT_EQ(f.readings[0].value, 1039.7000000000001);
    EXPECT_EQ(good(reader.curve(f.channels[0].id)).size(), 361U);
    ASSERT_EQ(f.packs.size(), 1U);
    EXPECT_EQ(f.packs[0].cones, (std::vector<std::string>{"8", "9", "10"}));
    EXPECT_TRUE(f.packs[0].leansLeft);
    ASSERT_EQ(f.looks.size(), 3U);
    EXPECT_TRUE(f.looks[0].struck);
    EXPECT_EQ(f.looks[1].hour, 3);
    ASSERT_EQ(f.settings.size(), 1U);
    EXPECT_EQ(f.settings[0].value, "half open");
    ASSERT_EQ(f.notes.size(), 1U);
    EXPECT_EQ(f.notes[0].text, "smells of wax");
    ASSERT_EQ(f.pieces.size(), 2U);
    EXPECT_TRUE(f.pieces[0].catcher);
    ASSERT_EQ(f.outcomes.size(), 2U);
    EXPECT_EQ(f.outcomes[0].crystals, Crystals::many);
    EXPECT_EQ(f.outcomes[0].largest_mm, 41.5);
    EXPECT_EQ(f.outcomes[0].rings, 4);
    ASSERT_EQ(f.filedOffsets.size(), 1U);
    EXPECT_EQ(f.filedOffsets[0].mean.celsius(), -7.3);
    const auto alarms = good(reader.alarms(list[1].id));
    ASSERT_EQ(alarms.size(), 1U);
    EXPECT_EQ(alarms[0].cause, "band left");
    ASSERT_TRUE(alarms[0].acknowledged);
    EXPECT_EQ(alarms[0].acknowledged->by, "me");
    EXPECT_EQ(good(reader.events(list[1].id)).size(), 2U);
}

TEST(BookOfVersion1, OpensForReading) {
    const BookFolder folder;
    const fs::path file = fetched(folder, "v1.ringhold");
    const std::string before = bytesOf(file);
    expectFirstBook(bookAt(file, Access::read));
    EXPECT_EQ(bytesOf(file), before);
}

TEST(BookOfVersion1, OpensForWritingAndIsWhole) {
    const BookFolder folder;
    const fs::path file = fetched(folder, "v1.ringhold");
    {
        const Book book = bookAt(file, Access::write);
        expectFirstBook(book);
        EXPECT_EQ(schemaVersion(book.database()), static_cast<int>(migrations().size()));
        expectGood(BookWriter(book).setPreference("a", "b"));
    }
    for (const auto& finding : good(checkBook(file)))
        ADD_FAILURE() << finding.what;
}

} // namespace
} // namespace ringhold::test
