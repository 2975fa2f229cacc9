#include "core/learn/glaze_growth.h"
#include "core/learn/growth_marks.h"
#include "core/learn/known_offset.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

const Instant start{std::chrono::hours(490000)};

Instant minute(double minutes) {
    return start + durationFromMinutes(minutes);
}

Temperature celsius(double degrees) {
    return Temperature::fromCelsius(degrees);
}

constexpr OffsetPrior right{TemperatureDifference(), TemperatureDifference::fromCelsius(3), 2};

Plan plan() {
    const auto rate = Rate::fromCelsiusPerHour(60);
    return {"two rings",
            {Climb{celsius(1270), rate}, Drop{celsius(1080), {}},
             Hold{celsius(1080), std::chrono::minutes(180), TemperatureDifference::fromCelsius(5)},
             Rings{2, celsius(1040), std::chrono::minutes(14), celsius(1080), std::chrono::minutes(14)},
             Cool{celsius(700), {}}}};
}

/// Peak at 270, a hold of 3 h from 300 on with a sag of 20 °C whose bottom is at 390 and a short blip, two
/// rings that turn at 504 and 544.
Curve curve() {
    Curve curve{{minute(0), celsius(1000)},   {minute(270), celsius(1270)},   {minute(300), celsius(1080)},
                {minute(380), celsius(1080)}, {minute(390), celsius(1060)},   {minute(400), celsius(1080)},
                {minute(430), celsius(1080)}, {minute(430.5), celsius(1090)}, {minute(431), celsius(1080)},
                {minute(480), celsius(1080)}};
    for (const double at : {480.0, 520.0}) {
        curve.push_back({minute(at + 10), celsius(1040)});
        curve.push_back({minute(at + 24), celsius(1040)});
        curve.push_back({minute(at + 28), celsius(1080)});
        curve.push_back({minute(at + 40), celsius(1080)});
    }
    curve.push_back({minute(700), celsius(700)});
    return curve;
}

TEST(GrowthMarks, RingsAndSagsHaveTheirTimes) {
    const auto marks = growthMarksOf(plan(), curve(), right, celsius(1270));
    ASSERT_EQ(marks.rings.size(), 2U);
    EXPECT_NEAR(inMinutes(turnOf(marks.rings[0]) - start), 504, 1.5);
    EXPECT_NEAR(inMinutes(turnOf(marks.rings[1]) - start), 544, 1.5);
    ASSERT_EQ(marks.sags.size(), 1U) << "a blip of a minute is not asked for";
    EXPECT_EQ(marks.sags[0].at, minute(390));
    EXPECT_NEAR(marks.sags[0].depth.celsius(), -20, 2);
    EXPECT_EQ(marks.felt.front().at, minute(270));
    EXPECT_NEAR(marks.offsetSd_C, 3 + 2, 3) << "wider by the way down from the cones";
    EXPECT_GT(marks.offsetSd_C, 3);
}

TEST(GrowthMarks, TheProbesOffsetIsTakenOff) {
    const OffsetPrior high{TemperatureDifference::fromCelsius(12.7), TemperatureDifference::fromCelsius(1),
                           4};
    const auto marks = growthMarksOf(plan(), curve(), high, celsius(1270));
    EXPECT_NEAR(marks.felt.front().temperature.celsius(), 1257.3, 0.01);
    EXPECT_NEAR(temperatureAt(marks.felt, minute(340)).celsius(), 1080 - 10.8, 0.05) << "less at the hold";
    EXPECT_EQ(marks.sags.size(), 1U);
}

TEST(GrowthMarks, OnlyTheDeepestSagsAreAskedFor) {
    Curve shaken{{minute(0), celsius(1000)}, {minute(270), celsius(1270)}, {minute(300), celsius(1080)}};
    for (int i = 0; i < 9; ++i) {
        const double at = 310 + 18 * i;
        shaken.push_back({minute(at), celsius(1080)});
        shaken.push_back({minute(at + 5), celsius(1080 - 8 - i)});
        shaken.push_back({minute(at + 10), celsius(1080)});
    }
    shaken.push_back({minute(480), celsius(1080)});
    shaken.push_back({minute(600), celsius(700)});
    Plan held = plan();
    held.steps.erase(held.steps.begin() + 3);
    const auto marks = growthMarksOf(held, shaken, right, celsius(1270));
    ASSERT_EQ(marks.sags.size(), mostSagsAsked);
    EXPECT_TRUE(std::ranges::is_sorted(marks.sags, {}, &GrowthSag::at));
    EXPECT_EQ(marks.sags.front().at, minute(310 + 18 * 3 + 5));
}

TEST(GrowthMarks, NothingComesOfNothing) {
    const auto marks = growthMarksOf(plan(), {}, right, celsius(1270));
    EXPECT_TRUE(marks.felt.empty() && marks.rings.empty() && marks.sags.empty());
    EXPECT_FALSE(measuredCrystal(marks, {}, {}));
    EXPECT_FALSE(measuredCrystal(marks, 0.0, {}));
}

