#include "core/cones/offset_prior.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace ringhold {
namespace {

TemperatureDifference degrees(double celsius) {
    return TemperatureDifference::fromCelsius(celsius);
}

// IEC 60584-1 class 2, type K: 0.0075 t, so 9.45 °C at 1260 °C; over the square root of 3 5.46; with 2 and 8
// °C in quadrature 9.89.
TEST(OffsetPrior, OfANewProbeIsAboutTenDegrees) {
    const auto prior = newProbePrior(ThermocoupleType::K, Temperature::fromCelsius(1260));
    EXPECT_EQ(prior.mean.celsius(), 0);
    EXPECT_NEAR(prior.sd.celsius(), 9.89, 0.01);
    EXPECT_LT(newProbePrior(ThermocoupleType::S, Temperature::fromCelsius(1260)).sd.celsius(), 8.6);
}

TEST(OffsetPrior, NarrowsWithTheNumberOfFirings) {
    const auto fresh = newProbePrior(ThermocoupleType::K, Temperature::fromCelsius(1260));
    std::vector<OffsetFound> found;
    double last = fresh.sd.celsius();
    for (int i = 0; i < 8; ++i) {
        found.push_back({degrees(7), degrees(2)});
        const auto prior = priorFromHistory(found, fresh);
        EXPECT_LT(prior.sd.celsius(), last);
        EXPECT_EQ(prior.firings, i + 1);
        last = prior.sd.celsius();
    }
    EXPECT_NEAR(priorFromHistory(found, fresh).mean.celsius(), 7, 0.3);
    EXPECT_GT(last, 2.0); // never surer than one firing scatters
}

TEST(OffsetPrior, FollowsAProbeThatDrifts) {
    const auto fresh = newProbePrior(ThermocoupleType::K, Temperature::fromCelsius(1260));
    std::vector<OffsetFound> found;
    for (int i = 0; i < 20; ++i)
        found.push_back({degrees(5 - 0.5 * i), degrees(1.5)});
    EXPECT_NEAR(priorFromHistory(found, fresh).mean.celsius(), 5 - 0.5 * 19, 2.5);
}

/// Two normal beliefs multiplied have the sum of their precisions.
TEST(OffsetPrior, TakenOutOfAPosteriorLeavesWhatTheLooksTold) {
    const OffsetPrior prior{degrees(0), degrees(10), 0};
    const double precision = 1 / 100.0 + 1 / 9.0;
    const OffsetFound posterior{degrees(12 / 9.0 / precision), degrees(1 / std::sqrt(precision))};
    const auto told = toldByLooks(prior, posterior);
    ASSERT_TRUE(told);
    EXPECT_NEAR(told->mean.celsius(), 12, 1e-9);
    EXPECT_NEAR(told->sd.celsius(), 3, 1e-9);
    EXPECT_FALSE(toldByLooks(prior, {degrees(0.1), degrees(9.8)})) << "a look at a standing cone";
}

TEST(OffsetPrior, FiledWithItsPriorStillInItWouldCreepAndBeTooSure) {
    const OffsetPrior fresh{degrees(0), degrees(10), 0};
    std::vector<OffsetFound> clean;
    std::vector<OffsetFound> doubled;
    for (int i = 0; i < 6; ++i) {
        clean.push_back({degrees(12), degrees(3)});
        const auto prior = priorFromHistory(doubled, fresh);
        const double told = 1 / 9.0;
        const double before = 1 / (prior.sd.celsius() * prior.sd.celsius());
        doubled.push_back({degrees((12 * told + prior.mean.celsius() * before) / (told + before)),
                           degrees(1 / std::sqrt(told + before))});
    }
    EXPECT_LT(priorFromHistory(doubled, fresh).sd.celsius(), priorFromHistory(clean, fresh).sd.celsius());
    EXPECT_LT(priorFromHistory(doubled, fresh).mean.celsius(), priorFromHistory(clean, fresh).mean.celsius());
}

TEST(OffsetPrior, IsWiderWhenCarriedDown) {
    const OffsetPrior top{degrees(12.6), degrees(2), 3};
    const auto hold = carriedTo(Temperature::fromCelsius(1080), top, Temperature::fromCelsius(1260));
    EXPECT_NEAR(hold.mean.celsius(), 12.6 * 1080 / 1260, 1e-9);
    EXPECT_GT(hold.sd.celsius(), 2.0);
}

} // namespace
} // namespace ringhold
