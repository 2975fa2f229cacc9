// Books that earlier versions made open for ever. Each was written by the program of its time and is never
// made again; only its pages were made smaller than usual, to spare room.
#include "core/book/check.h"
#include "core/book/kiln_care.h"
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
    // What came with version 2.
    EXPECT_EQ(alarms[0].detail, "1049 C");
    EXPECT_EQ(good(reader.alarmEvents(list[1].id)).size(), 3U);
    EXPECT_FALSE(f.kiln.gasPrice);
    EXPECT_EQ(f.pieces[0].form, "");
    EXPECT_FALSE(f.pieces[0].spot);
    EXPECT_TRUE(f.outcomes[0].knownFaults.empty());
    FiringFilter filter;
    filter.words = "wax pinhole";
    EXPECT_EQ(good(reader.firings(filter)).size(), 1U);
}

/// What book v2 is known to hold.
void expectSecondBook(const Book& book) {
    const BookReader reader(book);
    EXPECT_EQ(book.id(), "d0657bff1cab388ca15e80bfcdabff16");
    const auto list = good(reader.firings());
    ASSERT_EQ(list.size(), 1U);
    EXPECT_EQ(list[0].lastReading, at("2026-03-01T20:41:02.125Z"));
    const auto f = good(reader.whole(list[0].id, Pictures::with));
    EXPECT_EQ(f.kiln.gasPrice, 1.19);
    EXPECT_EQ(f.packs[0].shelf, "2");
    EXPECT_EQ(f.packs[0].spot, (MapSpot{0.5, 0.9}));
    ASSERT_EQ(f.pieces.size(), 2U);
    EXPECT_EQ(f.pieces[0].form, "bottle");
    EXPECT_EQ(f.pieces[0].application_g_per_cm2, 0.11);
    ASSERT_EQ(f.outcomes.size(), 2U);
    EXPECT_EQ(f.outcomes[0].crystalPicked, "#c8a030");
    EXPECT_EQ(f.outcomes[0].runOff_mm, 1.5);
    EXPECT_EQ(f.outcomes[0].catcherClean, true);
    EXPECT_EQ(f.outcomes[0].knownFaults, (std::set{WareFault::pinholes, WareFault::tooManySeeds}));
    ASSERT_EQ(f.photos.size(), 1U);
    EXPECT_EQ(f.photos[0].jpeg.size(), 15U);
    ASSERT_EQ(f.photoMeasures.size(), 2U);
    EXPECT_EQ((*f.photoMeasures[0].ends)[1], (PhotoPoint{0.3, 0.2}));
    EXPECT_EQ(f.ringRadii,
              (std::vector<RingRadius>{{f.pieces[0].id, 0, 3.25, 0.5}, {f.pieces[0].id, 1, 6.5, 0.25}}));
    ASSERT_EQ(f.sagsSeen.size(), 2U);
    EXPECT_EQ(f.sagsSeen[1].seen, SagSight::unsure);
    ASSERT_EQ(f.glazeCards.size(), 1U);
    EXPECT_EQ(f.glazeCards[0].habits.at(1).word, "fans");
    EXPECT_EQ(f.glazeCards[0].recipe.at(0).analysis.at(1), (OxidePercent{"Na2O", 14}));
    EXPECT_EQ(f.glazeCards[0].recipe.at(2).addition, true);
    ASSERT_EQ(f.alarmEvents.size(), 2U);
    EXPECT_EQ(f.alarmEvents[1].who, "me");
    ASSERT_EQ(f.stepCorrections.size(), 1U);
    EXPECT_TRUE(f.stepCorrections[0].struck);
    ASSERT_EQ(f.meterStands.size(), 2U);
    EXPECT_EQ(f.meterStands[0].stand, 31415.9);
    const KilnCare care(book);
    EXPECT_EQ(good(care.services(f.kiln.id)).at(0).kind, ServiceKind::relay);
    EXPECT_EQ(good(care.checklist()).at(1).words, "shelves washed");
}

struct KnownBook {
    const char* file;
    void (*expect)(const Book&);
};

class BookOfVersion : public testing::TestWithParam<KnownBook> {};

TEST_P(BookOfVersion, OpensForReading) {
    const BookFolder folder;
    const fs::path file = fetched(folder, GetParam().file);
    const std::string before = bytesOf(file);
    GetParam().expect(bookAt(file, Access::read));
    EXPECT_EQ(bytesOf(file), before);
}

TEST_P(BookOfVersion, OpensForWritingAndIsWhole) {
    const BookFolder folder;
    const fs::path file = fetched(folder, GetParam().file);
    {
        const Book book = bookAt(file, Access::write);
        GetParam().expect(book);
        EXPECT_EQ(schemaVersion(book.database()), static_cast<int>(migrations().size()));
        expectGood(BookWriter(book).setPreference("a", "b"));
    }
    for (const auto& finding : good(checkBook(file)))
        ADD_FAILURE() << finding.what;
}

INSTANTIATE_TEST_SUITE_P(All, BookOfVersion,
                         testing::Values(KnownBook{"v1.ringhold", expectFirstBook},
                                         KnownBook{"v2.ringhold", expectSecondBook}),
                         [](const auto& known) { return std::string(known.param.file, 2); });

} // namespace
} // namespace ringhold::test
