#include "core/plan/cone_down_estimate.h"
#include "core/plan/plan_examples.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace ringhold {
namespace {

using std::chrono::minutes;

Temperature C(double celsius) {
    return Temperature::fromCelsius(celsius);
}

PlanContext withCones(TemperatureDifference probeOffset) {
    PlanContext context;
    context.start = *parseIso8601("2026-03-01T06:00:00Z");
    context.coneDown = coneDownByHeatWork(ConeTable::builtIn(), ConeType::selfSupporting, probeOffset);
    return context;
}

/// Cone 9 waited for at a rate, with a set point that is never reached.
Temperature coneNineEndsAt(double rate_C_per_h, double probeOffset_C) {
    const Plan plan{"x",
                    {ConeWait{"9", Rate::fromCelsiusPerHour(rate_C_per_h), C(1380), C(1390), minutes(5)}}};
    const auto planned = planCurve(plan, withCones(TemperatureDifference::fromCelsius(probeOffset_C)));
    EXPECT_EQ(planned.steps[0].coneWaitEnd, ConeWaitEnd::estimated);
    return planned.curve.back().temperature;
}

// Cone 9 in a steady climb ends at 1224.8 / 1258.2 / 1281.1 °C at 15 / 60 / 150 °C/h: worked out apart from
// this program, by exact integration of the fitted law.
TEST(ConeDownByHeatWork, EndsAClimbWhereTheLawDoes) {
    EXPECT_NEAR(coneNineEndsAt(15, 0).celsius(), 1224.8, 0.3);
    EXPECT_NEAR(coneNineEndsAt(60, 0).celsius(), 1258.2, 0.3);
    EXPECT_NEAR(coneNineEndsAt(150, 0).celsius(), 1281.1, 0.3);
}

TEST(ConeDownByHeatWork, TakesTheProbesOffsetOff) {
    EXPECT_NEAR((coneNineEndsAt(60, 12) - coneNineEndsAt(60, 0)).celsius(), 12, 0.05);
    EXPECT_NEAR((coneNineEndsAt(60, -7) - coneNineEndsAt(60, 0)).celsius(), -7, 0.05);
}

// Climb stopped 10 °C below the 60 °C/h end point: about 12 min more; 20 °C: about 30 min (worked out apart).
TEST(ConeDownByHeatWork, SoaksAsLongAsTheLawAsks) {
    for (const auto& [below_C, soak_min] : {std::pair(10.0, 12.0), std::pair(20.0, 30.0)}) {
        const ConeWait wait{"9", Rate::fromCelsiusPerHour(60), C(1258.2 - below_C), C(1280), minutes(60)};
        const auto planned = planCurve({"x", {wait}}, withCones({}));
        ASSERT_EQ(planned.legs.size(), 2u);
        EXPECT_NEAR(inMinutes(planned.legs[1].end - planned.legs[1].start), soak_min, 3);
    }
}

TEST(ConeDownByHeatWork, SeesAConeThatStillStands) {
    const ConeWait wait{"9", Rate::fromCelsiusPerHour(60), C(1180), C(1280), minutes(30)};
    const auto planned = planCurve({"x", {wait}}, withCones({}));
    EXPECT_EQ(planned.steps[0].coneWaitEnd, ConeWaitEnd::stillStanding);
}

TEST(ConeDownByHeatWork, FindsTheExamplesConesDownInTime) {
    std::size_t estimated = 0;
    for (const auto& example : examplePlans()) {
        EXPECT_TRUE(checkCones(example.plan, ConeTable::builtIn()).ok());
        const auto planned = planCurve(example.plan, withCones({}));
        EXPECT_LE(planned.length(), std::chrono::hours(18)) << example.plan.name;
        estimated += static_cast<std::size_t>(
            std::ranges::count(planned.steps, ConeWaitEnd::estimated, &PlannedStep::coneWaitEnd));
    }
    EXPECT_EQ(estimated, examplePlans().size());
}

TEST(CheckCones, NamesTheStepOfAnUnknownCone) {
    Plan plan = examplePlans()[0].plan;
    std::get<ConeWait>(plan.steps[2]).cone = "99";
    const Status status = checkCones(plan, ConeTable::builtIn());
    ASSERT_FALSE(status.ok());
    EXPECT_EQ(status.error().kind, ErrorKind::badInput);
    EXPECT_EQ(status.error().what, "step 3: there is no self-supporting cone 99");
}

} // namespace
} // namespace ringhold
