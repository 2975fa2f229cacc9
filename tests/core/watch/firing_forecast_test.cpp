#include "core/cones/cone_table.h"
#include "core/plan/cone_down_estimate.h"
#include "core/watch/firing_forecast.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

/// 180 °C/h to 1150 °C, then 60 °C/h until cone 9 is down.
Plan twoClimbs() {
    return {
        "two climbs",
        {Climb{celsius(1150), Rate::fromCelsiusPerHour(180)},
         ConeWait{"9", Rate::fromCelsiusPerHour(60), celsius(1290), celsius(1300), std::chrono::hours(1)}}};
}

constexpr double corner_min = 60; ///< when the second climb begins

Curve firing() {
    return readEvery(curveOf({{0, 970}, {corner_min, 1150}, {corner_min + 140, 1290}}),
                     std::chrono::seconds(30));
}

/// Minutes after the kiln went from the fast climb to the slow one.
class AfterTheCorner : public testing::TestWithParam<double> {};

/// The fast climb of before must not be taken for the present one.
TEST_P(AfterTheCorner, TheForecastKnowsTheSlowClimb) {
    const auto truth = coneDownByHeatWork(ConeTable::builtIn())(firing(), "9");
    ASSERT_TRUE(truth);
    Pack pack;
    pack.cones = {"9"};
    auto forecast = FiringForecast::make({pack}, {{TemperatureDifference{}, degreesC(1)}});
    ASSERT_TRUE(forecast.ok());
    PlanContext context;
    context.start = midnight;
    context.startTemperature = celsius(970);
    StepFollower follower(twoClimbs(), context);
    for (const auto& point : firing())
        if (minuteOf(point.at) <= corner_min + GetParam()) {
            forecast->add(point);
            follower.add(point);
        }
    const auto told = forecast->forecast(&follower);
    ASSERT_TRUE(told.ok());
    const auto& down = told->packs[0].cones[0].down;
    ASSERT_TRUE(down.p05 && down.median && down.p95);
    EXPECT_LT(*down.p05, *truth);
    EXPECT_GT(*down.p95, *truth);
    EXPECT_NEAR(minuteOf(*down.median), minuteOf(*truth), 6); // of more than an hour ahead
}

INSTANTIATE_TEST_SUITE_P(Minutes, AfterTheCorner, testing::Values(-5, 2, 5, 9, 12, 19, 40));

Plan waitThenDrop(std::optional<Rate> drop) {
    return {"drop",
            {ConeWait{"9", Rate::fromCelsiusPerHour(60), celsius(1290), celsius(1300), std::chrono::hours(1)},
             Drop{celsius(1080), drop}}};
}

TEST(NextDropRate, IsThePlansOrTheKilnsOwnAtFirst) {
    PlanContext context;
    context.start = midnight;
    context.startTemperature = celsius(1200);
    const auto rateOf = [&](const Plan& plan) {
        StepFollower follower(plan, context);
        follower.add({midnight, celsius(1200)});
        return nextDropRate(follower);
    };
    EXPECT_EQ(rateOf(waitThenDrop(Rate::fromCelsiusPerHour(250))), Rate::fromCelsiusPerHour(250));
    const auto own = rateOf(waitThenDrop(std::nullopt));
    ASSERT_TRUE(own);
    EXPECT_GT(own->celsiusPerHour(), 200);
    EXPECT_LT(own->celsiusPerHour(), 3000);
    EXPECT_FALSE(rateOf(twoClimbs()));
}

} // namespace
} // namespace ringhold::test
