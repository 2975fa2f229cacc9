#include "core/plan/plan_examples.h"
#include "core/watch/step_follower.h"

#include <gtest/gtest.h>

#include <cmath>

namespace ringhold {
namespace {

const Instant start{std::chrono::hours(492000)};

Temperature celsius(double degrees) {
    return Temperature::fromCelsius(degrees);
}

/// Climb 200 °C/h to 1100, wait for cone 9, drop to 1085, hold 2 h, two rings, cool.
Plan smallPlan() {
    return {
        "small",
        {Climb{celsius(1100), Rate::fromCelsiusPerHour(200)},
         ConeWait{"9", Rate::fromCelsiusPerHour(60), celsius(1262), celsius(1285), std::chrono::minutes(60)},
         Drop{celsius(1085), {}},
         Hold{celsius(1085), std::chrono::hours(2), TemperatureDifference::fromCelsius(6)},
         Rings{2, celsius(1040), std::chrono::minutes(9), celsius(1085), std::chrono::minutes(9)},
         Cool{celsius(700), Rate::fromCelsiusPerHour(150)}}};
}

PlanContext contextAt(Instant at) {
    PlanContext context;
    context.start = at;
    return context;
}

Look coneDown(Instant at) {
    return {LookId{1}, PackId{1}, at, "9", 6.0, false, false};
}

/// The curve sampled every half minute, some time late, a few degrees off.
Curve sampled(const PlannedCurve& planned, Duration late, double off_C) {
    Curve curve;
    for (Instant at = planned.start(); at < planned.end(); at += std::chrono::seconds(30))
        curve.push_back({at + late, planned.temperatureAt(at) + TemperatureDifference::fromCelsius(off_C)});
    return curve;
}

const PlannedStep& stepOf(const PlannedCurve& planned, std::size_t step) {
    return planned.steps.at(step);
}

struct Case {
    Duration late;
    double off_C;
};

class FollowsTheKiln : public testing::TestWithParam<Case> {};

TEST_P(FollowsTheKiln, ThroughEveryStep) {
    const auto planned = planCurve(smallPlan(), contextAt(start));
    const auto curve = sampled(planned, GetParam().late, GetParam().off_C);
    StepFollower follower(smallPlan(), contextAt(start));
    const Instant down = stepOf(planned, 1).end + GetParam().late;
    int judged = 0;
    std::vector<Look> looks{coneDown(down)};
    follower.restart({}, looks);
    for (const auto& point : curve) {
        follower.add(point);
        const Instant asPlanned = point.at - GetParam().late;
        const auto* leg = planned.legAt(asPlanned);
        // near the ends of a leg either neighbour is right
        if (!leg || asPlanned - leg->start < std::chrono::minutes(4) ||
            leg->end - asPlanned < std::chrono::minutes(4))
            continue;
        const auto position = follower.position();
        ASSERT_TRUE(position) << inMinutes(asPlanned - planned.start());
        ASSERT_EQ(position->step, leg->step) << inMinutes(asPlanned - planned.start());
        ASSERT_EQ(position->ring, leg->ring) << inMinutes(asPlanned - planned.start());
        ++judged;
    }
    EXPECT_GT(judged, 500);
}

INSTANTIATE_TEST_SUITE_P(LateAndOff, FollowsTheKiln,
                         testing::Values(Case{std::chrono::minutes(0), 0}, Case{std::chrono::minutes(0), 2.5},
                                         Case{std::chrono::minutes(0), -2.5},
                                         Case{std::chrono::minutes(47), 1},
                                         Case{std::chrono::minutes(-10), -1}));

TEST(StepFollower, OnlyALookEndsAConeWait) {
    StepFollower follower(smallPlan(), contextAt(start));
    Curve curve;
    for (int minute = 0; minute <= 600; ++minute)
        curve.push_back(
            {start + std::chrono::minutes(minute), celsius(std::min(1262.0, 20 + 200.0 * minute / 60))});
    follower.restart(curve, {});
    ASSERT_TRUE(follower.position());
    EXPECT_EQ(follower.position()->step, 1u);
    const Instant down = start + std::chrono::minutes(590);
    follower.restart(curve, {coneDown(down)});
    EXPECT_EQ(follower.position()->step, 2u);
    EXPECT_EQ(follower.position()->since, down);
    // a struck-out look puts the plan back
    auto struck = coneDown(down);
    struck.struck = true;
    follower.restart(curve, {struck});
    EXPECT_EQ(follower.position()->step, 1u);
}

TEST(StepFollower, ALookAfterTheLastReadingEndsAConeWaitToo) {
    StepFollower follower(smallPlan(), contextAt(start));
    Curve curve;
    for (int minute = 0; minute <= 600; minute += 15)
        curve.push_back(
            {start + std::chrono::minutes(minute), celsius(std::min(1262.0, 20 + 200.0 * minute / 60))});
    const Instant down = start + std::chrono::minutes(607);
    follower.restart(curve, {coneDown(down)});
    EXPECT_EQ(follower.position()->step, 1u);
    follower.passTime(down - std::chrono::minutes(1));
    EXPECT_EQ(follower.position()->step, 1u);
    follower.passTime(down);
    ASSERT_TRUE(follower.position());
    EXPECT_EQ(follower.position()->step, 2u);
    EXPECT_EQ(follower.position()->since, down);
    follower.add({start + std::chrono::minutes(615), celsius(1190)});
    EXPECT_EQ(follower.position()->step, 2u);
    EXPECT_EQ(follower.position()->since, down);
}

TEST(StepFollower, ALookBetweenSeldomReadingsEndsTheWaitAtTheLook) {
    StepFollower follower(smallPlan(), contextAt(start));
    const Instant down = start + std::chrono::minutes(607);
    Curve curve;
    for (int minute = 0; minute <= 600; minute += 15)
        curve.push_back(
            {start + std::chrono::minutes(minute), celsius(std::min(1262.0, 20 + 200.0 * minute / 60))});
    curve.push_back({start + std::chrono::minutes(630), celsius(1150)});
    follower.restart(curve, {coneDown(down)});
    ASSERT_TRUE(follower.position());
    EXPECT_EQ(follower.position()->step, 2u);
    EXPECT_EQ(follower.position()->since, down);
}

TEST(StepFollower, SeesThatThePotterDroppedWithoutAWord) {
    StepFollower follower(smallPlan(), contextAt(start));
    Curve curve;
    for (int minute = 0; minute <= 380; ++minute)
        curve.push_back(
            {start + std::chrono::minutes(minute), celsius(std::min(1262.0, 20 + 200.0 * minute / 60))});
    for (int minute = 381; minute <= 386; ++minute)
        curve.push_back({start + std::chrono::minutes(minute), celsius(1262 - 8.0 * (minute - 380))});
    follower.restart(curve, {});
    EXPECT_EQ(follower.position()->step, 2u);
}

TEST(StepFollower, TimesTheRestAnewWhereAStepReallyEnds) {
    const auto planned = planCurve(smallPlan(), contextAt(start));
    StepFollower follower(smallPlan(), contextAt(start));
    auto curve = sampled(planned, {}, 0);
    const Instant down =
        stepOf(planned, 1).end + std::chrono::minutes(25); // the cone takes longer than planned
    std::erase_if(curve, [&](const CurvePoint& p) { return p.at > stepOf(planned, 1).end; });
    for (Instant at = curve.back().at + std::chrono::seconds(30); at <= down; at += std::chrono::seconds(30))
        curve.push_back({at, celsius(1262)});
    follower.restart(curve, {coneDown(down)});
    ASSERT_EQ(follower.position()->step, 2u);
    const double later = inMinutes(follower.ahead().end() - planned.end());
    EXPECT_NEAR(later, 25, 3);
    EXPECT_EQ(follower.drawn().front().at, start);
}

TEST(StepFollower, FindsItsStepWhenItStartsLate) {
    StepFollower follower(smallPlan(), contextAt(start));
    follower.restart({{start, celsius(1180)}, {start + std::chrono::minutes(1), celsius(1181)}}, {});
    ASSERT_TRUE(follower.position());
    EXPECT_EQ(follower.position()->step, 1u);
}

TEST(StepFollower, HasNoPositionBeforeTheFirstReadingAndAfterTheLastStep) {
    StepFollower follower(smallPlan(), contextAt(start));
    EXPECT_FALSE(follower.position());
    EXPECT_FALSE(follower.finished());
    const auto planned = planCurve(smallPlan(), contextAt(start));
    auto curve = sampled(planned, {}, 0);
    curve.push_back({planned.end() + std::chrono::minutes(5), celsius(690)});
    follower.restart(curve, {coneDown(stepOf(planned, 1).end)});
    EXPECT_TRUE(follower.finished());
    EXPECT_FALSE(follower.position());
}

} // namespace
} // namespace ringhold
