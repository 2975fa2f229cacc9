// The follower beside a practice kiln whose controller does not quite do what the plan says.
#include "core/kiln/practice_kiln.h"
#include "core/watch/step_follower.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <set>

namespace ringhold {
namespace {

using std::chrono::minutes;
using std::chrono::seconds;

const Instant start{std::chrono::hours(492000)};

Temperature celsius(double degrees) {
    return Temperature::fromCelsius(degrees);
}

/// Drying hold, climb, wait for cone 9, drop, growth hold, two rings, cool.
Plan shortPlan() {
    const auto band = TemperatureDifference::fromCelsius(6);
    return {"short",
            {Climb{celsius(300), Rate::fromCelsiusPerHour(300)}, Hold{celsius(300), minutes(40), band},
             Climb{celsius(1000), Rate::fromCelsiusPerHour(300)},
             ConeWait{"9", Rate::fromCelsiusPerHour(100), celsius(1150), celsius(1180), minutes(60)},
             Drop{celsius(1050), {}}, Hold{celsius(1050), minutes(60), band},
             Rings{2, celsius(1010), minutes(12), celsius(1050), minutes(12)}, Cool{celsius(850), {}}}};
}

struct Case {
    std::string name;
    std::function<void(Plan&)> differently = [](Plan&) {};  ///< what the controller was given instead
    std::vector<std::size_t> meant{0, 1, 2, 3, 4, 5, 6, 7}; ///< the plan's step of each of the controller's
    seconds spacing{20};
    double rounding_C = 0;
    Duration idle = Duration(0); ///< logged before the kiln is switched on
    Duration tolerance = minutes(5);
};

struct Followed {
    int judged = 0;
    int right = 0;
    std::set<std::size_t> seen;
    bool finished = false;
    std::string wrong;
};

Curve idling(const Case& c) {
    Curve curve;
    for (Duration t(0); t < c.idle; t += c.spacing)
        curve.push_back({start + t, celsius(22)});
    return curve;
}

Followed follow(const Case& c) {
    PracticeSettings settings;
    settings.plan = shortPlan();
    c.differently(settings.plan);
    PracticeKiln kiln(settings);
    StepFollower follower(shortPlan(), [] {
        PlanContext context;
        context.start = start;
        return context;
    }());
    Curve curve = idling(c);
    follower.restart(curve, {});
    Followed told;
    Instant now = start + c.idle;
    std::vector<Look> looks;
    std::vector<std::pair<Instant, std::size_t>> real, found;
    while (!kiln.finished()) {
        kiln.advance(c.spacing);
        now += c.spacing;
        const double shown_C = kiln.reading().probe->celsius();
        const CurvePoint point{
            now, celsius(c.rounding_C > 0 ? std::round(shown_C / c.rounding_C) * c.rounding_C : shown_C)};
        curve.push_back(point);
        follower.add(point);
        if (kiln.step() < c.meant.size() && c.meant[kiln.step()] == 3 && shown_C > 1140 && looks.empty()) {
            kiln.coneDown("9");
            looks.push_back({LookId{1}, PackId{1}, now, "9", 6, false, false});
            follower.restart(curve, looks);
        }
        const std::size_t meant = kiln.finished() ? 8 : c.meant[kiln.step()];
        const auto position = follower.position();
        real.emplace_back(now, meant);
        found.emplace_back(now, position ? position->step : 8);
    }
    // near a change either neighbour is right
    for (std::size_t i = 0; i < real.size(); ++i) {
        const auto near = [&](const auto& other) {
            return std::chrono::abs(other.first - real[i].first) <= c.tolerance &&
                   other.second != real[i].second;
        };
        if (std::ranges::any_of(real, near))
            continue;
        ++told.judged;
        told.seen.insert(real[i].second);
        if (found[i].second == real[i].second)
            ++told.right;
        else
            told.wrong += std::to_string(inMinutes(real[i].first - start)) + ": " +
                          std::to_string(found[i].second) + " for " + std::to_string(real[i].second) + "\n";
    }
    told.finished = !follower.position() || follower.position()->step == 7;
    return told;
}

class BesideAPracticeKiln : public testing::TestWithParam<Case> {};

TEST_P(BesideAPracticeKiln, KnowsTheStep) {
    const auto told = follow(GetParam());
    EXPECT_GT(told.judged, GetParam().spacing > minutes(5) ? 8 : 150);
    EXPECT_EQ(told.right, told.judged) << told.wrong.substr(0, 600);
    EXPECT_TRUE(told.finished);
}

void setPointsLower(Plan& plan, double by_C) {
    const auto lower = TemperatureDifference::fromCelsius(by_C);
    for (auto& step : plan.steps) {
        if (auto* climb = std::get_if<Climb>(&step))
            climb->to = climb->to - lower;
        else if (auto* hold = std::get_if<Hold>(&step))
            hold->at = hold->at - lower;
        else if (auto* drop = std::get_if<Drop>(&step))
            drop->to = drop->to - lower;
        else if (auto* rings = std::get_if<Rings>(&step)) {
            rings->low = rings->low - lower;
            rings->high = rings->high - lower;
        }
    }
}

Hold& growthHold(Plan& plan) {
    return std::get<Hold>(plan.steps[5]);
}

INSTANTIATE_TEST_SUITE_P(
    Cases, BesideAPracticeKiln,
    testing::Values(
        Case{.name = "AsPlanned"}, Case{.name = "InWholeFahrenheit", .rounding_C = 1 / 1.8},
        Case{.name = "SetPointsTenLower",
             .differently = [](Plan& p) { setPointsLower(p, 10); },
             .tolerance = minutes(14)},
        Case{.name = "SetPointsFiveHigher", .differently = [](Plan& p) { setPointsLower(p, -5); }},
        Case{.name = "GrowthHoldLonger", .differently = [](Plan& p) { growthHold(p).length += minutes(25); }},
        Case{.name = "GrowthHoldShorter",
             .differently = [](Plan& p) { growthHold(p).length -= minutes(20); },
             .tolerance = minutes(8)},
        Case{
            .name = "SlowerClimb",
            .differently = [](Plan& p) { std::get<Climb>(p.steps[2]).rate = Rate::fromCelsiusPerHour(200); }},
        Case{.name = "NoDryingHold",
             .differently = [](Plan& p) { p.steps.erase(p.steps.begin() + 1); },
             .meant = {0, 2, 3, 4, 5, 6, 7},
             .tolerance = minutes(15)},
        Case{.name = "NoRings",
             .differently = [](Plan& p) { p.steps.erase(p.steps.begin() + 6); },
             .meant = {0, 1, 2, 3, 4, 5, 7},
             .tolerance = minutes(40)},
        Case{.name = "SwitchedOnLate", .idle = std::chrono::hours(3)},
        Case{.name = "TypedEveryQuarter", .spacing = minutes(15), .rounding_C = 1, .tolerance = minutes(31)}),
    [](const testing::TestParamInfo<Case>& tried) { return tried.param.name; });

TEST(StepFollowerPractice, DrawsNoDipWhereRingsRunLate) {
    // each move takes twice as long as planned
    Plan plan = shortPlan();
    plan.steps = {Hold{celsius(1050), minutes(30), TemperatureDifference::fromCelsius(6)},
                  Rings{3, celsius(1010), minutes(10), celsius(1050), minutes(10)}, Cool{celsius(700), {}}};
    PlanContext context;
    context.start = start;
    context.startTemperature = celsius(1050);
    StepFollower follower(plan, context);
    Curve corners{{start, celsius(1050)}, {start + minutes(32), celsius(1050)}};
    for (int ring = 0; ring < 3; ++ring)
        for (const auto& [after, degrees] : {std::pair{12, 1010.}, {12, 1010.}, {10, 1050.}, {12, 1050.}})
            corners.push_back({corners.back().at + minutes(after), celsius(degrees)});
    corners.push_back({corners.back().at + minutes(60), celsius(700)});
    for (Instant at = start; at < corners.back().at; at += seconds(20))
        follower.add({at, temperatureAt(corners, at)});
    const auto drawn = follower.drawn();
    ASSERT_GT(drawn.size(), 20u);
    const Instant cooling = corners[corners.size() - 2].at;
    int compared = 0;
    for (const auto& point : drawn) {
        if (point.at < cooling - minutes(1)) {
            EXPECT_GT(point.temperature.celsius(), 1005) << inMinutes(point.at - start);
        }
        ++compared;
    }
    EXPECT_GT(compared, 20);
}

TEST(StepFollowerPractice, DrawsAHoldLevelToItsEnd) {
    // the drop is recognised when the kiln has left the hold's temperature already
    Plan plan = shortPlan();
    plan.steps = {Hold{celsius(1050), minutes(30), TemperatureDifference::fromCelsius(6)},
                  Drop{celsius(900), Rate::fromCelsiusPerHour(200)}, Cool{celsius(700), {}}};
    PlanContext context;
    context.start = start;
    context.startTemperature = celsius(1050);
    StepFollower follower(plan, context);
    const Curve corners{
        {start, celsius(1050)}, {start + minutes(40), celsius(1050)}, {start + minutes(70), celsius(950)}};
    for (Instant at = start; at <= corners.back().at; at += seconds(20))
        follower.add({at, temperatureAt(corners, at)});
    ASSERT_EQ(follower.position()->step, 1u);
    const auto drawn = follower.drawn();
    for (const int minute : {5, 15, 25, 35, 39})
        EXPECT_NEAR(temperatureAt(drawn, start + minutes(minute)).celsius(), 1050, 0.1) << minute;
}

} // namespace
} // namespace ringhold
