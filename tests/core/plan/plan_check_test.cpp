#include "core/plan/plan_check.h"

#include <gtest/gtest.h>

#include <limits>

namespace ringhold {
namespace {

using std::chrono::hours;
using std::chrono::minutes;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

Temperature C(double celsius) {
    return Temperature::fromCelsius(celsius);
}
Rate perHour(double rate) {
    return Rate::fromCelsiusPerHour(rate);
}
TemperatureDifference band(double celsius) {
    return TemperatureDifference::fromCelsius(celsius);
}

struct Case {
    const char* name;
    std::vector<Step> steps;
    std::vector<std::string> faults;
    std::optional<Temperature> start{};
};

class PlanCheck : public testing::TestWithParam<Case> {};

TEST_P(PlanCheck, FindsTheFaults) {
    const Plan plan{"x", GetParam().steps};
    std::vector<std::string> found;
    for (const auto& fault : faultsOf(plan, GetParam().start))
        found.push_back(fault.text());
    EXPECT_EQ(found, GetParam().faults);

    const Status status = check(plan, GetParam().start);
    ASSERT_EQ(status.ok(), found.empty());
    if (!found.empty()) {
        EXPECT_EQ(status.error().kind, ErrorKind::badInput);
        EXPECT_EQ(status.error().what, found.front());
    }
}

const Climb climb{C(600), perHour(150)};
const Hold hold{C(600), minutes(10), band(6)};
const ConeWait wait{"9", perHour(60), C(1262), C(1285), minutes(40)};
const Rings rings{3, C(1040), minutes(9), C(1085), minutes(9)};

template <class S, class F>
S with(S step, F change) {
    change(step);
    return step;
}

const std::string tempRange = " must be from 0 to 1400";

INSTANTIATE_TEST_SUITE_P(
    Values, PlanCheck,
    testing::Values(
        Case{"none", {}, {"a plan needs at least one step"}},
        Case{"tooMany", std::vector<Step>(201, Step(hold)), {"a plan has at most 200 steps"}},
        Case{"fine", {climb, hold, wait, Drop{C(1085), {}}, rings, Cool{C(600), perHour(100)}}, {}},
        Case{"edges", {Climb{C(1400), perHour(3000)}, Cool{C(0), perHour(0.1)}}, {}},
        Case{"cold", {Cool{C(-0.5), {}}}, {"step 1: to_C" + tempRange}},
        Case{"hot", {Climb{C(1400.5), perHour(100)}}, {"step 1: to_C" + tempRange}},
        Case{"notATemperature", {Hold{C(nan), minutes(5), band(5)}}, {"step 1: at_C" + tempRange}},
        Case{"endlesslyHot", {Drop{C(infinity), {}}}, {"step 1: to_C" + tempRange}},
        Case{"noRate", {Climb{C(600), perHour(0)}}, {"step 1: rate_C_per_h must be above 0"}},
        Case{"signedFall", {Drop{C(600), perHour(-100)}}, {"step 1: rate_C_per_h must be above 0"}},
        Case{"notARate", {Climb{C(600), perHour(nan)}}, {"step 1: rate_C_per_h must be above 0"}},
        Case{"tooSlow", {Climb{C(600), perHour(0.05)}}, {"step 1: rate_C_per_h must be from 0.1 to 3000"}},
        Case{"tooFast", {Cool{C(600), perHour(infinity)}}, {"step 1: rate_C_per_h must be from 0.1 to 3000"}},
        Case{"noTime", {with(hold, [](Hold& h) { h.length = {}; })}, {"step 1: minutes must be above 0"}},
        Case{"longTime",
             {with(hold, [](Hold& h) { h.length = hours(169); })},
             {"step 1: minutes must be at most 10080"}},
        Case{"noBand", {with(hold, [](Hold& h) { h.band = {}; })}, {"step 1: band_C must be above 0"}},
        Case{"notABand",
             {with(hold, [](Hold& h) { h.band = band(nan); })},
             {"step 1: band_C must be above 0"}},
        Case{"wideBand",
             {with(hold, [](Hold& h) { h.band = band(101); })},
             {"step 1: band_C must be at most 100"}},
        Case{"lowCeiling",
             {with(wait, [](ConeWait& w) { w.ceiling = C(1261); })},
             {"step 1: ceiling_C must be at least set_C"}},
        Case{"ceilingAtSet", {with(wait, [](ConeWait& w) { w.ceiling = w.set; })}, {}},
        Case{"noSoak",
             {with(wait, [](ConeWait& w) { w.longestSoak = {}; })},
             {"step 1: longest_soak_min must be above 0"}},
        Case{"noRings", {with(rings, [](Rings& r) { r.count = 0; })}, {"step 1: count must be from 1 to 50"}},
        Case{"manyRings",
             {with(rings, [](Rings& r) { r.count = 51; })},
             {"step 1: count must be from 1 to 50"}},
        Case{"flatRings",
             {with(rings, [](Rings& r) { r.low = r.high; })},
             {"step 1: high_C must be above low_C"}},
        Case{"allOfThem",
             {Climb{C(-1), perHour(0)}, with(hold, [](Hold& h) { h.length = {}; })},
             {"step 1: rate_C_per_h must be above 0", "step 1: to_C" + tempRange,
              "step 2: minutes must be above 0"}}),
    [](const auto& tested) { return tested.param.name; });

const std::string goesUp = " that the kiln has by then: this step goes up";
const std::string goesDown = " that the kiln has by then: this step goes down";

INSTANTIATE_TEST_SUITE_P(
    Sequence, PlanCheck,
    testing::Values(
        Case{"climbBelow",
             {climb, Climb{C(550.5), perHour(100)}},
             {"step 2: to_C is 550.5, below the 600" + goesUp}},
        Case{"climbWhereItIs", {climb, climb}, {}},
        Case{"climbBelowStart", {climb}, {"step 1: to_C is 600, below the 700" + goesUp}, C(700)},
        Case{"dropAbove", {climb, Drop{C(700), {}}}, {"step 2: to_C is 700, above the 600" + goesDown}},
        Case{"dropFirst", {Drop{C(700), {}}}, {}}, // a kiln may be hot to begin with
        Case{"coolAbove", {hold, Cool{C(700), {}}}, {"step 2: to_C is 700, above the 600" + goesDown}},
        Case{"ringsAbove", {climb, rings}, {"step 2: low_C is 1040, above the 600" + goesDown}},
        Case{"waitBelow",
             {Climb{C(1270), perHour(100)}, wait},
             {"step 2: set_C is 1262, below the 1270" + goesUp}},
        // The cone may be down early in the wait, or the potter may go up to the ceiling.
        Case{"dropFromWait", {climb, wait, Drop{C(1280), {}}}, {}},
        Case{"climbAfterWait", {climb, wait, Climb{C(700), perHour(100)}}, {}},
        Case{"aboveCeiling",
             {climb, wait, Drop{C(1290), {}}},
             {"step 3: to_C is 1290, above the 1285" + goesDown}},
        Case{"belowWaitsStart",
             {climb, wait, Climb{C(599), perHour(100)}},
             {"step 3: to_C is 599, below the 600" + goesUp}},
        Case{"afterRings", {rings, Drop{C(1086), {}}}, {"step 2: to_C is 1086, above the 1085" + goesDown}},
        Case{"holdElsewhere",
             {climb, Hold{C(650), minutes(5), band(5)}},
             {}}), // as fast as the kiln gets there
    [](const auto& tested) { return tested.param.name; });

struct ConeName {
    const char* name;
    bool fine;
};

TEST(PlanCheck, KnowsHowAConeIsWritten) {
    for (const auto& [name, fine] : {ConeName{"9", true},
                                     {"010", true},
                                     {"5.5", true},
                                     {"05.5", true},
                                     {"", false},
                                     {".5", false},
                                     {"5.6", false},
                                     {"nine", false},
                                     {"-9", false},
                                     {"1234", false}}) {
        const Plan plan{"x", {with(wait, [name = name](ConeWait& w) { w.cone = name; })}};
        EXPECT_EQ(check(plan).ok(), fine) << name;
    }
}

TEST(PlanCheck, NamesTheField) {
    const auto faults = faultsOf({"x", {hold, Climb{C(500), perHour(0)}}});
    ASSERT_EQ(faults.size(), 2u);
    EXPECT_EQ(faults[0].step, 1u);
    EXPECT_EQ(faults[0].key, "rate_C_per_h");
    EXPECT_EQ(faults[1].key, "to_C");
}

struct ReasonCase {
    Step step;
    std::string_view key;
    FaultReason reason;
    double low, high;
};

TEST(PlanCheck, GivesTheReasonAndItsFigures) {
    using enum FaultReason;
    const ReasonCase cases[] = {
        {Climb{C(1500), perHour(100)}, "to_C", outOfRange, 0, 1400},
        {Climb{C(600), perHour(5000)}, "rate_C_per_h", outOfRange, 0.1, 3000},
        {Climb{C(500), perHour(100)}, "to_C", belowKiln, 600, 0},
        {Drop{C(700), perHour(100)}, "to_C", aboveKiln, 0, 600},
        {with(hold, [](Hold& h) { h.band = band(101); }), "band_C", tooMuch, 0, 100},
        {with(hold, [](Hold& h) { h.length = {}; }), "minutes", notAboveZero, 0, 0},
        {with(wait, [](ConeWait& w) { w.cone = "nine"; }), "cone", notACone, 0, 0},
        {with(wait, [](ConeWait& w) { w.ceiling = C(1000); }), "ceiling_C", ceilingBelowSet, 0, 0},
    };
    for (const auto& [step, key, reason, low, high] : cases) {
        const auto faults = faultsOf({"x", {climb, step}});
        ASSERT_EQ(faults.size(), 1u) << key;
        EXPECT_EQ(faults[0].key, key);
        EXPECT_EQ(faults[0].reason, reason) << key;
        EXPECT_EQ(faults[0].low, low) << key;
        EXPECT_EQ(faults[0].high, high) << key;
    }
    EXPECT_EQ(faultsOf({"x", {}}).at(0).reason, noSteps);
}

} // namespace
} // namespace ringhold
