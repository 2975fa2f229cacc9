#include "core/instrument/replay_instrument.h"
#include "tests/core/instrument/heard.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

using std::chrono::hours;
using std::chrono::seconds;

const Instant past(hours(1000));
const Instant today(hours(9000));

Curve curve() {
    Curve curve;
    for (int i = 0; i < 100; ++i)
        curve.push_back({past + i * seconds(30), Temperature::fromCelsius(1000 + i)});
    return curve;
}

TEST(ReplayInstrument, PlaysItsSamplesInOrderAtItsSpeed) {
    ReplayInstrument replay(samplesOf(curve(), "kiln"), 60, "a curve");
    Heard heard;
    ASSERT_TRUE(replay.open(heard).ok());
    EXPECT_EQ(replay.advance(today), today + std::chrono::milliseconds(500));
    ASSERT_EQ(heard.samples.size(), 1U);
    EXPECT_EQ(heard.samples[0].at, past);
    EXPECT_EQ(heard.samples[0].label, "kiln");
    EXPECT_EQ(heard.samples[0].value, 1000.0);
    replay.advance(today + seconds(10)); // 600 s at the kiln, points 0 to 20
    EXPECT_EQ(heard.samples.size(), 21U);
    EXPECT_EQ(replay.kilnTime(today + seconds(10)), past + seconds(600));
    replay.advance(today + seconds(5)); // a wall clock set back repeats nothing
    EXPECT_EQ(heard.samples.size(), 21U);
    EXPECT_EQ(replay.advance(today + hours(1)), std::nullopt);
    ASSERT_EQ(heard.samples.size(), 100U);
    for (int i = 0; i < 100; ++i)
        EXPECT_EQ(heard.samples[i].at, past + i * seconds(30));
    EXPECT_EQ(heard.links, (std::vector{LinkState::waiting, LinkState::connected, LinkState::ended}));
    EXPECT_EQ(replay.advance(today + hours(2)), std::nullopt);
    EXPECT_EQ(heard.links.size(), 3U);
}

TEST(ReplayInstrument, FollowsTheInstantsThatItAsksFor) {
    ReplayInstrument replay(samplesOf(curve()), 7, "a curve");
    Heard heard;
    ASSERT_TRUE(replay.open(heard).ok());
    int calls = 0;
    for (std::optional<Instant> due = today; due; due = replay.advance(*due))
        ASSERT_LE(++calls, 101);
    EXPECT_EQ(heard.samples.size(), 100U);
}

TEST(ReplayInstrument, SortsWhatItIsGivenAndKeepsTheOrderOfOneInstant) {
    ReplayInstrument replay({{past + seconds(2), "b", Quantity::temperature, 3},
                             {past, "a", Quantity::temperature, 1},
                             {past, "b", Quantity::temperature, std::nullopt}},
                            1, "three");
    Heard heard;
    ASSERT_TRUE(replay.open(heard).ok());
    replay.advance(today);
    replay.advance(today + seconds(2));
    ASSERT_EQ(heard.samples.size(), 3U);
    EXPECT_EQ(heard.samples[0].label, "a");
    EXPECT_EQ(heard.samples[1].value, std::nullopt); // an open probe stays one
    EXPECT_EQ(heard.samples[2].value, 3.0);
}

TEST(ReplayInstrument, MayBeClosedAtAnySampleAndPlaysFromTheBeginningAgain) {
    ReplayInstrument replay(samplesOf(curve()), 60, "a curve");
    Heard heard;
    heard.atEach = [&](const Sample&) {
        if (heard.samples.size() == 5)
            replay.close();
    };
    ASSERT_TRUE(replay.open(heard).ok());
    replay.advance(today);
    EXPECT_EQ(replay.advance(today + hours(1)), std::nullopt);
    EXPECT_EQ(heard.samples.size(), 5U);
    ASSERT_TRUE(replay.open(heard).ok());
    replay.advance(today + hours(2));
    EXPECT_EQ(heard.samples.back().at, past);
}

TEST(ReplayInstrument, RefusesWhatCannotBePlayed) {
    Heard heard;
    EXPECT_EQ(ReplayInstrument({}, 1, "nothing").open(heard).error().kind, ErrorKind::badInput);
    EXPECT_EQ(ReplayInstrument(samplesOf(curve()), 0, "x").open(heard).error().kind, ErrorKind::badInput);
    EXPECT_EQ(ReplayInstrument(samplesOf(curve()), 60, "kiln.csv").description(),
              "kiln.csv replayed, 60 times as fast");
}

} // namespace
} // namespace ringhold
