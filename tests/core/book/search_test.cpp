#include "core/book/check.h"
#include "tests/core/book/sample_firing.h"

namespace ringhold::test {
namespace {

using std::chrono::hours;

/// Two kilns and three firings: the sample, a bisque and one with "frost".
class SearchBook : public testing::Test {
  protected:
    SearchBook() {
        const KilnId heron = good(m_writer.add(kilnCalled("Heron")));
        m_bisque = good(m_writer.add(firingFrom(heron, "Bisque", evening - hours(48), evening - hours(30))));
        m_frost = good(m_writer.add(firingFrom(heron, "Frühjahr", evening - hours(24), evening - hours(9))));
        m_heron = heron;
        const PackId pack = good(m_writer.add(Pack{{}, m_frost, "top", {}, {"9", "10", "11"}, false}));
        static_cast<void>(pack);
        m_plate = good(m_writer.add(Piece{{}, m_frost, "plate", "frost fern", "1", false, false}));
        Outcome outcome;
        outcome.piece = m_plate;
        outcome.grade = "b";
        outcome.note = "a long crack";
        outcome.knownFaults = {WareFault::dunting};
        expectGood(m_writer.set(outcome));
        m_note = good(m_writer.add(noteThat(m_frost, "the lid sat ajar")));
    }
    std::vector<FiringId> found(const FiringFilter& filter) const {
        std::vector<FiringId> ids;
        for (const auto& summary : good(m_reader.firings(filter)))
            ids.push_back(summary.id);
        return ids;
    }
    std::vector<FiringId> words(const std::string& typed) const {
        FiringFilter filter;
        filter.words = typed;
        return found(filter);
    }
    using Ids = std::vector<FiringId>;

    BookFolder m_folder;
    Book m_book = bookAt(m_folder / "kiln.ringhold");
    BookWriter m_writer{m_book};
    BookReader m_reader{m_book};
    FiringRecord m_sample = writeSample(m_book);
    FiringId m_vases = m_sample.firing.id;
    FiringId m_bisque{}, m_frost{};
    KilnId m_heron{};
    PieceId m_plate{};
    NoteId m_note{};
};

TEST_F(SearchBook, ByWordsWhereverTheyStand) {
    EXPECT_EQ(words("frost"), Ids{m_frost});             // a glaze
    EXPECT_EQ(words("FRUHJAHR"), Ids{m_frost});          // the title, without its accent
    EXPECT_EQ(words("früh"), Ids{m_frost});              // the beginning of a word
    EXPECT_EQ(words("lid crack, dunt"), Ids{m_frost});   // note, outcome and fault together
    EXPECT_EQ(words("wax seeds celadon"), Ids{m_vases}); // note, fault, colour
    EXPECT_EQ(words("from the left"), Ids{m_vases});     // a photo's caption
    EXPECT_EQ(words("lid wax"), Ids{});                  // of two firings
    EXPECT_EQ(words("\"* OR NEAR("), Ids{});             // what is typed is no query language
    EXPECT_EQ(words("!?"), Ids{});
    EXPECT_EQ(words(""), (Ids{m_bisque, m_frost, m_vases}));
}

TEST_F(SearchBook, TheIndexFollowsEveryChange) {
    expectGood(m_writer.strike(m_note, evening));
    EXPECT_EQ(words("ajar"), Ids{});
    expectGood(m_writer.restore(m_note, evening));
    EXPECT_EQ(words("ajar"), Ids{m_frost});
    good(m_writer.correct(Note{m_note, m_frost, evening, "the lid was shut", false}, evening));
    EXPECT_EQ(words("ajar"), Ids{});
    EXPECT_EQ(words("shut"), Ids{m_frost});
    expectGood(m_writer.alter(Piece{m_plate, m_bisque, "dish", "", "", false, false}));
    EXPECT_EQ(words("dish crack"), Ids{m_bisque});
    EXPECT_EQ(words("frost"), Ids{});
    expectGood(m_writer.removeOutcome(m_plate));
    EXPECT_EQ(words("crack"), Ids{});
    expectGood(m_writer.remove(m_plate));
    EXPECT_EQ(words("dish"), Ids{});
    Firing firing = m_sample.firing;
    firing.title = "Big jars";
    expectGood(m_writer.alter(firing));
    EXPECT_EQ(words("jars"), Ids{m_vases});
    for (const auto& finding : good(checkBook(m_book.file())))
        ADD_FAILURE() << finding.what;
}

TEST_F(SearchBook, ByKilnDateGlazeConeAndGrade) {
    const auto by = [](auto FiringFilter::*field, auto value) {
        FiringFilter filter;
        filter.*field = value;
        return filter;
    };
    EXPECT_EQ(found(by(&FiringFilter::kiln, m_heron)), (Ids{m_bisque, m_frost}));
    EXPECT_EQ(found(by(&FiringFilter::from, evening)), Ids{m_vases});
    EXPECT_EQ(found(by(&FiringFilter::before, evening)), (Ids{m_bisque, m_frost}));
    EXPECT_EQ(found(by(&FiringFilter::glaze, "ICE 3")), Ids{m_vases});
    EXPECT_EQ(found(by(&FiringFilter::glaze, "fern")), Ids{m_frost});
    EXPECT_EQ(found(by(&FiringFilter::cone, "10")), Ids{m_frost}); // the middle one of its pack
    EXPECT_EQ(found(by(&FiringFilter::cone, "9")), Ids{m_vases});
    EXPECT_EQ(found(by(&FiringFilter::grade, "B")), Ids{m_frost});
    FiringFilter both = by(&FiringFilter::kiln, m_heron);
    both.words = "wax";
    EXPECT_EQ(found(both), Ids{});
}

TEST_F(SearchBook, ThePlansConeCountsBeforeThePacks) {
    Firing firing = good(m_reader.firing(m_frost));
    firing.plan = Plan{"x",
                       {ConeWait{"11", Rate::fromCelsiusPerHour(60), Temperature::fromCelsius(1290),
                                 Temperature::fromCelsius(1310), std::chrono::minutes(40)}}};
    expectGood(m_writer.alter(firing));
    FiringFilter filter;
    filter.cone = "11";
    EXPECT_EQ(found(filter), Ids{m_frost});
    filter.cone = "10";
    EXPECT_EQ(found(filter), Ids{});
}

} // namespace
} // namespace ringhold::test
