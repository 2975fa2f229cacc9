#include "core/kiln/chance.h"
#include "core/learn/sag_visibility.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace ringhold {
namespace {

std::vector<SagAnswer> answersOf(double threshold_C, int count, Chance& chance) {
    std::vector<SagAnswer> answers;
    for (int i = 0; i < count; ++i) {
        const double depth_C = 2 * std::exp(2.3 * chance.uniform());
        answers.push_back({depth_C, std::log(depth_C / threshold_C) + 0.3 * chance.normal() > 0});
    }
    return answers;
}

TEST(SagVisibility, BeginsWithWhatIsBelievedOfAnyGlaze) {
    const auto band = visibleBand({});
    EXPECT_NEAR(band.likely_C, 6, 0.2);
    EXPECT_NEAR(band.likely90_C.low, 1.5, 0.1);
    EXPECT_NEAR(band.likely90_C.high, 24, 1.5);
    EXPECT_LT(band.offered_C, band.likely_C);
    EXPECT_FALSE(band.told);
    EXPECT_EQ(band.answers, 0);
}

TEST(SagVisibility, AnswersMoveAndNarrowIt) {
    const auto seen = visibleBand(std::vector<SagAnswer>{{4, true}, {5, true}, {3, true}});
    const auto unseen = visibleBand(std::vector<SagAnswer>{{10, false}, {12, false}, {9, false}, {0, true}});
    EXPECT_LT(seen.likely90_C.high, 10);
    EXPECT_GT(unseen.likely90_C.low, 5);
    EXPECT_LT(seen.offered_C, unseen.offered_C);
    EXPECT_EQ(unseen.answers, 3) << "one had no depth";
    Chance chance(3);
    const auto many = visibleBand(answersOf(8, 30, chance));
    EXPECT_TRUE(many.told);
    EXPECT_NEAR(many.likely_C, 8, 2.5);
}

TEST(SagVisibility, IntervalsHoldTheTruth) {
    for (const int count : {1, 4, 12}) {
        int held = 0;
        constexpr int glazes = 100;
        for (int g = 0; g < glazes; ++g) {
            Chance chance(static_cast<std::uint64_t>(g), static_cast<std::uint64_t>(count));
            const double threshold_C = 6 * std::exp(std::log(4.0) / 1.645 * chance.normal());
            const auto [low, high] = visibleBand(answersOf(threshold_C, count, chance)).likely90_C;
            held += low <= threshold_C && threshold_C <= high;
        }
        EXPECT_GE(held, 82) << count << " answers";
    }
}

} // namespace
} // namespace ringhold
