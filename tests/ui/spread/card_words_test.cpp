#include "tests/support/live_climb.h"
#include "ui/spread/card_words.h"

namespace ringhold::test {
namespace {

std::string allOf(const CardWords& words) {
    return plainWords(words.lines.join(QLatin1Char('\n')));
}

TEST(CardWordsTest, TellHowTheConesStandAndWhenTheyWillBeDown) {
    LiveClimb firing;
    firing.look(148, "8", 3);
    const auto words = cardWords(firing.session(), firing.preferences());
    EXPECT_EQ(words.title, QStringLiteral("Heat work"));
    ASSERT_EQ(words.lines.size(), 4) << allOf(words);
    EXPECT_TRUE(words.lines[0].startsWith(QStringLiteral("Cone 8 down 14:"))) << allOf(words);
    EXPECT_TRUE(words.lines[1].startsWith(QStringLiteral("Cone 9 down 1"))) << allOf(words);
    EXPECT_TRUE(words.lines[2].startsWith(QStringLiteral("Next look: cone "))) << allOf(words);
    EXPECT_TRUE(words.lines[3].startsWith(QStringLiteral("Probe reads "))) << allOf(words);
    EXPECT_TRUE(words.lines[3].endsWith(QStringLiteral("from one look."))) << allOf(words);
    EXPECT_TRUE(words.warnings.isEmpty());
}

TEST(CardWordsTest, WarnOfALookThatDoesNotFit) {
    LiveClimb firing;
    firing.look(130, "8", 1);
    firing.look(132, "10", 5);
    firing.look(148, "8", 4);
    const auto words = cardWords(firing.session(), firing.preferences());
    ASSERT_EQ(words.warnings.size(), 1);
    EXPECT_EQ(words.warnings[0].toStdString(), "Look 14:12, 10 at 5 o’clock, does not fit the rest.");
}

/// Heat works on while the kiln falls.
TEST(CardWordsTest, SayWhatCoolingStillAdds) {
    LiveClimb firing({{0, 1100}, {170, 1270}, {172, 1262}});
    firing.look(160, "8", 6);
    firing.look(170, "9", 6);
    const auto words = cardWords(firing.session(), firing.preferences());
    ASSERT_EQ(words.lines.size(), 2) << allOf(words);
    EXPECT_TRUE(words.lines[0].contains(QStringLiteral("10"))) << allOf(words);
    EXPECT_TRUE(words.lines[0].startsWith(QStringLiteral("Cooling takes ")) ||
                words.lines[0].contains(QStringLiteral(" stays ")))
        << allOf(words);
}

/// 150 min up, cone 9 seen down, dropped to the growth hold, held for an hour.
TEST(CardWordsTest, CarryTheOffsetToTheGrowthHold) {
    LiveClimb firing({{0, 1100}, {180, 1280}, {195, 1076}, {255, 1076}});
    firing.look(160, "8", 6);
    firing.look(170, "9", 3);
    firing.look(180, "9", 6);
    const auto words = cardWords(firing.session(), firing.preferences());
    EXPECT_EQ(plainWords(words.title), "Hold 1 076 °C");
    ASSERT_FALSE(words.lines.isEmpty());
    const auto last = plainWords(words.lines.back());
    EXPECT_EQ(last.rfind("The probe likely reads ", 0), 0U) << last;
    EXPECT_NE(last.find("carried from the cones."), std::string::npos) << last;
}

} // namespace
} // namespace ringhold::test