TEST(GrowthMarks, AMeasuredPieceGivesTheFitItsRadii) {
    const auto marks = growthMarksOf(plan(), curve(), right, celsius(1270));
    const std::vector<RingRadius> radii{
        {PieceId{1}, 0, 6, 0.4}, {PieceId{1}, 1, 8, 0}, {PieceId{1}, 7, 9, 0.1}};
    const auto crystal = measuredCrystal(marks, 24.0, radii);
    ASSERT_TRUE(crystal);
    EXPECT_EQ(crystal->radius_mm, 12);
    ASSERT_EQ(crystal->rings.size(), 2U) << "the firing drew no eighth ring";
    EXPECT_EQ(crystal->rings[1].at, turnOf(marks.rings[1]));
    EXPECT_DOUBLE_EQ(crystal->sd_mm, std::sqrt((0.16 + 0.09) / 2));
}

TEST(GrowthMarks, AnAnswerIsWorthTheDepthOfItsSag) {
    const auto marks = growthMarksOf(plan(), curve(), right, celsius(1270));
    SagSeen answer{PieceId{1}, minute(390), SagSight::yes, 8.0};
    EXPECT_NEAR(sagDepth_C(marks, answer).value(), 20, 2);
    answer.seen = SagSight::unsure;
    EXPECT_FALSE(sagDepth_C(marks, answer));
    answer = {PieceId{1}, minute(470), SagSight::no, {}};
    EXPECT_FALSE(sagDepth_C(marks, answer)) << "nothing happened then";
}

/// What the published rate would have grown, so many times over.
std::vector<GrownFiring> grown(int firings, int pieces) {
    const auto marks = growthMarksOf(plan(), curve(), right, celsius(1270));
    const CrystalGrowth growth(marks.felt, publishedGrowthRate());
    std::vector<RingRadius> radii;
    for (int i = 0; i < 2; ++i)
        radii.push_back({PieceId{1}, i, growth.radiusAt(turnOf(marks.rings[std::size_t(i)])).likely_mm, 0.3});
    std::vector<GrownFiring> all;
    for (int i = 0; i < firings; ++i) {
        auto& firing = all.emplace_back(GrownFiring{marks.felt, marks.offsetSd_C, {}});
        for (int piece = 0; piece < pieces; ++piece)
            firing.crystals.push_back(*measuredCrystal(marks, 2 * growth.radius().likely_mm, radii));
    }
    return all;
}

TEST(GlazeGrowth, FewPiecesLeaveThePublishedRange) {
    const auto none = glazeGrowthOf({});
    EXPECT_FALSE(none.fit);
    EXPECT_EQ(none.rate().basis, GrowthBasis::published);
    const auto one = glazeGrowthOf(grown(1, 3));
    EXPECT_TRUE(one.fit);
    EXPECT_FALSE(one.told) << "one firing may have been odd";
    EXPECT_EQ(one.rate().basis, GrowthBasis::published);
}

TEST(GlazeGrowth, PiecesOfTwoFiringsStandInForIt) {
    auto firings = grown(2, 2);
    firings.push_back({});
    const auto growth = glazeGrowthOf(firings);
    EXPECT_EQ(growth.pieces, 4);
    EXPECT_EQ(growth.firings, 2);
    EXPECT_EQ(growth.rings, 8);
    ASSERT_TRUE(growth.told);
    const auto rate = growth.rate();
    EXPECT_EQ(rate.basis, GrowthBasis::measured);
    EXPECT_EQ(rate.pieces, 4);
    EXPECT_GT(publishedGrowthRate().at_um_per_min(celsius(1080)),
              growth.fit->rate90_um_per_min(celsius(1080)).low);
    EXPECT_LT(publishedGrowthRate().at_um_per_min(celsius(1080)),
              growth.fit->rate90_um_per_min(celsius(1080)).high);
}

TEST(KnownOffset, ItsOwnConesComeBeforeOtherFirings) {
    const Probe probe{ProbeId{1}, KilnId{1}, "T1", ThermocoupleType::S, "top", {}, {}};
    const auto told = [](std::int64_t firing, std::int64_t by, double mean) {
        return FiledOffset{FiringId{firing},
                           KilnId{1},
                           ProbeId{by},
                           "middle",
                           minute(double(firing)),
                           TemperatureDifference::fromCelsius(mean),
                           TemperatureDifference::fromCelsius(2)};
    };
    const std::vector filed{told(1, 1, 6), told(2, 2, 40), told(3, 1, 8)};
    EXPECT_DOUBLE_EQ(knownOffset(filed, FiringId{3}, probe, celsius(1270)).prior.mean.celsius(), 8);
    const auto other = knownOffset(filed, FiringId{9}, probe, celsius(1270));
    EXPECT_NEAR(other.prior.mean.celsius(), 7, 1);
    EXPECT_EQ(other.prior.firings, 2);
    EXPECT_EQ(other.place, "middle");
    EXPECT_EQ(knownOffset({}, FiringId{9}, probe, celsius(1270)).prior.firings, 0);
}

} // namespace
} // namespace ringhold
