#include "core/learn/growth_fit.h"
#include "core/learn/nonlinear_fit.h"

#include <gtest/gtest.h>

#include <cmath>

namespace ringhold {
namespace {

const Instant start{std::chrono::hours(490000)};

Instant minute(double minutes) {
    return start + durationFromMinutes(minutes);
}

Temperature celsius(double degrees) {
    return Temperature::fromCelsius(degrees);
}

/// A glaze 20 °C cooler than the published one and of half its speed.
GrowthRate coolGlaze() {
    GrowthRate rate = publishedGrowthRate();
    for (auto* at : {&rate.window.coldest, &rate.window.halfCold, &rate.window.best, &rate.window.halfHot,
                     &rate.window.hottest})
        *at = *at - TemperatureDifference::fromCelsius(20);
    rate.best_um_per_min = 30;
    return rate;
}

/// Peak, hold for four hours, three rings of 10 min 35 °C below, out. Turns up at 556, 582 and 608 min.
Curve firingAt(double hold_C) {
    Curve curve{{minute(0), celsius(1000)},
                {minute(270), celsius(1270)},
                {minute(300), celsius(hold_C)},
                {minute(540), celsius(hold_C)}};
    for (double at = 540; at < 610; at += 26) {
        curve.push_back({minute(at + 6), celsius(hold_C - 35)});
        curve.push_back({minute(at + 16), celsius(hold_C - 35)});
        curve.push_back({minute(at + 20), celsius(hold_C)});
        curve.push_back({minute(at + 26), celsius(hold_C)});
    }
    curve.push_back({minute(760), celsius(700)});
    return curve;
}

GrownFiring grown(double hold_C, double late_min, bool rings) {
    GrownFiring firing{firingAt(hold_C), 1, {}};
    const CrystalGrowth growth(firing.curve, coolGlaze());
    const auto radius = [&](Instant at) {
        return growth.radiusAt(at).likely_mm -
               growth.radiusAt(*growth.began() + durationFromMinutes(late_min)).likely_mm;
    };
    MeasuredCrystal crystal{radius(firing.curve.back().at), {}, 0.2};
    if (rings)
        for (const double turn : {556.0, 582.0, 608.0})
            crystal.rings.push_back({minute(turn), radius(minute(turn))});
    firing.crystals = {crystal};
    return firing;
}

TEST(NonlinearFit, FindsALineAsLinearAlgebraDoes) {
    // y = a + b x at 0, 1, 2, 3 with sd 0.5: covariance 0.25 [14 -6; -6 4] / 20
    const double y[] = {1, 3, 5.5, 6.5};
    const auto fit = fitNonlinear(
        [&y](std::span<const double> p) {
            std::vector<double> r;
            for (int x = 0; x < 4; ++x)
                r.push_back((y[x] - p[0] - p[1] * x) / 0.5);
            return r;
        },
        {0, 0});
    ASSERT_TRUE(fit);
    EXPECT_NEAR(fit->parameters[0], 1.15, 1e-6);
    EXPECT_NEAR(fit->parameters[1], 1.9, 1e-6);
    EXPECT_NEAR(fit->sd(0), 0.5 * std::sqrt(0.7), 1e-5);
    EXPECT_NEAR(fit->sd(1), 0.5 * std::sqrt(0.2), 1e-5);
    const auto draws = fit->draws(4000);
    double mean = 0, square = 0;
    for (const auto& draw : draws) {
        mean += draw[1] / 4000;
        square += (draw[1] - 1.9) * (draw[1] - 1.9) / 4000;
    }
    EXPECT_NEAR(mean, 1.9, 0.02);
    EXPECT_NEAR(std::sqrt(square), fit->sd(1), 0.01);
}

TEST(NonlinearFit, FindsAnExponentialAndRefusesWhatIsNotFixed) {
    const auto fit = fitNonlinear(
        [](std::span<const double> p) {
            std::vector<double> r;
            for (int x = 0; x < 6; ++x)
                r.push_back(3 * std::exp(-0.4 * x) - p[0] * std::exp(-p[1] * x));
            return r;
        },
        {1, 1});
    ASSERT_TRUE(fit);
    EXPECT_TRUE(fit->converged);
    EXPECT_NEAR(fit->parameters[0], 3, 1e-4);
    EXPECT_NEAR(fit->parameters[1], 0.4, 1e-4);
    EXPECT_FALSE(fitNonlinear(
        [](std::span<const double> p) {
            return std::vector<double>{p[0] + p[1] - 1, 0};
        },
        {0, 0}));
    EXPECT_FALSE(fitNonlinear([](std::span<const double>) { return std::vector<double>{NAN}; }, {0}));
    EXPECT_FALSE(fitNonlinear([](std::span<const double>) { return std::vector<double>{0}; }, {0, 0}));
}

TEST(GrowthFit, OneDiameterLeavesItWide) {
    const auto fit = fitGrowth(std::vector{grown(1070, 10, false)});
    ASSERT_TRUE(fit) << fit.error().text();
    EXPECT_EQ(fit->rate().basis, GrowthBasis::measured);
    EXPECT_EQ(fit->rate().pieces, 1);
    EXPECT_TRUE(fit->began().empty());
    EXPECT_GT(fit->best90_C().high - fit->best90_C().low, 40);
    const auto [low, high] = fit->rate90_um_per_min(celsius(1070));
    EXPECT_LT(low, 30);
    EXPECT_GT(high, 30);
    EXPECT_GT(high / low, 1.3);
}

TEST(GrowthFit, RingsTellBothTemperaturesAndTheBeginning) {
    const std::vector firings{grown(1050, 25, true), grown(1085, 5, true)};
    const auto fit = fitGrowth(firings);
    ASSERT_TRUE(fit) << fit.error().text();
    EXPECT_EQ(fit->rings(), 6);
    const GrowthRate truth = coolGlaze();
    for (const double at : {1020.0, 1050.0, 1085.0}) {
        const auto [low, high] = fit->rate90_um_per_min(celsius(at));
        EXPECT_LT(low, truth.at_um_per_min(celsius(at))) << at;
        EXPECT_GT(high, truth.at_um_per_min(celsius(at))) << at;
        EXPECT_NEAR(fit->likely_um_per_min(celsius(at)), truth.at_um_per_min(celsius(at)), 5) << at;
    }
    EXPECT_LE(fit->rate().low_um_per_min, fit->rate().best_um_per_min);
    ASSERT_EQ(fit->began().size(), 2U);
    const CrystalGrowth growth(firings[0].curve, truth);
    const Instant began = *growth.began() + std::chrono::minutes(25);
    EXPECT_LT(fit->began()[0].earliest, began);
    EXPECT_GT(fit->began()[0].latest, began);
}

TEST(GrowthFit, RefusesNothingAndNonsense) {
    EXPECT_FALSE(fitGrowth({}));
    EXPECT_FALSE(fitGrowth(std::vector{GrownFiring{firingAt(1070), 0, {}}}));
    EXPECT_FALSE(fitGrowth(std::vector{GrownFiring{{}, 0, {{5.0, {}, 0.3}}}}));
    EXPECT_FALSE(fitGrowth(std::vector{GrownFiring{firingAt(1070), 0, {{-5.0, {}, 0.3}}}}));
}

} // namespace
} // namespace ringhold
