#include "core/plan/plan_check.h"
#include "core/plan/plan_examples.h"
#include "core/report/plan_card.h"

#include <gtest/gtest.h>

#include <cmath>

namespace ringhold {
namespace {

using std::chrono::minutes;

Temperature C(double celsius) {
    return Temperature::fromCelsius(celsius);
}
Rate perHour(double rate) {
    return Rate::fromCelsiusPerHour(rate);
}
TemperatureDifference degrees(double celsius) {
    return TemperatureDifference::fromCelsius(celsius);
}

const ConeWait wait{"9", perHour(60), C(1262), C(1285), minutes(40)};
const Hold hold{C(1085), minutes(240), degrees(6)};
const Rings rings{2, C(1040), minutes(9), C(1085), minutes(8)};
const OffsetPrior readsHigh{degrees(7), degrees(2), 5};

PlanCard cardOf(std::vector<Step> steps, CardCorrection correction = CardCorrection::none,
                const OffsetPrior& offset = readsHigh, const PlannedCurve* planned = nullptr) {
    const Plan plan{"x", std::move(steps)};
    EXPECT_TRUE(check(plan).ok());
    return planCard(plan, offset, correction, planned);
}

/// A segment as a line: rate or "full", set point keyed in, minutes of dwell.
std::vector<std::string> lines(const PlanCard& card) {
    std::vector<std::string> all;
    for (const auto& s : card.segments) {
        const auto whole = [](double value) { return std::to_string(std::lround(value)); };
        all.push_back((s.rate ? whole(s.rate->celsiusPerHour()) : "full") + " to " +
                      whole(s.set.keyed.celsius()) + " dwell " + whole(inMinutes(s.dwell)));
    }
    return all;
}

using Lines = std::vector<std::string>;

TEST(PlanCard, TurnsAWholePlanIntoSegments) {
    const auto card = cardOf({Climb{C(600), perHour(150)}, Climb{C(1100), perHour(200)}, wait,
                              Drop{C(1085), {}}, hold, rings, Cool{C(600), {}}});
    EXPECT_EQ(lines(card), (Lines{"150 to 600 dwell 0", "200 to 1100 dwell 0", "60 to 1262 dwell 40",
                                  "full to 1085 dwell 240", "full to 1040 dwell 9", "full to 1085 dwell 8",
                                  "full to 1040 dwell 9", "full to 1085 dwell 8"}));
    EXPECT_EQ(card.segments[4].ring, 1);
    EXPECT_EQ(card.segments[7].ring, 2);
    EXPECT_EQ(card.segments[3].motion, Motion::down);
    EXPECT_EQ(card.segments[5].motion, Motion::up);
    EXPECT_TRUE(card.segments[3].holds);
    EXPECT_FALSE(card.segments[5].holds);
    EXPECT_EQ(card.coolsByItselfTo, C(600));
    EXPECT_FALSE(card.length);
}

struct Merge {
    const char* name;
    std::vector<Step> steps;
    Lines segments;
};

class PlanCardMerge : public testing::TestWithParam<Merge> {};

TEST_P(PlanCardMerge, PutsAHoldIntoTheRampThatLeadsToIt) {
    EXPECT_EQ(lines(cardOf(GetParam().steps)), GetParam().segments);
}

INSTANTIATE_TEST_SUITE_P(
    Plans, PlanCardMerge,
    testing::Values(
        Merge{"rampAndHold", {Climb{C(1085), perHour(80)}, hold}, {"80 to 1085 dwell 240"}},
        Merge{"holdElsewhere",
              {Climb{C(600), perHour(80)}, hold},
              {"80 to 600 dwell 0", "full to 1085 dwell 240"}},
        Merge{"twoHolds", {hold, hold}, {"full to 1085 dwell 240", "full to 1085 dwell 240"}},
        // The kiln leaves a cone wait at a temperature of its own, so that the hold needs a way of its own.
        Merge{"holdAfterWait",
              {wait, Hold{C(1262), minutes(5), degrees(6)}},
              {"60 to 1262 dwell 40", "full to 1262 dwell 5"}},
        Merge{"climbToWhereItIs",
              {Climb{C(600), perHour(80)}, Climb{C(600), perHour(90)}},
              {"80 to 600 dwell 0"}},
        Merge{"climbAfterWait",
              {wait, Climb{C(1262), perHour(30)}},
              {"60 to 1262 dwell 40", "30 to 1262 dwell 0"}},
        Merge{"coolAtARate",
              {hold, Cool{C(600), perHour(50)}},
              {"full to 1085 dwell 240", "50 to 600 dwell 0"}},
        Merge{"coolInBetween",
              {Cool{C(900), {}}, Hold{C(900), minutes(5), degrees(6)}},
              {"full to 900 dwell 5"}}),
    [](const auto& tested) { return tested.param.name; });

// 1.645 standard deviations hold 90 % of a normal distribution on both sides of its mean.
TEST(PlanCard, MovesTheConeWaitByTheOffset) {
    const auto card = cardOf({Climb{C(1100), perHour(200)}, wait, hold}, CardCorrection::coneWaits);
    const auto& set = card.segments[1].set;
    EXPECT_DOUBLE_EQ(set.planned.celsius(), 1262);
    EXPECT_DOUBLE_EQ(set.keyed.celsius(), 1269);
    EXPECT_NEAR(set.low.celsius(), 1269 - 1.645 * 2, 0.001);
    EXPECT_NEAR(set.high.celsius(), 1269 + 1.645 * 2, 0.001);
    for (const auto i : {0u, 2u}) {
        const auto& other = card.segments[i].set;
        EXPECT_EQ(other.keyed, other.planned);
        EXPECT_EQ(other.low, other.high);
    }
}

TEST(PlanCard, MovesNothingWhenThePlanIsInTheProbesOwnDegrees) {
    const auto card = cardOf({wait, hold}, CardCorrection::none);
    for (const auto& segment : card.segments)
        EXPECT_EQ(segment.set.correction(), TemperatureDifference());
}

// Scaled with the temperature in °C, and wider by 2 °C for each 100 °C away from the cones.
TEST(PlanCard, CarriesTheOffsetDownWhenAllIsCorrected) {
    const auto card = cardOf({wait, hold}, CardCorrection::all);
    EXPECT_DOUBLE_EQ(card.segments[0].set.keyed.celsius(), 1269);
    const auto& set = card.segments[1].set;
    EXPECT_NEAR(set.correction().celsius(), 7 * 1085.0 / 1262.0, 1e-9);
    const double sd = std::hypot(2 * 1085.0 / 1262.0, 0.02 * (1262 - 1085));
    EXPECT_NEAR((set.high - set.low).celsius(), 2 * 1.644854 * sd, 1e-4);
}

TEST(PlanCard, NeverKeysInMoreThanTheCeiling) {
    const OffsetPrior far{degrees(30), degrees(10), 2};
    const auto card = cardOf({wait, hold}, CardCorrection::coneWaits, far);
    const auto& set = card.segments[0].set;
    EXPECT_EQ(set.keyed, wait.ceiling);
    EXPECT_EQ(set.high, wait.ceiling);
    EXPECT_LT(set.low, wait.ceiling);
    EXPECT_TRUE(card.byHand.at(0).cutToCeiling);
    EXPECT_FALSE(cardOf({wait, hold}, CardCorrection::coneWaits).byHand.at(0).cutToCeiling);
}

TEST(PlanCard, SaysWhereToStepOnByHand) {
    const auto card = cardOf({Climb{C(1100), perHour(200)}, wait, Drop{C(1085), {}}, hold});
    ASSERT_EQ(card.byHand.size(), 1u);
    const auto& hand = card.byHand[0];
    EXPECT_EQ(hand.segment, 1u);
    EXPECT_EQ(hand.next, 2u);
    EXPECT_EQ(hand.cone, "9");
    EXPECT_EQ(hand.longestSoak, minutes(40));
    EXPECT_EQ(hand.ceiling, C(1285));
    EXPECT_FALSE(hand.expected);
}

TEST(PlanCard, EndsByHandWhenNothingFollowsTheCone) {
    EXPECT_FALSE(cardOf({wait}).byHand.at(0).next);
    EXPECT_FALSE(cardOf({wait, Cool{C(600), {}}}).byHand.at(0).next);
    const auto twice = cardOf({wait, wait});
    ASSERT_EQ(twice.byHand.size(), 2u);
    EXPECT_EQ(twice.byHand[0].next, 1u);
    EXPECT_FALSE(twice.byHand[1].next);
}

TEST(PlanCard, TakesItsTimesFromThePlannedCurve) {
    const Plan plan{"x", {Climb{C(1100), perHour(216)}, wait, hold, rings}};
    PlanContext context;
    context.start = Instant(std::chrono::hours(1000));
    const auto planned = planCurve(plan, context);
    const auto card = planCard(plan, readsHigh, CardCorrection::none, &planned);
    EXPECT_EQ(card.segments[0].begins, Duration::zero());
    EXPECT_EQ(card.segments[1].begins, std::chrono::hours(5)); // 1080 °C at 216 °C/h
    EXPECT_EQ(card.length, planned.length());
    const auto& hand = card.byHand.at(0);
    EXPECT_EQ(hand.basis, ConeWaitEnd::assumed);
    EXPECT_EQ(hand.expected, planned.steps[1].end - planned.start());
    EXPECT_EQ(card.segments[2].begins, hand.expected);
    // Each later segment begins when the dwell before it is over.
    ASSERT_EQ(card.segments.size(), 7u);
    for (std::size_t i = 4; i < card.segments.size(); ++i) {
        const auto arrived = *card.segments[i].begins - card.segments[i - 1].dwell;
        const auto at = planned.temperatureAt(planned.start() + arrived);
        EXPECT_NEAR(at.celsius(), card.segments[i - 1].set.planned.celsius(), 1e-6) << i;
    }
}

TEST(PlanCard, CoversEveryExample) {
    for (const auto& example : examplePlans()) {
        const auto card = planCard(example.plan, readsHigh, CardCorrection::coneWaits);
        EXPECT_EQ(card.name, example.plan.name);
        EXPECT_EQ(card.byHand.size(), 1u);
        EXPECT_TRUE(card.byHand[0].next);
        EXPECT_GT(card.segments.size(), 4u);
    }
}

} // namespace
} // namespace ringhold
