#include "core/cones/advice.h"
#include "core/cones/bending.h"

#include <gtest/gtest.h>

#include <cmath>

namespace ringhold {
namespace {

const Instant start{std::chrono::hours(492000)};
const Rate dropRate = Rate::fromCelsiusPerHour(200);

Temperature celsius(double degrees) {
    return Temperature::fromCelsius(degrees);
}

Instant minute(double minutes) {
    return start + durationFromMinutes(minutes);
}

double minutesOf(const std::optional<Instant>& at) {
    return at ? inMinutes(*at - start) : NAN;
}

/// A degree a minute from 900 °C on; minute m reads 900 + m.
ConeForecaster climbedTo(double top_C, double offsetSd_C, std::vector<std::string> cones = {"8", "9", "10"}) {
    const OffsetPrior prior{TemperatureDifference{}, TemperatureDifference::fromCelsius(offsetSd_C)};
    auto forecaster = ConeForecaster::make({{ConeType::selfSupporting, std::move(cones), prior}}).value();
    for (double m = 0; m <= top_C - 900; m += 0.5)
        forecaster.add({minute(m), celsius(900 + m)});
    return forecaster;
}

const HeatWorkLaw& lawOf(const char* cone) {
    return ConeTable::builtIn().find(cone)->law;
}

double endOf(const char* cone) {
    return lawOf(cone).endPoint(Rate::fromCelsiusPerHour(60)).celsius();
}

/// Own study: a climb at 60 °C/h stopped short of the end point, and the hold that brings the cone down.
struct Short {
    double short_C;
    double hold_min;
    double within_min;
};

class HeldShort : public testing::TestWithParam<Short> {};

TEST_P(HeldShort, BringsTheConeDownWhenTheStudySays) {
    const double top_C = endOf("9") - GetParam().short_C;
    const auto forecaster = climbedTo(top_C, 0.5);
    const auto held = downWhenHeldAt(forecaster, {0, "9"}, celsius(top_C));
    ASSERT_TRUE(held.ok());
    EXPECT_NEAR(minutesOf(held->median) - (top_C - 900), GetParam().hold_min, GetParam().within_min);
    EXPECT_LT(*held->p05, *held->median);
    EXPECT_LT(*held->median, *held->p95);
}

INSTANTIATE_TEST_SUITE_P(Degrees, HeldShort,
                         testing::Values(Short{10, 12, 1.5}, Short{20, 30, 3}, Short{30, 57.5, 5}));

TEST(Advice, AHigherHoldIsSoonerAndALowerOneLater) {
    const double top_C = endOf("9") - 20;
    const auto forecaster = climbedTo(top_C, 3);
    double before = 0;
    for (const double more_C : {10.0, 5.0, 0.0, -5.0}) {
        const auto held = downWhenHeldAt(forecaster, {0, "9"}, celsius(top_C + more_C));
        EXPECT_GT(minutesOf(held->median), before);
        before = minutesOf(held->median);
    }
}

TEST(Advice, TheRateToBeDownByMeetsTheTimeOnItsCurve) {
    const double now_C = endOf("9") - 60;
    const auto forecaster = climbedTo(now_C, 4);
    int asked = 0;
    for (const double minutes : {40.0, 60.0, 90.0}) {
        const Instant by = minute(now_C - 900 + minutes);
        const auto rate = rateToBeDownBy(forecaster, {0, "9"}, by);
        ASSERT_TRUE(rate.ok());
        ASSERT_TRUE(rate->p05 && rate->median && rate->p95);
        EXPECT_LT(*rate->p05, *rate->median);
        EXPECT_LT(*rate->median, *rate->p95);
        const auto future =
            climbOn(by - durationFromMinutes(minutes), celsius(now_C), *rate->p95, {}, std::nullopt);
        // as sure as the p95 says
        EXPECT_NEAR(minutesOf(forecaster.forecast(future)->packs[0].cones[1].down.p95), minutesOf(by), 0.5);
        ++asked;
    }
    EXPECT_EQ(asked, 3);
}

TEST(Advice, NoRateIsEnoughForWhatIsTooSoonAndNoneIsNeededWhenHoldingDoes) {
    const double now_C = endOf("9") - 60;
    const auto forecaster = climbedTo(now_C, 2);
    EXPECT_FALSE(rateToBeDownBy(forecaster, {0, "9"}, minute(now_C - 900 + 2))->median);
    EXPECT_EQ(rateToBeDownBy(forecaster, {0, "9"}, minute(now_C - 900 + 1400))->median, Rate{});
}

// Own study: stopping 10 °C short of cone 9 gives W = 0.68, and cooling at 200 °C/h adds 0.21.
TEST(Advice, ADropLeavesTheConeFurther) {
    const auto forecaster = climbedTo(endOf("9") - 10, 0.5);
    const auto hours = hoursAfterDrop(forecaster, 0, dropRate);
    ASSERT_TRUE(hours.ok());
    ASSERT_EQ(hours->size(), 3U);
    const BendingLaw bending;
    EXPECT_NEAR((*hours)[1].atEnd.median, bending.hourAt(0.68), 0.25);
    EXPECT_GT((*hours)[1].cooled.median, bending.hourAt(0.89 - 0.04));
    EXPECT_LT((*hours)[1].cooled.median, bending.hourAt(0.89 + 0.04));
    for (const auto& cone : *hours) {
        EXPECT_LE(cone.atEnd.p05, cone.cooled.p05);
        EXPECT_LE(cone.downAtEnd, cone.downCooled);
    }
    const auto forecast = *forecaster.forecast();
    EXPECT_NEAR((*hours)[1].atEnd.median, forecast.packs[0].cones[1].hourNow.median, 1e-9);
}

TEST(Advice, ADropMayBeEarlierByWhatCoolingAdds) {
    const auto forecaster = climbedTo(endOf("9") - 30, 1);
    const auto shown = *forecaster.climbShown();
    const auto future = climbOn(shown.at, shown.temperature, shown.rate, {}, std::nullopt);
    const auto drop = earliestDrop(forecaster, {0, "9"}, future, dropRate);
    const auto down = forecaster.forecast(future)->packs[0].cones[1].down;
    ASSERT_TRUE(drop.ok());
    const double earlier_min = minutesOf(down.median) - minutesOf(drop->median);
    // W is e-fold in 25 to 28 °C, and cooling at 200 °C/h adds 0.3 of what was reached: 26 ln 1.3 = 7 °C
    EXPECT_NEAR(earlier_min, 7, 1.5);
    // dropped there, cooled at that rate, the cone just comes down
    const double top_C = minutesOf(drop->median) + 900;
    const auto& law = lawOf("9");
    const double climbed = law.gained(1173.15, top_C + 273.15, (top_C - 900) * 60);
    EXPECT_NEAR(climbed + law.gained(top_C + 273.15, 1173.15, (top_C - 900) * 18), 1, 0.04);
    EXPECT_GE(minutesOf(drop->p05), minutesOf(shown.at));
}

TEST(Advice, ADropThatIsOverdueIsNow) {
    const auto forecaster = climbedTo(endOf("9") - 2, 0.5);
    const auto shown = *forecaster.climbShown();
    const auto drop = earliestDrop(forecaster, {0, "9"}, holdAt(shown, shown.temperature), dropRate);
    EXPECT_EQ(drop->median, shown.at);
}

TEST(Advice, MoreTimeAtTheTopBendsTheGuardCone) {
    const double top_C = endOf("9");
    const auto forecaster = climbedTo(top_C, 2);
    double before = -1;
    for (const int minutes : {0, 10, 20, 40}) {
        const auto hours =
            hoursAfterSoak(forecaster, {0, "10"}, celsius(top_C), std::chrono::minutes(minutes), dropRate);
        ASSERT_TRUE(hours.ok());
        EXPECT_GT(hours->atEnd.median, before);
        EXPECT_GE(hours->cooled.median, hours->atEnd.median);
        EXPECT_LE(hours->atEnd.p05, hours->atEnd.median);
        EXPECT_LE(hours->atEnd.median, hours->atEnd.p95);
        before = hours->atEnd.median;
        if (minutes == 0) {
            EXPECT_NEAR(before, forecaster.forecast()->packs[0].cones[2].hourNow.median, 0.1);
        }
    }
    EXPECT_GT(before, 4.5); // cones 9 and 10 lie about 45 min of holding apart: own study
}

TEST(Advice, IsRefusedWithoutConeOrReadings) {
    const auto forecaster = climbedTo(1200, 5);
    EXPECT_FALSE(downWhenHeldAt(forecaster, {0, "7"}, celsius(1250)).ok());
    EXPECT_FALSE(downWhenHeldAt(forecaster, {1, "9"}, celsius(1250)).ok());
    EXPECT_FALSE(hoursAfterDrop(forecaster, 1, dropRate).ok());
    EXPECT_FALSE(rateToBeDownBy(climbedTo(900, 5), {0, "9"}, minute(60)).ok());
}

} // namespace
} // namespace ringhold
