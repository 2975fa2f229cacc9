#include "tests/support/notebook_on_disk.h"
#include "tests/support/page_words.h"
#include "tests/support/screens.h"
#include "ui/glaze/growth_pane.h"
#include "ui/glaze/growth_words.h"

#include <QLabel>
#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

/// Crystals that the published rate would have grown in holds at those temperatures, with two ring marks.
GlazeGrowth grownAt(const std::vector<double>& holds_C, int pieces) {
    std::vector<GrownFiring> firings;
    for (const double hold_C : holds_C) {
        GrownFiring firing{crystalCurve(noonOfMarch(1), 1270, hold_C), 3, {}};
        const CrystalGrowth growth(firing.curve, publishedGrowthRate());
        MeasuredCrystal crystal{growth.radius().likely_mm, {}, 0.3};
        for (const int minute : {760, 820}) {
            const Instant at = noonOfMarch(1) + std::chrono::minutes(minute);
            crystal.rings.push_back({at, growth.radiusAt(at).likely_mm});
        }
        firing.crystals.assign(static_cast<std::size_t>(pieces), crystal);
        firings.push_back(firing);
    }
    return glazeGrowthOf(firings);
}

class GrowthWordsTest : public testing::Test {
  protected:
    NotebookOnDisk m_book;
    Theme m_theme;
};

} // namespace

TEST_F(GrowthWordsTest, NothingMeasuredSaysWhatIsMissing) {
    const auto words = plainWords(growthWords({}, m_book->preferences()));
    EXPECT_NE(words.find("Not enough yet: nothing was measured. It takes 3 pieces from 2 firings"),
              std::string::npos)
        << words;
    EXPECT_NE(words.find("12 to 125 µm/min"), std::string::npos) << words;
    EXPECT_NE(plainWords(growthWords(grownAt({1080}, 4), m_book->preferences()))
                  .find("4 pieces from 1 firing, 8 rings"),
              std::string::npos);
}

TEST_F(GrowthWordsTest, AFittedRateHasItsIntervalsAndItsPieces) {
    const auto growth = grownAt({1060, 1090, 1110}, 3);
    ASSERT_TRUE(growth.told);
    const auto words = plainWords(growthWords(growth, m_book->preferences()));
    EXPECT_NE(words.find("Crystals grow fastest at 1 "), std::string::npos) << words;
    EXPECT_NE(words.find("From 9 pieces from 3 firings, 18 rings; 90 % intervals."), std::string::npos)
        << words;
    ASSERT_TRUE(m_book->preferences().setUnit(TemperatureUnit::fahrenheit));
    EXPECT_NE(plainWords(growthWords(growth, m_book->preferences())).find("°F"), std::string::npos);
}

TEST_F(GrowthWordsTest, TheBandThatShowsIsOfferedOnceAnswersTellIt) {
    EXPECT_NE(plainWords(visibleWords(visibleBand({}), m_book->preferences())).find("no answer so far"),
              std::string::npos);
    std::vector<SagAnswer> answers;
    for (int i = 0; i < 12; ++i)
        answers.push_back({2.0 + i, i >= 5});
    const auto band = visibleBand(answers);
    ASSERT_TRUE(band.told);
    const auto words = plainWords(visibleWords(band, m_book->preferences()));
    EXPECT_NE(words.find("from 12 answers"), std::string::npos) << words;
    EXPECT_NE(words.find("is the band to alarm on"), std::string::npos) << words;
}

TEST_F(GrowthWordsTest, ThePaneShowsBoth) {
    GrowthPane pane(m_book->preferences(), m_theme);
    present(pane, 700, 500);
    pane.show({grownAt({1060, 1090}, 3), visibleBand({})});
    EXPECT_EQ(pane.findChildren<QLabel*>().size(), 2);
    keepScreens(pane, m_theme, QStringLiteral("growth"));
}

} // namespace ringhold::test
