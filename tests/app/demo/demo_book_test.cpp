// The demo book, with one firing shortened to some hours: the whole one is long under sanitizers.
#include "app/demo/demo_book.h"
#include "app/demo/demo_photo.h"
#include "app/demo/demo_ware.h"
#include "core/book/check.h"
#include "core/book/kiln_care.h"
#include "core/plan/plan_check.h"
#include "tests/core/book/sample_firing.h"

#include <gmock/gmock.h>

#include <cmath>

namespace ringhold::test {
namespace {

/// One firing in the gas kiln, with little time between the things that happen.
DemoStudio shortStudio(std::uint64_t seed) {
    DemoStudio studio = demoStudio(seed);
    studio.firings = {studio.firings[6]};
    auto& firing = studio.firings[0];
    std::get<Climb>(firing.plan.steps[0]).rate = Rate::fromCelsiusPerHour(600);
    std::get<ConeWait>(firing.plan.steps[1]).rate = Rate::fromCelsiusPerHour(120);
    std::get<Hold>(firing.plan.steps[3]).length = std::chrono::minutes(40);
    std::get<Rings>(firing.plan.steps[4]).count = 1;
    std::get<Cool>(firing.plan.steps[5]).to = Temperature::fromCelsius(1000);
    return studio;
}

TEST(DemoBook, HasSomethingForEveryPage) {
    const BookFolder folder;
    const Book book = bookAt(folder / "demo.ringhold", Access::create);
    std::vector<std::string> told;
    expectGood(writeDemoBook(book, shortStudio(3), 3,
                             [&](const std::string& title, std::size_t) { told.push_back(title); }));
    EXPECT_THAT(told, testing::ElementsAre("Damper lesson"));
    EXPECT_TRUE(good(checkBook(book.file())).empty());
    const BookReader reader(book);
    const auto firings = good(reader.firings());
    ASSERT_EQ(firings.size(), 1U);
    const auto record = good(reader.whole(firings[0].id, Pictures::with));
    EXPECT_TRUE(record.firing.ended);
    EXPECT_GT(record.readings.size(), 500U);
    EXPECT_TRUE(std::ranges::any_of(record.looks, &Look::cold));
    EXPECT_TRUE(std::ranges::any_of(record.looks, [](const Look& look) { return !look.cold; }));
    EXPECT_EQ(record.meterStands.size(), 2U);
    EXPECT_FALSE(record.notes.empty());
    EXPECT_FALSE(record.settings.empty());
    EXPECT_EQ(record.pieces.size(), record.outcomes.size());
    EXPECT_GE(record.pieces.size(), 6U);
    EXPECT_FALSE(record.filedOffsets.empty());
    EXPECT_FALSE(record.glazeCards.empty());
    EXPECT_EQ(good(KilnCare(book).checklist()).size(), 3U);
    EXPECT_EQ(writeDemoBook(book, shortStudio(3), 3).error().kind, ErrorKind::badInput);
}

TEST(DemoBook, HasPlansThatPassTheCheckAndBooksThatCanBeDrawn) {
    const auto studio = demoStudio(1);
    EXPECT_EQ(studio.kilns.size(), 2U);
    EXPECT_EQ(studio.glazes.size(), 3U);
    EXPECT_EQ(studio.firings.size(), 12U);
    EXPECT_TRUE(std::ranges::is_sorted(studio.firings, {}, &DemoFiring::lit));
    for (const auto& firing : studio.firings) {
        expectGood(check(firing.plan));
        EXPECT_TRUE(std::holds_alternative<Hold>(firing.plan.steps.at(3))) << firing.title;
        const auto& probe = studio.kilns.at(firing.kiln).probes.at(firing.probe).probe;
        EXPECT_LE(*probe.fitted, firing.lit) << firing.title;
        EXPECT_TRUE(!probe.retired || *probe.retired > firing.lit) << firing.title;
    }
}

/// A hold at that temperature, four hours long, from a peak.
Curve heldAt(double hold_C, double peak_C) {
    const Instant begin = evening;
    const auto C = Temperature::fromCelsius;
    using std::chrono::minutes;
    return {{begin, C(20)},
            {begin + minutes(480), C(peak_C)},
            {begin + minutes(510), C(hold_C)},
            {begin + minutes(750), C(hold_C)},
            {begin + minutes(900), C(600)}};
}

double meanSize(double hold_C, double peak_C, const DemoStudio& studio) {
    Chance chance(9);
    DemoPiece piece;
    piece.shelf = 1;
    piece.piece.application_g_per_cm2 = 0.1;
    double sum = 0;
    for (int i = 0; i < 40; ++i)
        sum += demoOutcome(piece, studio, studio.firings[0], {heldAt(hold_C, peak_C), {}, false}, chance)
                   .outcome.largest_mm.value_or(0);
    return sum / 40;
}

TEST(DemoWare, FollowsTheStatedModel) {
    const auto studio = demoStudio(1);
    EXPECT_GT(meanSize(1083, 1262, studio),
              1.5 * meanSize(1030, 1262, studio)); // best where the glaze grows best
    EXPECT_GT(meanSize(1083, 1262, studio), 10);
    Chance chance(4);
    DemoPiece piece;
    piece.shelf = 1;
    piece.piece.application_g_per_cm2 = 0.12;
    piece.piece.catcher = true;
    const auto hot =
        demoOutcome(piece, studio, studio.firings[0], {heldAt(1083, 1290), {}, false}, chance).outcome;
    const auto cool =
        demoOutcome(piece, studio, studio.firings[0], {heldAt(1083, 1250), {}, false}, chance).outcome;
    EXPECT_GT(*hot.runOff_mm, 10);
    EXPECT_EQ(*cool.runOff_mm, 0);
    EXPECT_EQ(hot.catcherClean, false);
    EXPECT_NE(hot.crystals, Crystals::covered);
    EXPECT_EQ(cool.crystals, Crystals::covered);
    const auto reduced =
        demoOutcome(piece, studio, studio.firings[0], {heldAt(1083, 1262), {}, true}, chance).outcome;
    EXPECT_TRUE(reduced.knownFaults.contains(WareFault::dull));
    EXPECT_EQ(reduced.grade, "C");
}

TEST(DemoWare, SeesDeepSagsMoreOftenThanShallowOnes) {
    const auto studio = demoStudio(1);
    Chance chance(2);
    int deep = 0;
    int shallow = 0;
    for (int i = 0; i < 200; ++i) {
        deep += demoSight(15, studio.glazes[0], chance) == SagSight::yes;
        shallow += demoSight(2, studio.glazes[0], chance) == SagSight::yes;
    }
    EXPECT_GT(deep, 160);
    EXPECT_LT(shallow, 10);
}

TEST(DemoPhoto, ShowsTheCrystalAsLargeAsItIs) {
    Outcome outcome;
    outcome.crystals = Crystals::few;
    outcome.largest_mm = 40;
    outcome.crystalPicked = "#ffffff";
    outcome.groundPicked = "#202060";
    Piece piece;
    piece.form = "vase";
    const auto picture = drawDemoPiece(piece, outcome, 1);
    const auto length_px = [&](const PhotoPoint& a, const PhotoPoint& b) {
        return std::hypot((a.x - b.x) * picture.image.width(), (a.y - b.y) * picture.image.height());
    };
    EXPECT_NEAR(length_px(picture.ends[2], picture.ends[3]) / length_px(picture.ends[0], picture.ends[1]) *
                    50,
                40, 0.5);
    const auto photo = good(demoPhoto(picture, "drawn", evening));
    EXPECT_EQ(photo.width, picture.image.width());
    EXPECT_LT(photo.jpeg.size(), 300'000U);
    EXPECT_EQ(drawDemoPiece(piece, outcome, 1).image, picture.image);
    EXPECT_NE(drawDemoPiece(piece, outcome, 2).image, picture.image);
}

} // namespace
} // namespace ringhold::test
