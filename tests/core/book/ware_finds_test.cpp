#include "core/book/glaze_cards.h"
#include "core/book/kiln_care.h"
#include "core/book/ware_finds.h"
#include "tests/core/book/sample_firing.h"

#include <gmock/gmock.h>

namespace ringhold::test {
namespace {

using std::chrono::seconds;
using testing::HasSubstr;

class BookOfFinds : public testing::Test {
  protected:
    BookFolder m_folder;
    Book m_book = bookAt(m_folder / "kiln.ringhold");
    BookWriter m_writer{m_book};
    BookReader m_reader{m_book};
    WareFinds m_finds{m_book};
    GlazeCards m_cards{m_book};
    KilnCare m_care{m_book};
    FiringRecord m_sample = writeSample(m_book);
    PieceId m_vase = m_sample.pieces[0].id;
};

template <class Outcome>
void expectBad(const Outcome& outcome, const std::string& says) {
    ASSERT_FALSE(outcome.ok()) << says;
    EXPECT_EQ(outcome.error().kind, ErrorKind::badInput);
    EXPECT_THAT(outcome.error().what, HasSubstr(says));
}

TEST_F(BookOfFinds, ARemovedPieceComesBackWithAllThatHungOnIt) {
    const WholePiece whole = good(m_finds.whole(m_vase));
    EXPECT_EQ(whole.photos, m_sample.photos);
    expectGood(m_writer.remove(m_vase));
    const FiringRecord without = good(m_reader.whole(m_sample.firing.id));
    EXPECT_EQ(without.pieces.size(), 1U);
    EXPECT_TRUE(without.photos.empty());
    EXPECT_TRUE(without.photoMeasures.empty());
    EXPECT_TRUE(without.ringRadii.empty());
    EXPECT_EQ(without.sagsSeen.size(), 1U);
    EXPECT_EQ(m_finds.whole(m_vase).error().kind, ErrorKind::notFound);

    expectGood(m_finds.restore(whole));
    const FiringRecord again = good(m_reader.whole(m_sample.firing.id, Pictures::with));
    expectSame(again.pieces, m_sample.pieces);
    expectSame(again.outcomes, m_sample.outcomes);
    EXPECT_EQ(again.photos, m_sample.photos);
    EXPECT_EQ(again.photoMeasures, m_sample.photoMeasures);
    EXPECT_EQ(again.ringRadii, m_sample.ringRadii);
    EXPECT_EQ(again.sagsSeen, m_sample.sagsSeen);
    expectBad(m_finds.restore(whole), "in the book already");
}

TEST_F(BookOfFinds, OnlyPicturesOfAReasonableSizeAreTaken) {
    Photo photo = m_sample.photos[0];
    photo.jpeg = std::string(largestJpeg + 1, 'x');
    expectBad(m_finds.add(photo), "too large: 4000 kB");
    photo.jpeg = "GIF89a";
    expectBad(m_finds.add(photo), "no whole JPEG");
    photo.jpeg = sampleJpeg().substr(0, 8); // cut off
    expectBad(m_finds.add(photo), "no whole JPEG");
    photo.jpeg = "";
    expectBad(m_finds.add(photo), "no whole JPEG");
    photo.jpeg = sampleJpeg();
    photo.width = 0;
    expectBad(m_finds.add(photo), "a photo has a size");
    EXPECT_EQ(good(m_finds.photos(m_vase)).size(), 1U);
}

TEST_F(BookOfFinds, PhotosAndMeasuresAreAlteredRemovedAndPutBack) {
    Photo photo = m_sample.photos[0];
    EXPECT_EQ(good(m_finds.picture(photo.id)), sampleJpeg());
    Photo renamed = photo;
    renamed.caption = "the neck";
    renamed.taken.reset();
    expectGood(m_finds.alter(renamed));
    EXPECT_EQ(good(m_finds.photos(m_vase))[0].caption, "the neck");
    EXPECT_EQ(good(m_finds.picture(photo.id)), sampleJpeg());
    expectGood(m_finds.remove(photo.id));
    EXPECT_EQ(m_finds.picture(photo.id).error().kind, ErrorKind::notFound);
    EXPECT_TRUE(good(m_finds.measures(photo.id)).empty());
    expectGood(m_finds.restore(photo));
    for (const auto& measure : m_sample.photoMeasures)
        expectGood(m_finds.restore(measure));
    EXPECT_EQ(good(m_finds.measures(photo.id)), m_sample.photoMeasures);
    expectGood(m_finds.remove(m_sample.photoMeasures[0].id));
    EXPECT_EQ(good(m_finds.measures(photo.id)).size(), 1U);
}

TEST_F(BookOfFinds, RingsAndSagsAreOneForEachPlace) {
    expectGood(m_finds.set(RingRadius{m_vase, 1, 7, 0.5}));
    EXPECT_EQ(good(m_finds.rings(m_vase)),
              (std::vector<RingRadius>{{m_vase, 0, 3.25, 0.5}, {m_vase, 1, 7, 0.5}}));
    expectGood(m_finds.removeRing(m_vase, 0));
    EXPECT_EQ(good(m_finds.rings(m_vase)).size(), 1U);
    expectGood(m_finds.set(SagSeen{m_vase, evening, SagSight::no, {}}));
    EXPECT_EQ(good(m_finds.sags(m_vase)), (std::vector<SagSeen>{{m_vase, evening, SagSight::no, {}}}));
    EXPECT_EQ(good(m_finds.sagsOfGlaze("ICE 3 + iron")).size(), 1U);
    EXPECT_TRUE(good(m_finds.sagsOfGlaze("frost")).empty());
    expectGood(m_finds.removeSag(m_vase, evening));
    EXPECT_EQ(m_finds.removeSag(m_vase, evening).error().kind, ErrorKind::notFound);
    expectBad(m_finds.set(RingRadius{m_vase, -1, 7, 0.5}), "rings are counted from 0");
}

TEST_F(BookOfFinds, GlazeCardsAreKeptWhole) {
    GlazeCard card = m_sample.glazeCards[0];
    EXPECT_EQ(good(m_cards.named("ICE 3")), card);
    EXPECT_FALSE(good(m_cards.named("ice")));
    expectBad(m_cards.add(GlazeCard{{}, "ice 3"}), "a glaze card of that name");
    const GlazeCard before = card;
    card.name = "Ice 4";
    card.top.reset();
    card.habits.pop_back();
    card.recipe.erase(card.recipe.begin());
    expectGood(m_cards.alter(card));
    EXPECT_EQ(good(m_cards.all()), std::vector{card});
    expectGood(m_cards.alter(before)); // undo
    EXPECT_EQ(good(m_cards.all()), std::vector{before});
    expectGood(m_cards.remove(card.id));
    EXPECT_TRUE(good(m_cards.all()).empty());
    expectGood(m_cards.restore(before));
    EXPECT_EQ(good(m_cards.all()), std::vector{before});
    GlazeCard upsideDown{{}, "x"};
    upsideDown.growLow = Temperature::fromCelsius(1100);
    upsideDown.growHigh = Temperature::fromCelsius(1000);
    expectBad(m_cards.add(upsideDown), "from the lower temperature to the higher");
}

TEST_F(BookOfFinds, ServiceAndChecklist) {
    ServiceEntry entry{{}, m_sample.kiln.id, m_sample.probes[0].id, evening, ServiceKind::relay, "new relay"};
    entry.id = good(m_care.add(entry));
    EXPECT_EQ(good(m_care.services(entry.kiln)), std::vector{entry});
    entry.words = "new relay and fuse";
    entry.probe.reset();
    expectGood(m_care.alter(entry));
    expectGood(m_care.remove(entry.id));
    EXPECT_TRUE(good(m_care.services(entry.kiln)).empty());
    expectGood(m_care.restore(entry));
    EXPECT_EQ(good(m_care.services(entry.kiln)), std::vector{entry});

    const std::vector<ChecklistItem> list{{{}, 7, "shelves washed", ChecklistKind::own},
                                          {{}, 7, "vent open", ChecklistKind::caution}};
    expectGood(m_care.setChecklist(list));
    expectGood(m_care.setChecklist(list)); // instead of, not behind
    const auto found = good(m_care.checklist());
    ASSERT_EQ(found.size(), 2U);
    EXPECT_EQ(found[1].position, 1);
    EXPECT_EQ(found[1].words, "vent open");
    EXPECT_EQ(found[1].kind, ChecklistKind::caution);
    expectBad(m_care.setChecklist(std::vector<ChecklistItem>{{{}, 0, " ", {}}}), "has words");
    EXPECT_EQ(good(m_care.checklist()).size(), 2U);
}

TEST(GlazeNames, ArePartedAsPottersWriteThem) {
    using testing::ElementsAre;
    EXPECT_THAT(glazeNames("ice 3"), ElementsAre("ice 3"));
    EXPECT_THAT(glazeNames(" ice 3 + iron,frost;"), ElementsAre("ice 3", "iron", "frost"));
    EXPECT_THAT(glazeNames(" + "), ElementsAre());
}

} // namespace
} // namespace ringhold::test
