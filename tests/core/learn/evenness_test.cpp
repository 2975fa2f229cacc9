#include "core/cones/bending.h"
#include "core/cones/cone_table.h"
#include "core/learn/evenness.h"

#include <gtest/gtest.h>

#include <cmath>

namespace ringhold {
namespace {

Curve climbTo(double top_C) {
    Curve curve;
    const Instant start{std::chrono::hours(492000)};
    for (double minute = 0; 800 + minute <= top_C; ++minute)
        curve.push_back({start + durationFromMinutes(minute), Temperature::fromCelsius(800 + minute)});
    curve.push_back({curve.back().at + std::chrono::minutes(30), Temperature::fromCelsius(1050)});
    return curve;
}

/// The hour of a cone at a place so much hotter than the curve, told in halves; integrated here minute by
/// minute.
double hourThere(const Curve& curve, const char* cone, double hotter_C) {
    const auto& law = ConeTable::builtIn().find(cone)->law;
    double work = 0;
    for (std::size_t i = 1; i < curve.size(); ++i)
        work +=
            law.gained(curve[i - 1].temperature.kelvin() + hotter_C, curve[i].temperature.kelvin() + hotter_C,
                       inSeconds(curve[i].at - curve[i - 1].at));
    return std::round(2 * BendingLaw().hourAt(std::min(work, 1.0))) / 2;
}

ColdPack packAt(const Curve& curve, const char* place, double hotter_C) {
    ColdPack pack{place, ConeType::selfSupporting, {}};
    for (const char* cone : {"8", "9", "10"})
        pack.cones.push_back({cone, hourThere(curve, cone, hotter_C)});
    return pack;
}

TEST(Evenness, IsToldInDegreesBetweenShelves) {
    const Curve curve = climbTo(1272);
    const std::vector packs{packAt(curve, "bottom", -10), packAt(curve, "top", 5),
                            packAt(curve, "middle", -2)};
    const auto evenness = evennessOf(curve, packs);
    ASSERT_TRUE(evenness) << evenness.error().text();
    EXPECT_EQ(evenness->places.front().place, "top");
    EXPECT_EQ(evenness->places.back().place, "bottom");
    ASSERT_TRUE(evenness->spread_C);
    EXPECT_NEAR(evenness->spread_C->value, 15, 3.5);
    EXPECT_GT(evenness->spread_C->sd, 1.5);
    EXPECT_LT(evenness->spread_C->sd, 7);
    double sum = 0;
    for (const auto& place : evenness->places)
        sum += place.relative_C.value;
    EXPECT_NEAR(sum, 0, 1e-9);
}

TEST(Evenness, TheProbesOwnErrorDoesNotMatter) {
    const Curve curve = climbTo(1272);
    const std::vector packs{packAt(curve, "bottom", -10), packAt(curve, "top", 4)};
    Curve wrong = curve;
    for (auto& point : wrong)
        point.temperature = point.temperature + TemperatureDifference::fromCelsius(12);
    EXPECT_NEAR(evennessOf(wrong, packs)->spread_C->value, evennessOf(curve, packs)->spread_C->value, 1);
}

TEST(Evenness, WhatConesDoNotTellIsNotTold) {
    const Curve curve = climbTo(1272);
    const std::vector<ColdPack> packs{packAt(curve, "middle", 0),
                                      {"top", ConeType::selfSupporting, {{"8", 6}, {"9", 6}}},
                                      {"floor", ConeType::selfSupporting, {}}};
    const auto evenness = evennessOf(curve, packs).value();
    EXPECT_TRUE(evenness.places[0].told);
    EXPECT_FALSE(evenness.places[1].told);
    EXPECT_FALSE(evenness.places[2].told);
    EXPECT_FALSE(evenness.spread_C);
    EXPECT_FALSE(evennessOf({}, packs));
    EXPECT_FALSE(evennessOf(curve, std::vector<ColdPack>{{"x", ConeType::selfSupporting, {{"99", 3}}}}));
    EXPECT_FALSE(evennessOf(curve, std::vector<ColdPack>{{"x", ConeType::selfSupporting, {{"9", 7}}}}));
}

} // namespace
} // namespace ringhold
