#include "core/watch/alarm_words.h"
#include "core/watch/hold_watch.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace test;
using namespace std::chrono_literals;

const HoldBand band{celsius(1090), degreesC(6)};

HoldWatch watching(const Curve& curve) {
    HoldWatch watch(band, midnight);
    for (const auto& point : curve)
        watch.add(point);
    return watch;
}

/// Two hours at 1090 °C read every 10 s with a little noise, then `off` °C more at once.
Curve stepAfterTwoHours(double off_C, double minutes) {
    std::mt19937 random(11);
    return noisy(
        readEvery(curveOf({{0, 1090}, {120, 1090}, {120.01, 1090 + off_C}, {120 + minutes, 1090 + off_C}}),
                  10s),
        0.3, 0.5, random);
}

TEST(HoldWatch, SaysNothingOfASteadyHold) {
    const auto watch = watching(stepAfterTwoHours(0, 120));
    EXPECT_TRUE(watch.settled());
    EXPECT_FALSE(watch.drift());
    EXPECT_FALSE(watch.breach(atMinute(240)));
}

struct Step {
    double off_C;
    HoldSide side;
};

class FlagsAStep : public testing::TestWithParam<Step> {};

TEST_P(FlagsAStep, WithinTheBand) {
    const auto watch = watching(stepAfterTwoHours(GetParam().off_C, 12));
    const auto drift = watch.drift();
    ASSERT_TRUE(drift);
    EXPECT_EQ(drift->side, GetParam().side);
    EXPECT_NEAR(drift->off.celsius(), GetParam().off_C, 1);
    EXPECT_NEAR(minuteOf(drift->since), 120, 3);
    EXPECT_LT(minuteOf(drift->flagged), 129);
    EXPECT_FALSE(watch.breach(atMinute(132)));
}

INSTANTIATE_TEST_SUITE_P(BothSides, FlagsAStep,
                         testing::Values(Step{3, HoldSide::hot}, Step{-3, HoldSide::cold},
                                         Step{4, HoldSide::hot}));

TEST(HoldWatch, TakesTheFlagBackOnceTheLevelIs) {
    auto curve = stepAfterTwoHours(3, 20);
    for (double minute = 141; minute < 180; minute += 0.25)
        curve.push_back({atMinute(minute), celsius(1090)});
    EXPECT_FALSE(watching(curve).drift());
}

TEST(HoldWatch, TellsWhenADriftLeavesTheBand) {
    std::mt19937 random(3);
    // -6 °C/h from the second hour on: at minute 160 it is 4 °C below and leaves in 20 min
    const auto watch =
        watching(noisy(readEvery(curveOf({{0, 1090}, {120, 1090}, {160, 1086}}), 10s), 0.2, 0.5, random));
    const auto drift = watch.drift();
    ASSERT_TRUE(drift);
    EXPECT_EQ(drift->side, HoldSide::cold);
    EXPECT_NEAR(drift->rate.celsiusPerHour(), -6, 0.8);
    EXPECT_LT(drift->rate90.low, drift->rate90.high);
    ASSERT_TRUE(drift->leaves && drift->leaves->likely && drift->leaves->earliest && drift->leaves->latest);
    EXPECT_NEAR(inMinutes(*drift->leaves->likely), 20, 4);
    EXPECT_LT(*drift->leaves->earliest, *drift->leaves->likely);
    EXPECT_GT(*drift->leaves->latest, *drift->leaves->likely);
}

TEST(HoldWatch, CountsABreachAfterTheConfirmTime) {
    auto curve = stepAfterTwoHours(-12, 0.8);
    auto watch = watching(curve);
    auto breach = watch.breach(atMinute(120.8));
    ASSERT_TRUE(breach);
    EXPECT_FALSE(breach->confirmed);
    EXPECT_EQ(breach->side, HoldSide::cold);
    watch = watching(stepAfterTwoHours(-12, 3));
    breach = watch.breach(atMinute(123));
    ASSERT_TRUE(breach && breach->confirmed);
    EXPECT_NEAR(minuteOf(breach->since), 120.5, 0.5);
    EXPECT_NEAR(breach->farthest.celsius(), 1078, 1);
    // the clock alone confirms it, when no reading comes
    EXPECT_TRUE(watching(curve).breach(atMinute(122))->confirmed);
}

