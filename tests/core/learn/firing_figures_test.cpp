#include "core/learn/firing_figures.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

#include <random>

using namespace ringhold;
using namespace ringhold::test;

namespace {

/// Up at 150 and then 60 °C/h, a soak of 10 min, down to the hold, two rings, out.
Curve crystalFiring() {
    return readEvery(curveOf({{0, 20},
                              {400, 1020},
                              {650, 1270}, // 60 °C/h
                              {660, 1270},
                              {690, 1080},
                              {870, 1080}, // 3 h
                              {880, 1040},
                              {894, 1040},
                              {900, 1080},
                              {914, 1080},
                              {924, 1040},
                              {938, 1040},
                              {944, 1080},
                              {958, 1080},
                              {1100, 700}}),
                     std::chrono::seconds(30));
}

Plan crystalPlan() {
    return {
        "rings",
        {Climb{celsius(1020), Rate::fromCelsiusPerHour(150)},
         Hold{celsius(1020), std::chrono::minutes(0), degreesC(5)},
         ConeWait{"10", Rate::fromCelsiusPerHour(60), celsius(1275), celsius(1290), std::chrono::minutes(40)},
         Hold{celsius(1275), std::chrono::minutes(5), degreesC(5)}, Drop{celsius(1080), std::nullopt},
         Hold{celsius(1080), std::chrono::minutes(180), degreesC(4)},
         Rings{2, celsius(1040), std::chrono::minutes(14), celsius(1080), std::chrono::minutes(14)}}};
}

FiringRecord withPack(std::vector<std::string> cones) {
    FiringRecord record;
    record.packs = {{PackId{1}, {}, "middle shelf", ConeType::selfSupporting, std::move(cones), false}};
    return record;
}

Look lookAt(const std::string& cone, double minute, double hour) {
    return {{}, PackId{1}, atMinute(minute), cone, hour, false, false};
}

} // namespace

TEST(FiringFigures, PeakAndTimeNearIt) {
    const auto figures = figuresOf({}, crystalFiring());
    ASSERT_TRUE(figures.peak);
    EXPECT_DOUBLE_EQ(figures.peak->temperature.celsius(), 1270);
    // 10 min of the climb at 60 °C/h, 10 min of soak, 10 of 190 °C fallen in 30 min
    EXPECT_NEAR(inMinutes(figures.nearPeak), 10 + 10 + 30 * 10 / 190.0, 0.01);
}

TEST(FiringFigures, TheLastClimbLeavesTheSoakOut) {
    const auto climb = lastClimbOf(crystalFiring());
    ASSERT_TRUE(climb);
    EXPECT_NEAR(climb->celsiusPerHour(), 60, 0.01);
}

TEST(FiringFigures, NoClimbWithoutHundredDegrees) {
    EXPECT_FALSE(lastClimbOf({}));
    EXPECT_FALSE(lastClimbOf(curveOf({{0, 1000}, {60, 1090}})));
    EXPECT_FALSE(lastClimbOf(curveOf({{0, 1000}})));
}

TEST(FiringFigures, ThePlansGrowthHoldEndsWhereItsRingsBegin) {
    const auto hold = growthHoldOf(crystalPlan(), crystalFiring());
    ASSERT_TRUE(hold);
    EXPECT_NEAR(minuteOf(hold->start), 690, 1); // a soak at the top in the plan is not taken for it
    EXPECT_NEAR(hold->minutes(), 180, 0.01);
    EXPECT_NEAR(hold->mean.celsius(), 1080, 0.1);
}

TEST(FiringFigures, RingsAloneAreHeldAtTheirHigh) {
    Plan plan = crystalPlan();
    std::erase_if(plan.steps, [](const Step& step) { return std::holds_alternative<Hold>(step); });
    const auto hold = growthHoldOf(plan, crystalFiring());
    ASSERT_TRUE(hold);
    EXPECT_NEAR(hold->minutes(), 14, 0.01);
}

TEST(FiringFigures, WithoutAPlanTheLongestHoldAfterThePeakIsFound) {
    std::mt19937 random(3);
    const auto hold = growthHoldOf({}, noisy(crystalFiring(), 0.8, 0.5, random));
    ASSERT_TRUE(hold);
    EXPECT_NEAR(minuteOf(hold->start), 690, 2);
    EXPECT_NEAR(hold->mean.celsius(), 1080, 6);
}

TEST(FiringFigures, AKilnThatOnlyCoolsHasNoHold) {
    EXPECT_FALSE(growthHoldOf({}, curveOf({{0, 20}, {600, 1250}, {1300, 850}}))); // 34 °C/h
    EXPECT_FALSE(growthHoldOf({}, curveOf({{0, 20}, {60, 200}, {100, 30}})));
    EXPECT_FALSE(growthHoldOf({}, {}));
}

TEST(FiringFigures, TheFiringConeIsThePlansElseTheSecondOfThePack) {
    FiringRecord record = withPack({"8", "9", "10"});
    EXPECT_EQ(firingCone(record), "9");
    record.firing.plan = crystalPlan();
    EXPECT_EQ(firingCone(record), "10");
    EXPECT_EQ(firingCone(withPack({"7"})), "7");
    EXPECT_EQ(firingCone({}), "");
}

TEST(FiringFigures, ConeDownIsTheFirstLookThatCounts) {
    FiringRecord record = withPack({"8", "9", "10"});
    record.looks = {lookAt("8", 600, 6), lookAt("9", 610, 5.5), lookAt("9", 620, 6), lookAt("9", 630, 6),
                    lookAt("9", 640, 6)};
    record.looks[2].struck = true;
    EXPECT_EQ(coneDownSeen(record), atMinute(630));
    record.looks[3].cold = true;
    EXPECT_EQ(coneDownSeen(record), atMinute(640));
    record.looks.pop_back();
    EXPECT_FALSE(coneDownSeen(record));
}

TEST(FiringFigures, NothingOfARecordWithoutReadings) {
    const auto figures = figuresOf({}, {});
    EXPECT_FALSE(figures.peak || figures.lastClimb || figures.growthHold || figures.coneDown);
}
