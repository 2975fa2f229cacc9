#include "core/plan/plan_check.h"
#include "core/plan/planned_curve.h"

#include <gtest/gtest.h>

#include <random>

namespace ringhold {
namespace {

using std::chrono::hours;
using std::chrono::milliseconds;
using std::chrono::minutes;
using std::chrono::seconds;

const Instant morning = *parseIso8601("2026-03-01T06:00:00Z");

Temperature C(double celsius) {
    return Temperature::fromCelsius(celsius);
}
Rate perHour(double rate) {
    return Rate::fromCelsiusPerHour(rate);
}
const TemperatureDifference six = TemperatureDifference::fromCelsius(6);

PlanContext inTheMorning(double celsius = 20) {
    PlanContext context;
    context.start = morning;
    context.startTemperature = C(celsius);
    return context;
}

struct Timed {
    const char* name;
    std::vector<Step> steps;
    Duration length; ///< reckoned by hand
    double end_C;
};

class ExactLength : public testing::TestWithParam<Timed> {};

TEST_P(ExactLength, IsAsReckonedByHand) {
    const auto planned = planCurve({"x", GetParam().steps}, inTheMorning());
    EXPECT_EQ(planned.length(), GetParam().length);
    EXPECT_EQ(planned.curve.back().temperature, C(GetParam().end_C));
    EXPECT_EQ(planned.steps.size(), GetParam().steps.size());
}

const ConeWait nine{"9", perHour(60), C(1260), C(1285), minutes(40)};

INSTANTIATE_TEST_SUITE_P(
    Plan, ExactLength,
    testing::Values(
        Timed{"climb", {Climb{C(620), perHour(150)}}, hours(4), 620},
        Timed{"twoClimbs", {Climb{C(620), perHour(150)}, Climb{C(1120), perHour(200)}}, minutes(390), 1120},
        Timed{"hold", {Climb{C(620), perHour(150)}, Hold{C(620), minutes(17), six}}, minutes(257), 620},
        Timed{"fall", {Climb{C(620), perHour(150)}, Drop{C(520), perHour(80)}}, minutes(315), 520},
        Timed{"cool", {Climb{C(620), perHour(150)}, Cool{C(20), perHour(100)}}, hours(10), 20},
        // 1,000,000 °C s/h over 7 °C/h: 514,285.714 s
        Timed{"oddRate", {Climb{C(1020), perHour(7)}}, milliseconds(514'285'714), 1020},
        Timed{"fahrenheit", // 68 to 1148 °F at 270 °F/h
              {Climb{Temperature::fromFahrenheit(1148), Rate::fromFahrenheitPerHour(270)}},
              hours(4),
              620},
        Timed{"assumedConeWait", {Climb{C(1160), perHour(285)}, nine}, minutes(240 + 100 + 20), 1260},
        Timed{"nothingToClimb", {Climb{C(10), perHour(100)}}, minutes(0), 20},
        Timed{"nothingToDrop", {Climb{C(620), perHour(150)}, Drop{C(700), {}}}, hours(4), 620}),
    [](const auto& tested) { return tested.param.name; });

TEST(PlannedCurve, HasItsCornersExactly) {
    const Plan plan{
        "x", {Climb{C(620), perHour(150)}, Hold{C(620), minutes(30), six}, Drop{C(500), perHour(120)}}};
    const auto planned = planCurve(plan, inTheMorning());
    ASSERT_EQ(planned.curve.size(), 4u);
    EXPECT_EQ(planned.start(), morning);
    EXPECT_EQ(planned.temperatureAt(morning), C(20));
    EXPECT_EQ(planned.temperatureAt(morning + hours(2)), C(320));
    EXPECT_EQ(planned.temperatureAt(morning + hours(4)), C(620));
    EXPECT_EQ(planned.temperatureAt(morning + minutes(255)), C(620));
    EXPECT_EQ(planned.temperatureAt(morning + minutes(300)), C(560));
    EXPECT_EQ(planned.temperatureAt(morning + hours(99)), C(500));

    ASSERT_EQ(planned.steps.size(), 3u);
    const auto& hold = planned.steps[1];
    EXPECT_EQ(hold.step, 1u);
    EXPECT_EQ(hold.start, morning + hours(4));
    EXPECT_EQ(hold.end, morning + minutes(270));
    EXPECT_EQ(hold.band, six);
    EXPECT_FALSE(planned.steps[0].band);
    EXPECT_EQ(planned.legs[1].band, six);
    EXPECT_FALSE(planned.restsOnAssumption());
}

TEST(PlannedCurve, KnowsTheLegUnderWay) {
    const Plan plan{"x", {Climb{C(620), perHour(150)}, Hold{C(620), minutes(30), six}}};
    const auto planned = planCurve(plan, inTheMorning());
    EXPECT_EQ(planned.legAt(morning - milliseconds(1)), nullptr);
    EXPECT_EQ(planned.legAt(morning)->step, 0u);
    EXPECT_EQ(planned.legAt(morning + hours(4) - milliseconds(1))->motion, Motion::up);
    EXPECT_EQ(planned.legAt(morning + hours(4))->motion, Motion::level);
    EXPECT_EQ(planned.legAt(planned.end()), nullptr);
}

struct Wait {
    const char* name;
    std::optional<Duration> down; ///< from the start of the wait, as the estimate says
    Duration length;
    double end_C;
    ConeWaitEnd how;
};

class ConeWaiting : public testing::TestWithParam<Wait> {};

// From 1160 at 60 °C/h to 1260: 100 min; the longest soak is 40 min.
TEST_P(ConeWaiting, EndsWithTheCone) {
    auto context = inTheMorning(1160);
    int asked = 0;
    context.coneDown = [&](const Curve& whole, const std::string& cone) -> std::optional<Instant> {
        ++asked;
        EXPECT_EQ(cone, "9");
        EXPECT_EQ(whole.front().at, morning);
        EXPECT_EQ(whole.back().at, morning + minutes(140));
        EXPECT_EQ(temperatureAt(whole, morning + minutes(50)), C(1210));
        EXPECT_EQ(temperatureAt(whole, morning + minutes(120)), C(1260));
        return GetParam().down ? std::optional(morning + *GetParam().down) : std::nullopt;
    };
    const auto planned = planCurve({"x", {nine, Climb{C(1300), perHour(60)}}}, context);
    EXPECT_EQ(asked, 1);
    ASSERT_EQ(planned.steps.size(), 2u);
    const auto& wait = planned.steps[0];
    EXPECT_EQ(wait.end - wait.start, GetParam().length);
    EXPECT_NEAR(wait.to.celsius(), GetParam().end_C, 1e-9);
    EXPECT_EQ(wait.coneWaitEnd, GetParam().how);
    EXPECT_EQ(planned.steps[1].start, wait.end);
    EXPECT_FALSE(planned.restsOnAssumption());
}

INSTANTIATE_TEST_SUITE_P(
    Cone, ConeWaiting,
    testing::Values(Wait{"inTheSoak", minutes(125), minutes(125), 1260, ConeWaitEnd::estimated},
                    Wait{"atTheSetPoint", minutes(100), minutes(100), 1260, ConeWaitEnd::estimated},
                    Wait{"inTheClimb", minutes(75), minutes(75), 1235, ConeWaitEnd::estimated},
                    Wait{"atTheLast", minutes(140), minutes(140), 1260, ConeWaitEnd::estimated},
                    Wait{"tooLate", minutes(141), minutes(140), 1260, ConeWaitEnd::stillStanding},
                    Wait{"never", std::nullopt, minutes(140), 1260, ConeWaitEnd::stillStanding},
                    Wait{"downAlready", minutes(-30), minutes(0), 1160, ConeWaitEnd::estimated}),
    [](const auto& tested) { return tested.param.name; });

TEST(PlannedCurve, SaysWhenAConeWaitIsAssumed) {
    const auto planned = planCurve({"x", {nine}}, inTheMorning(1160));
    EXPECT_EQ(planned.length(), minutes(120));
    EXPECT_EQ(planned.steps[0].coneWaitEnd, ConeWaitEnd::assumed);
    EXPECT_TRUE(planned.restsOnAssumption());
}

TEST(PlannedCurve, ExpandsRingsIntoTheirDips) {
    const Rings rings{3, C(1040), minutes(9), C(1085), minutes(8)};
    const auto planned = planCurve({"x", {Hold{C(1085), hours(2), six}, rings}}, inTheMorning(1085));
    ASSERT_EQ(planned.legs.size(), 1u + 3 * 4);
    EXPECT_FALSE(planned.legs[0].ring);
    for (std::size_t i = 1; i < planned.legs.size(); ++i) {
        const auto& leg = planned.legs[i];
        EXPECT_EQ(leg.ring, 1 + static_cast<int>(i - 1) / 4);
        EXPECT_EQ(leg.step, 1u);
        switch ((i - 1) % 4) {
        case 0:
            EXPECT_EQ(leg.motion, Motion::down);
            break;
        case 1:
            EXPECT_EQ(leg.end - leg.start, minutes(9));
            break;
        case 2:
            EXPECT_EQ(leg.motion, Motion::up);
            break;
        default:
            EXPECT_EQ(leg.end - leg.start, minutes(8));
        }
        EXPECT_EQ(leg.ownPace, leg.motion != Motion::level);
        EXPECT_EQ(leg.to, (i - 1) % 4 < 2 ? C(1040) : C(1085));
    }
    // Common practice, no source: a move of a ring and its dwell together take 10 to 20 min in an electric
    // kiln.
    EXPECT_GT(planned.legs[1].end - planned.legs[1].start, minutes(2));
    EXPECT_LT(planned.legs[1].end - planned.legs[1].start, minutes(11));
}

// The trace of the two-node kiln, Euler 1 s: off from chamber 1280, brick 1130 (reference of the model,
// calculated).
TEST(PlannedCurve, FallsAsTheModelKiln) {
    auto context = inTheMorning(1280);
    context.soFar = {
        {morning - milliseconds(1), C(1130)}}; // soaked through at 1130, then the chamber leaps up
    const auto planned = planCurve({"x", {Drop{C(900), {}}}}, context);
    EXPECT_NEAR(planned.begin.brick.celsius(), 1130, 0.01);
    EXPECT_NEAR(planned.temperatureAt(morning + seconds(600)).celsius(), 1189.8, 0.3);
    EXPECT_NEAR(planned.temperatureAt(morning + seconds(1800)).celsius(), 1073.0, 0.3);
    EXPECT_NEAR(planned.temperatureAt(morning + seconds(3600)).celsius(), 951.3, 0.3);
    EXPECT_EQ(planned.curve.back().temperature, C(900));
    for (std::size_t i = 1; i < planned.curve.size(); ++i)
        EXPECT_LE(planned.curve[i].at - planned.curve[i - 1].at, minutes(1));
}

// The same trace at full power from 22 °C: 552.3 after 1 h, 886.5 after 2 h, 1124.0 after 3 h, 1277.9 after 4
// h.
TEST(PlannedCurve, GoesToAHoldAtFullPower) {
    const auto planned = planCurve({"x", {Hold{C(1277.9), minutes(5), six}}}, inTheMorning(22));
    EXPECT_NEAR(planned.temperatureAt(morning + hours(1)).celsius(), 552.3, 0.3);
    EXPECT_NEAR(planned.temperatureAt(morning + hours(2)).celsius(), 886.5, 0.3);
    EXPECT_NEAR(planned.temperatureAt(morning + hours(3)).celsius(), 1124.0, 0.3);
    EXPECT_NEAR(inSeconds(planned.length() - minutes(5)), 4 * 3600, 20);
    EXPECT_EQ(planned.legs[1].end - planned.legs[1].start, minutes(5));
}

TEST(PlannedCurve, ClimbsMoreSlowlyOnLowVolts) {
    auto context = inTheMorning(22);
    const Plan plan{"x", {Hold{C(1000), minutes(5), six}}};
    const auto full = planCurve(plan, context).length();
    context.line = Volts{228};
    EXPECT_GT(planCurve(plan, context).length(), full + minutes(5));
}

TEST(PlannedCurve, EndsEvenWhereTheKilnNeverGets) {
    auto context = inTheMorning(1000);
    const auto cold = planCurve({"x", {Cool{C(0), {}}}}, context); // colder than the room
    EXPECT_EQ(cold.curve.back().temperature, C(0));
    EXPECT_LT(cold.length(), hours(24 * 7));
    context.line = Volts{0};
    const auto hot = planCurve({"x", {Hold{C(1100), minutes(5), six}}}, context);
    EXPECT_NEAR(inMinutes(hot.length()), 200 + 5, 0.01); // at 30 °C/h
}

const Plan wholeFiring{"whole",
                       {Climb{C(600), perHour(150)}, Climb{C(1100), perHour(200)}, nine, Drop{C(1085), {}},
                        Hold{C(1085), hours(3), six}, Rings{2, C(1040), minutes(9), C(1085), minutes(9)},
                        Cool{C(600), {}}}};

class Reanchored : public testing::TestWithParam<std::size_t> {};

TEST_P(Reanchored, AsPlannedChangesNothing) {
    const auto context = inTheMorning();
    const auto whole = planCurve(wholeFiring, context);
    const auto& first = whole.steps[GetParam()];
    const auto rest = planCurveFrom(wholeFiring, context, GetParam(), first.start, first.from);
    ASSERT_EQ(rest.steps.size(), whole.steps.size() - GetParam());
    for (std::size_t i = 0; i < rest.steps.size(); ++i) {
        const auto& before = whole.steps[GetParam() + i];
        EXPECT_EQ(rest.steps[i].step, before.step);
        EXPECT_NEAR(inSeconds(rest.steps[i].end - before.end), 0, 0.01);
        EXPECT_NEAR((rest.steps[i].to - before.to).celsius(), 0, 1e-6);
    }
}

TEST_P(Reanchored, LaterShiftsTheRest) {
    const auto context = inTheMorning();
    const auto whole = planCurve(wholeFiring, context);
    const auto& first = whole.steps[GetParam()];
    const auto rest = planCurveFrom(wholeFiring, context, GetParam(), first.start + minutes(25), first.from);
    EXPECT_EQ(rest.start(), first.start + minutes(25));
    EXPECT_NEAR(inMinutes(rest.end() - whole.end()), 25, 0.01);
}

INSTANTIATE_TEST_SUITE_P(Step, Reanchored, testing::Range<std::size_t>(0, 7));

TEST(PlannedCurve, StartsTheRestAtTheTemperatureThatIs) {
    const auto context = inTheMorning();
    const auto rest = planCurveFrom(wholeFiring, context, 1, morning + hours(4), C(620));
    EXPECT_EQ(rest.steps[0].end - rest.steps[0].start, minutes(144)); // 480 °C at 200 °C/h
    EXPECT_EQ(rest.curve.front().temperature, C(620));
}

TEST(PlannedCurve, HasNothingLeftAtTheEnd) {
    const auto rest = planCurveFrom(wholeFiring, inTheMorning(), wholeFiring.steps.size(), morning, C(600));
    EXPECT_TRUE(rest.steps.empty());
    EXPECT_TRUE(rest.legs.empty());
    EXPECT_EQ(rest.curve.size(), 1u);
    EXPECT_EQ(rest.length(), Duration::zero());
}

TEST(PlannedCurve, GivesTheRealCurveToTheEstimate) {
    auto context = inTheMorning();
    context.soFar = {{morning, C(20)}, {morning + hours(5), C(1100)}, {morning + hours(6), C(1150)}};
    Curve seen;
    context.coneDown = [&](const Curve& whole, const std::string&) -> std::optional<Instant> {
        seen = whole;
        return std::nullopt;
    };
    planCurveFrom(wholeFiring, context, 2, morning + hours(5) + minutes(30), C(1130));
    ASSERT_EQ(seen.size(), 5u); // the later point of the real curve is left out
    EXPECT_EQ(seen[1].temperature, C(1100));
    EXPECT_EQ(seen[2].at, morning + hours(5) + minutes(30));
    EXPECT_EQ(seen[2].temperature, C(1130));
    EXPECT_EQ(seen[3].temperature, C(1260));
    EXPECT_EQ(seen[4].temperature, C(1260));
}

Plan randomPlan(std::mt19937& random) {
    const auto within = [&random](double low, double high) {
        return std::uniform_real_distribution(low, high)(random);
    };
    const auto rateOrNone = [&] {
        return within(0, 1) < 0.5 ? std::nullopt : std::optional(perHour(within(5, 900)));
    };
    const auto time = [&] { return durationFromMinutes(within(0.1, 300)); };
    Plan plan{"random", {}};
    const int steps = std::uniform_int_distribution(1, 12)(random);
    for (int i = 0; i < steps; ++i) {
        const Temperature to = C(within(0, 1400));
        switch (std::uniform_int_distribution(0, 5)(random)) {
        case 0:
            plan.steps.push_back(Climb{to, perHour(within(5, 900))});
            break;
        case 1:
            plan.steps.push_back(Hold{to, time(), six});
            break;
        case 2:
            plan.steps.push_back(ConeWait{"9", perHour(within(5, 200)), to, C(1400), time()});
            break;
        case 3:
            plan.steps.push_back(Drop{to, rateOrNone()});
            break;
        case 4:
            plan.steps.push_back(Rings{3, to - six, time(), to, time()});
            break;
        default:
            plan.steps.push_back(Cool{to, rateOrNone()});
        }
    }
    return plan;
}

/// Steps and legs follow one another without a gap, from the curve's first point to its last, and lie on it.
template <class Stretch>
void expectContiguous(const PlannedCurve& planned, const std::vector<Stretch>& stretches) {
    CurvePoint here = planned.curve.front();
    for (const auto& stretch : stretches) {
        ASSERT_EQ(stretch.start, here.at);
        ASSERT_EQ(stretch.from, here.temperature);
        ASSERT_EQ(planned.temperatureAt(stretch.end), stretch.to);
        here = {stretch.end, stretch.to};
    }
    ASSERT_EQ(here.at, planned.end());
}

TEST(PlannedCurve, IsInTimeOrderAndWithoutGapsWhateverThePlan) {
    std::mt19937 random(7);
    for (int i = 0; i < 300; ++i) {
        const Plan plan = randomPlan(random);
        auto context = inTheMorning(std::uniform_real_distribution(0.0, 1300.0)(random));
        if (i % 2 == 0)
            context.coneDown = [](const Curve& whole, const std::string&) {
                return std::optional(whole[whole.size() / 2].at);
            };
        const auto planned = planCurve(plan, context);
        for (std::size_t p = 1; p < planned.curve.size(); ++p)
            ASSERT_LT(planned.curve[p - 1].at, planned.curve[p].at);
        for (const auto& leg : planned.legs)
            ASSERT_LT(leg.start, leg.end);
        ASSERT_EQ(planned.steps.size(), plan.steps.size());
        expectContiguous(planned, planned.steps);
        expectContiguous(planned, planned.legs);
    }
}

} // namespace
} // namespace ringhold
