#include "core/growth/crystal.h"
#include "tests/core/watch/curve_maker.h"

#include <gsl/gsl_integration.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using test::atMinute;
using test::curveOf;

GrowthRate held(double um_per_min) {
    auto rate = publishedGrowthRate();
    rate.best_um_per_min = rate.low_um_per_min = rate.high_um_per_min = um_per_min;
    return rate;
}

struct HeldCase {
    double um_per_min;
    double hours;
    double diameter_mm;
};

class Held : public testing::TestWithParam<HeldCase> {};

TEST_P(Held, GrowsTwoRadiiWide) {
    const CrystalGrowth growth(curveOf({{0, 1090}, {GetParam().hours * 60, 1090}}),
                               held(GetParam().um_per_min));
    EXPECT_NEAR(2 * growth.radius().likely_mm, GetParam().diameter_mm, 0.05);
}

// Diameters: 0.5 to 1.5 cm after 3.5 h (MA thesis, Eastern Illinois University, 1978) and 1 to 1.5 cm an hour
// (Shimbo, Crystal Glazes 2, p. 63), at the radial rates reckoned from them.
INSTANTIATE_TEST_SUITE_P(Crystal, Held,
                         testing::Values(HeldCase{12, 3.5, 5.0}, HeldCase{36, 3.5, 15.1},
                                         HeldCase{104, 1, 12.5}));

TEST(Crystal, IntegratesRampsExactly) {
    // 1150 to 1000 °C in 90 min, then level for 30 min.
    const CrystalGrowth growth(curveOf({{0, 1150}, {90, 1000}, {120, 1000}}), publishedGrowthRate());
    gsl_function u{[](double minute, void*) {
                       return publishedGrowthRate().at_um_per_min(
                           Temperature::fromCelsius(1150 - minute * 150 / 90));
                   },
                   nullptr};
    double ramp_um = 0;
    for (const auto& [from, to] : {std::pair(0, 36), std::pair(36, 90)}) { // u has a corner at 1090 °C
        double part_um = 0;
        double error_um = 0;
        std::size_t evaluations = 0;
        gsl_integration_qng(&u, from, to, 0, 1e-6, &part_um, &error_um, &evaluations);
        ramp_um += part_um;
    }
    const double level_um = 30 * publishedGrowthRate().at_um_per_min(Temperature::fromCelsius(1000));
    EXPECT_NEAR(growth.radius().likely_mm * 1000, ramp_um + level_um, 1e-3 * (ramp_um + level_um));
    EXPECT_NEAR(growth.radiusAt(atMinute(90)).likely_mm * 1000, ramp_um, 1e-3 * ramp_um);
}

TEST(Crystal, DoesNotMindHowOftenTheCurveIsRead) {
    const auto curve = curveOf({{0, 1260}, {30, 1085}, {270, 1085}, {280, 1040}, {290, 1085}, {360, 900}});
    const CrystalGrowth sparse(curve, publishedGrowthRate());
    const CrystalGrowth dense(test::readEvery(curve, std::chrono::seconds(20)), publishedGrowthRate());
    EXPECT_GT(sparse.radius().likely_mm, 10);
    EXPECT_NEAR(sparse.radius().likely_mm, dense.radius().likely_mm, 1e-3 * dense.radius().likely_mm);
}

TEST(Crystal, CarriesTheRange) {
    const CrystalGrowth growth(curveOf({{0, 1090}, {100, 1090}}), publishedGrowthRate());
    EXPECT_NEAR(growth.radius().low_mm, 1.2, 1e-9);
    EXPECT_NEAR(growth.radius().likely_mm, 6.0, 1e-9);
    EXPECT_NEAR(growth.radius().high_mm, 12.5, 1e-9);
}

TEST(Crystal, BeginsOnTheWayDown) {
    // An hour through the growth window on the way up draws nothing; 1200 °C is passed at minute 130.
    const CrystalGrowth growth(curveOf({{0, 950}, {60, 1200}, {120, 1260}, {140, 1140}, {200, 1140}}),
                               publishedGrowthRate());
    ASSERT_TRUE(growth.began());
    EXPECT_EQ(*growth.began(), atMinute(130));
    EXPECT_EQ(growth.radiusAt(atMinute(60)).likely_mm, 0);
    EXPECT_EQ(growth.radiusAt(atMinute(130)).likely_mm, 0);
    EXPECT_GT(growth.radiusAt(atMinute(141)).likely_mm, 0);
    EXPECT_EQ(growth.radiusAt(atMinute(500)).likely_mm, growth.radius().likely_mm);
}

TEST(Crystal, IsMeltedByASecondPeak) {
    const CrystalGrowth twice(
        curveOf({{0, 1250}, {20, 1090}, {200, 1090}, {220, 1250}, {240, 1090}, {300, 1090}}),
        publishedGrowthRate());
    EXPECT_GT(*twice.began(), atMinute(220));
}

TEST(Crystal, OfACurveThatStillClimbsIsNothing) {
    const CrystalGrowth growth(curveOf({{0, 950}, {60, 1100}}), publishedGrowthRate());
    EXPECT_EQ(growth.radius().likely_mm, 0);
    EXPECT_FALSE(CrystalGrowth({}, publishedGrowthRate()).began());
    EXPECT_EQ(CrystalGrowth({}, publishedGrowthRate()).radius().likely_mm, 0);
}

TEST(Crystal, HasEachRingWhereTheKilnTurned) {
    // 100 min at 60 µm/min, then 10 min at 30, 10 at 60, 10 at 30, 10 at 60; moves of a second.
    const double s = 1.0 / 60;
    const CrystalGrowth growth(curveOf({{0, 1090},
                                        {100 - s, 1090},
                                        {100, 1030},
                                        {110 - s, 1030},
                                        {110, 1090},
                                        {120 - s, 1090},
                                        {120, 1030},
                                        {130 - s, 1030},
                                        {130, 1090},
                                        {140, 1090}}),
                               publishedGrowthRate());
    const auto dwell = [](double minute, double celsius) {
        return Dwell{atMinute(minute), std::chrono::minutes(10), test::celsius(celsius)};
    };
    const auto rings =
        growth.rings({{dwell(100, 1030), dwell(110, 1090)}, {dwell(120, 1030), dwell(130, 1090)}});
    ASSERT_EQ(rings.size(), 2u);
    EXPECT_NEAR(rings[0].inner_mm, 6.0, 0.002);
    EXPECT_NEAR(rings[0].turn_mm, 6.3, 0.002);
    EXPECT_NEAR(rings[0].outer_mm, 6.9, 0.002);
    EXPECT_NEAR(rings[1].inner_mm, 6.9, 0.002);
    EXPECT_NEAR(rings[1].width_mm(), 0.9, 0.002);
    EXPECT_NEAR(growth.radius().likely_mm, 7.8, 0.002);
}

} // namespace
} // namespace ringhold
