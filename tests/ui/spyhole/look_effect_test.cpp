#include "ui/spyhole/look_effect.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

Instant clock(const std::string& time) {
    return *parseIso8601("2026-03-01T" + time + "Z");
}

ConeForecast ending(std::optional<Instant> from, std::optional<Instant> median, std::optional<Instant> to) {
    ConeForecast forecast;
    forecast.cone = "10";
    forecast.down = {from, median, to};
    return forecast;
}

ConeForecast down() {
    ConeForecast forecast = ending(clock("17:50"), clock("17:55"), clock("18:00"));
    forecast.isDown = true;
    return forecast;
}

const ConeForecast sooner = ending(clock("18:11"), clock("18:17"), clock("18:25"));
const ConeForecast later = ending(clock("18:09"), clock("18:19"), clock("18:32"));
const ConeForecast openEnded = ending(clock("18:11"), clock("19:17"), std::nullopt);
const ConeForecast lateAtBest = ending(clock("18:11"), std::nullopt, std::nullopt);
const ConeForecast never = ending(std::nullopt, std::nullopt, std::nullopt);

struct Told {
    ConeForecast without;
    ConeForecast with;
    std::size_t looks;
    const char* words;
};

class EffectWords : public testing::TestWithParam<Told> {};

TEST_P(EffectWords, TellWhatWasAndWhatWouldBe) {
    const auto& told = GetParam();
    EXPECT_EQ(effectWords(told.without, told.with, told.looks, WordStyle{}).toStdString(), told.words);
}

INSTANTIATE_TEST_SUITE_P(
    Ends, EffectWords,
    testing::Values(
        Told{later, sooner, 1,
             "With this look: cone 10 down 18:17, 18:11 to 18:25.\nIt was 18:19, 18:09 to 18:32."},
        Told{later, down(), 2, "With these looks: cone 10 is down.\nIt was 18:19, 18:09 to 18:32."},
        Told{never, openEnded, 1,
             "With this look: cone 10 down 19:17, 18:11 or later.\nWithout: cone 10 not down within a day."},
        Told{down(), lateAtBest, 1,
             "With this look: cone 10 not down before 18:11.\nWithout: cone 10 is down."}));

Pack pack() {
    return {PackId{1}, FiringId{1}, "middle shelf", ConeType::selfSupporting, {"9", "10", "11"}, false};
}

PackForecast withDown(std::vector<bool> ends) {
    PackForecast forecast;
    for (const bool end : ends)
        forecast.cones.emplace_back().isDown = end;
    return forecast;
}

TEST(ToldCone, IsTheFiringConeUntilItIsDown) {
    EXPECT_EQ(toldCone(pack(), withDown({false, false, false}), std::nullopt), 1u);
    EXPECT_EQ(toldCone(pack(), withDown({false, false, false}), std::string("11")), 2u);
    EXPECT_EQ(toldCone(pack(), withDown({false, false, false}), std::string("6")), 1u);
    EXPECT_EQ(toldCone(pack(), withDown({true, true, false}), std::string("10")), 2u);
    EXPECT_EQ(toldCone(pack(), withDown({true, true, true}), std::string("10")), 1u);
}

Look look(const char* time, double hour, PackId where = PackId{1}) {
    return {LookId{}, where, clock(time), "10", hour};
}

/// One pack, cone 10 thought at 1 o'clock; wrongLook in the order of time.
LookPreview previewWith(std::vector<double> wrongLook) {
    LookPreview preview;
    auto& thought = preview.without.packs.emplace_back().cones.emplace_back();
    thought.cone = "10";
    thought.hourNow = {0.5, 1, 2};
    preview.with.packs.emplace_back().wrongLook = std::move(wrongLook);
    return preview;
}

TEST(Doubts, AreNoneWhenLooksFit) {
    EXPECT_TRUE(doubtsAbout({look("18:03", 1)}, {look("17:50", 0.5)}, {pack()}, previewWith({0.9, 0.1}), {})
                    .isEmpty());
}

TEST(Doubts, AreToldOfALookThatIsProbablyWrong) {
    const auto doubts =
        doubtsAbout({look("18:03", 5)}, {look("17:50", 0.5)}, {pack()}, previewWith({0, 0.8}), {});
    ASSERT_EQ(doubts.size(), 1);
    EXPECT_TRUE(doubts.front().startsWith(QStringLiteral("10 at 5 o’clock does not fit")))
        << qPrintable(doubts.front());
    EXPECT_TRUE(doubts.front().contains(QStringLiteral("at 1 o’clock (just leaning to 2) now")));
}

TEST(Doubts, FindTheLookAmongLaterOnes) {
    const std::vector<Look> earlier{look("17:50", 0.5), look("18:02", 1)};
    const auto added = look("17:55", 1);
    EXPECT_TRUE(doubtsAbout({added}, earlier, {pack()}, previewWith({0, 0.1, 0.9}), {}).isEmpty());
    EXPECT_EQ(doubtsAbout({added}, earlier, {pack()}, previewWith({0, 0.9, 0.1}), {}).size(), 1);
}

TEST(Doubts, AreToldOfAConeThatWouldStraighten) {
    const auto doubts =
        doubtsAbout({look("18:03", 1)}, {look("17:50", 3)}, {pack()}, previewWith({0, 0}), {});
    ASSERT_EQ(doubts.size(), 1);
    EXPECT_TRUE(doubts.front().contains(QStringLiteral("at 17:50 it was at 3 o’clock")))
        << qPrintable(doubts.front());
    EXPECT_TRUE(
        doubtsAbout({look("17:40", 1)}, {look("17:50", 3)}, {pack()}, previewWith({0, 0}), {}).isEmpty());
    EXPECT_TRUE(
        doubtsAbout({look("18:03", 1)}, {look("17:50", 3, PackId{2})}, {pack()}, previewWith({0, 0}), {})
            .isEmpty());
}

} // namespace
} // namespace ringhold
