#include "core/watch/spike_filter.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace test;
using std::chrono::minutes;
using std::chrono::seconds;

class Spikes : public testing::TestWithParam<int> {};

TEST_P(Spikes, OfOneReadingAreGoneWhereverTheyAre) {
    const Curve level = readEvery(curveOf({{0, 1090}, {20, 1090}}), seconds(GetParam()));
    for (const std::size_t i :
         {std::size_t{0}, std::size_t{1}, level.size() / 2, level.size() - 2, level.size() - 1}) {
        Curve spiked = level;
        spiked[i].temperature = celsius(20);
        const Curve steady = withoutSpikes(spiked);
        ASSERT_EQ(steady.size(), level.size());
        for (const auto& point : steady)
            EXPECT_EQ(point.temperature, celsius(1090)) << i;
    }
}

INSTANTIATE_TEST_SUITE_P(Spacing, Spikes, testing::Values(1, 10, 45, 120));

TEST(WithoutSpikes, LeavesRampsAndTheEdgesOfDwells) {
    const Curve move = readEvery(
        curveOf({{0, 1090}, {10, 1090}, {14, 1050}, {24, 1050}, {26, 1090}, {40, 1090}}), seconds(10));
    const Curve steady = withoutSpikes(move);
    for (std::size_t i = 0; i < move.size(); ++i)
        EXPECT_EQ(steady[i].temperature, move[i].temperature) << i;
}

TEST(WithoutSpikes, LessensNoise) {
    std::mt19937 random(37);
    const Curve level = readEvery(curveOf({{0, 1090}, {600, 1090}}), seconds(10));
    double squares = 0;
    for (const auto& point : withoutSpikes(noisy(level, 1, 0, random)))
        squares += std::pow(point.temperature.celsius() - 1090, 2);
    // The median of nine normal values: variance about pi / (2 (9 + pi / 2 - 1)), 0.164 (asymptotic formula).
    EXPECT_NEAR(squares / static_cast<double>(level.size()), 0.164, 0.03);
}

TEST(WithoutSpikes, LeavesReadingsFarApartAlone) {
    Curve typed = readEvery(curveOf({{0, 1090}, {60, 1090}}), minutes(5));
    typed[6].temperature = celsius(1050);
    EXPECT_EQ(withoutSpikes(typed)[6].temperature, celsius(1050));
    EXPECT_TRUE(withoutSpikes({}).empty());
}

} // namespace
} // namespace ringhold
