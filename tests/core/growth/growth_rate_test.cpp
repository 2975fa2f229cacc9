#include "core/growth/growth_rate.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

struct RateCase {
    double celsius;
    double um_per_min;
};

class PublishedRate : public testing::TestWithParam<RateCase> {};

TEST_P(PublishedRate, IsTheAssumedBell) {
    EXPECT_NEAR(publishedGrowthRate().at_um_per_min(Temperature::fromCelsius(GetParam().celsius)),
                GetParam().um_per_min, 1e-9);
}

// 60 at 1090, half at 1030 and 1130, none below 950 or above 1200: the assumption itself.
INSTANTIATE_TEST_SUITE_P(GrowthRate, PublishedRate,
                         testing::Values(RateCase{20, 0}, RateCase{950, 0}, RateCase{1030, 30},
                                         RateCase{1090, 60}, RateCase{1130, 30}, RateCase{1200, 0},
                                         RateCase{1300, 0}));

TEST(GrowthRate, RisesToTheBestAndFallsAfterIt) {
    const auto rate = publishedGrowthRate();
    double last = 0;
    for (double celsius = 951; celsius < 1200; ++celsius) {
        const double u = rate.at_um_per_min(Temperature::fromCelsius(celsius));
        EXPECT_EQ(u > last, celsius <= 1090) << celsius;
        last = u;
    }
    EXPECT_GT(last, 0);
}

TEST(GrowthRate, KeepsThePublishedRangeAboutIt) {
    const auto rate = publishedGrowthRate();
    EXPECT_EQ(rate.low_um_per_min, 12);
    EXPECT_EQ(rate.high_um_per_min, 125);
    EXPECT_EQ(rate.basis, GrowthBasis::published);
}

} // namespace
} // namespace ringhold
