#include "core/cones/cone_table.h"
#include "core/plan/cone_down_estimate.h"
#include "core/watch/firing_forecast.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

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

Plan climbSoakDrop() {
    return {"soak",
            {Climb{celsius(1250), Rate::fromCelsiusPerHour(60)},
             Hold{celsius(1250), std::chrono::minutes(25), degreesC(3)},
             Drop{celsius(1080), Rate::fromCelsiusPerHour(400)}}};
}

PlanContext from1100() {
    PlanContext context;
    context.start = midnight;
    context.startTemperature = celsius(1100);
    return context;
}

/// By the plan's own course, without a cone wait: through its soak, and down its drop.
TEST(FutureOnPlan, HasTheSoakBeforeTheDropAndTheDrop) {
    const Curve read = readEvery(curveOf({{0, 1100}, {120, 1220}}), std::chrono::minutes(1));
    StepFollower follower(climbSoakDrop(), from1100());
    for (const auto& point : read)
        follower.add(point);
    const auto future = futureOnPlan(*climbShownAtEnd(read), follower);
    ASSERT_EQ(future.cases.size(), 5U);
    double weight = 0;
    for (const auto& one : future.cases) {
        weight += one.weight;
        const auto hottest = std::ranges::max_element(one.curve, {}, &CurvePoint::temperature)->temperature;
        EXPECT_NEAR(hottest.celsius(), 1250, 0.1);
        EXPECT_NEAR(one.curve.back().temperature.celsius(), 1080, 0.1) << "it does not soak for good";
    }
    EXPECT_NEAR(weight, 1, 1e-9);
    const auto& middle = future.cases[2].curve;
    EXPECT_NEAR(temperatureAt(middle, atMinute(150 + 20)).celsius(), 1250, 1) << "soaks";
    EXPECT_NEAR(temperatureAt(middle, atMinute(150 + 25 + 15)).celsius(), 1150, 8) << "falls";
}

TEST(FutureOnPlan, AConeThatTheSoakDoesNotBringDownIsNotToldDownLater) {
    Pack pack;
    pack.cones = {"8", "11"};
    auto forecast = FiringForecast::make({pack}, {{TemperatureDifference{}, degreesC(2)}});
    ASSERT_TRUE(forecast.ok());
    StepFollower follower(climbSoakDrop(), from1100());
    for (const auto& point : readEvery(curveOf({{0, 1100}, {120, 1220}}), std::chrono::minutes(1))) {
        forecast->add(point);
        follower.add(point);
    }
    const auto told = *forecast->forecast(&follower);
    EXPECT_TRUE(told.packs[0].cones[0].down.median) << "the soak brings cone 8 down";
    EXPECT_FALSE(told.packs[0].cones[1].down.median);
    EXPECT_FALSE(told.packs[0].cones[1].down.p95);
}

/// The climb of a kiln at full power: 60 °C/h dying away within two hours, towards 1262 °C.
Curve dyingClimb(double lastMinute) {
    Curve curve;
    for (double m = 0; m <= lastMinute; m += 1) {
        const double past = std::max(0.0, m - 42);
        curve.push_back({atMinute(m), celsius(1100 + std::min(m, 42.0) + 120 * -std::expm1(-past / 120))});
    }
    return curve;
}

TEST(FutureOnPlan, SaysWhereAKilnWithoutPowerEnoughLevelsOff) {
    Pack pack;
    pack.cones = {"9", "10"};
    auto forecast = FiringForecast::make({pack}, {{TemperatureDifference{}, degreesC(3)}});
    ASSERT_TRUE(forecast.ok());
    const Plan plan{
        "weak",
        {ConeWait{"10", Rate::fromCelsiusPerHour(60), celsius(1310), celsius(1315), std::chrono::hours(1)}}};
    StepFollower follower(plan, from1100());
    for (const auto& point : dyingClimb(40)) {
        forecast->add(point);
        follower.add(point);
    }
    EXPECT_FALSE(forecast->forecast(&follower)->levelsOff) << "it climbs as planned";
    const Curve all = dyingClimb(150);
    for (std::size_t i = 41; i < all.size(); ++i) {
        forecast->add(all[i]);
        follower.add(all[i]);
    }
    const auto told = *forecast->forecast(&follower);
    ASSERT_TRUE(told.levelsOff);
    EXPECT_LT(told.levelsOff->p05.celsius(), 1262);
    EXPECT_GT(told.levelsOff->p95.celsius(), 1262);
    const auto& ten = told.packs[0].cones[1];
    const auto steady = *forecast->forecastOn(futureOnPlan(*forecast->climbShown(), follower));
    ASSERT_TRUE(steady.packs[0].cones[1].down.median);
    EXPECT_TRUE(!ten.down.median || *ten.down.median > *steady.packs[0].cones[1].down.median)
        << "the climb of now would promise too much";
}

/// Late readings and struck ones come in by restart().
TEST(FiringForecastRestart, LateAndStruckReadingsGiveWhatTheyWouldHaveGivenAtFirst) {
    const Curve whole = readEvery(curveOf({{0, 1100}, {150, 1250}}), std::chrono::minutes(1));
    Pack pack;
    pack.id = PackId{1};
    pack.cones = {"8", "9"};
    const std::vector<Look> looks{{LookId{1}, PackId{1}, atMinute(140), "8", 1, false, false}};
    const auto make = [&] {
        return *FiringForecast::make({pack}, {{TemperatureDifference{}, degreesC(10)}});
    };
    auto fresh = make();
    ASSERT_TRUE(fresh.restart(whole, atMinute(0), looks).ok());
    ASSERT_TRUE(fresh.restart(whole, atMinute(-1), looks).ok()) << "all anew, with looks told";
    auto late = make(); // an hour of readings comes last, and one that was wrong is struck
    Curve holed = whole;
    std::erase_if(holed, [](const CurvePoint& p) { return p.at > atMinute(60) && p.at < atMinute(120); });
    holed[30].temperature = celsius(1290);
    ASSERT_TRUE(late.restart(holed, atMinute(0), looks).ok());
    ASSERT_TRUE(late.restart(whole, atMinute(30), looks).ok());
    const auto a = *fresh.forecast(nullptr);
    const auto b = *late.forecast(nullptr);
    for (std::size_t c = 0; c < 2; ++c) {
        EXPECT_NEAR(b.packs[0].cones[c].work / a.packs[0].cones[c].work, 1, 1e-9);
        EXPECT_EQ(b.packs[0].cones[c].down.median, a.packs[0].cones[c].down.median);
        EXPECT_EQ(b.packs[0].cones[c].down.p95, a.packs[0].cones[c].down.p95);
    }
    EXPECT_NEAR(b.packs[0].offsetMean.celsius(), a.packs[0].offsetMean.celsius(), 1e-9);
}

} // namespace
} // namespace ringhold::test