TEST(HoldWatch, IsNotTakenInByASpike) {
    auto curve = stepAfterTwoHours(0, 60);
    curve[800].temperature = celsius(1400);
    HoldWatch watch(band, midnight);
    int breaches = 0;
    for (const auto& point : curve) {
        watch.add(point);
        breaches += watch.breach(point.at).has_value();
    }
    EXPECT_EQ(breaches, 0);
    EXPECT_FALSE(watch.drift());
}

TEST(HoldWatch, LeavesTheArrivalToSettle) {
    // 5 °C over at the arrival, gone within a quarter of an hour
    const auto watch = watching(readEvery(curveOf({{0, 1087}, {2, 1095}, {14, 1090}, {90, 1090}}), 10s));
    EXPECT_TRUE(watch.settled());
    EXPECT_FALSE(watch.drift());
}

TEST(HoldWatch, FlagsAKilnThatSitsOffTheMiddle) {
    EXPECT_TRUE(watching(readEvery(curveOf({{0, 1094}, {60, 1094}}), 10s)).drift());
}

TEST(HoldWatch, CountsATypedReadingForTheTimeItStands) {
    const auto typed = [](std::vector<double> readings) {
        Curve curve;
        for (std::size_t i = 0; i < readings.size(); ++i)
            curve.push_back({atMinute(15.0 * static_cast<double>(i)), celsius(readings[i])});
        return watching(curve);
    };
    EXPECT_FALSE(typed({1090, 1091, 1090, 1089, 1090, 1091, 1090}).drift());
    const auto off = typed({1090, 1090, 1090, 1090, 1086, 1086, 1085, 1085, 1085});
    ASSERT_TRUE(off.drift());
    EXPECT_EQ(off.drift()->side, HoldSide::cold);
    EXPECT_TRUE(typed({1090, 1090, 1080}).breach(atMinute(32))->confirmed);
}

TEST(HoldWatch, TellsTheTimeLeftInWords) {
    EXPECT_EQ(leavesWords({4min, 6min, 11min}), "in about 6 min (4 to 11)");
    EXPECT_EQ(leavesWords({40s, 6min, {}}), "in about 6 min (not before 1 min)");
    EXPECT_EQ(leavesWords({50min, 130min, 5h}), "in about 2 h 10 (50 min to 5 h 00)");
}

struct Noise {
    double sd_C;
    double memory;
    Duration spacing;
};

class LearnsTheNoise : public testing::TestWithParam<Noise> {};

TEST_P(LearnsTheNoise, OfTheReadings) {
    const auto [sd_C, memory, spacing] = GetParam();
    std::mt19937 random(5);
    HoldNoise noise(1);
    const Curve flat = curveOf({{0, 1090}, {inMinutes(spacing) * 4000, 1090}});
    for (const auto& point : noisy(readEvery(flat, spacing), sd_C, memory, random))
        noise.add(point);
    EXPECT_NEAR(noise.sd_C() / sd_C, 1, 0.12);
    EXPECT_NEAR(noise.correlation(), memory, 0.06);
    // the variance of a mean of many AR(1) values: v (1 + phi) / (1 - phi) / n
    const double intensity = sd_C * sd_C * (1 + memory) / (1 - memory) * inMinutes(spacing);
    EXPECT_NEAR(noise.intensity_C2min() / intensity, 1, 0.35);
}

INSTANTIATE_TEST_SUITE_P(Several, LearnsTheNoise,
                         testing::Values(Noise{1, .8, 10s}, Noise{1, .8, 60s}, Noise{1, .3, 10s},
                                         Noise{2, .5, 30s}, Noise{1, .9, 5s}));

} // namespace
} // namespace ringhold
