#include "core/report/report_holds.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr Duration lookBack = std::chrono::minutes(30); // a follower may notice a hold late
constexpr double leastCrystal_mm = 0.05;                // of radius

const StepRun* runOf(const PlanFollowed& followed, std::size_t step) {
    const auto run = std::ranges::find(followed.runs, step, &StepRun::step);
    return run == followed.runs.end() ? nullptr : &*run;
}

RingLevels levelsOf(const Rings& rings) {
    return {rings.high, rings.low};
}

std::vector<Ring> ringsFrom(const Curve& control, Instant start, const Rings& step) {
    return countRings(cut(control, std::min(start, control.back().at), control.back().at), levelsOf(step));
}

/// When rings that follow the hold begin; nothing if none do.
std::optional<Instant> firstRing(const Plan& plan, std::size_t hold, Instant from, const Curve& control) {
    const auto* rings = hold + 1 < plan.steps.size() ? std::get_if<Rings>(&plan.steps[hold + 1]) : nullptr;
    if (!rings)
        return std::nullopt;
    const auto counted = ringsFrom(control, from, *rings);
    return counted.empty() ? std::nullopt : std::optional(counted.front().low.start);
}

std::optional<HoldStatistics> findHold(const Plan& plan, std::size_t step, const HoldBand& band,
                                       const StepRun& run, const Curve& control) {
    const Instant from = std::max(control.front().at, run.start - lookBack);
    const Instant to = firstRing(plan, step, run.levelStart, control).value_or(control.back().at);
    if (to <= from)
        return std::nullopt;
    for (auto& hold : findHolds(cut(control, from, to), band))
        if (hold.end > run.levelStart)
            return std::move(hold);
    return std::nullopt;
}

const Excursion* longestExcursion(const HoldStatistics& hold) {
    const auto longest =
        std::ranges::max_element(hold.excursions, {}, [](const Excursion& e) { return e.end - e.start; });
    return longest == hold.excursions.end() ? nullptr : &*longest;
}

} // namespace

std::vector<ReportedHold> holdsOf(const Plan& plan, const PlanFollowed& followed, const Curve& control) {
    std::vector<ReportedHold> holds;
    for (std::size_t step = 0; step < plan.steps.size(); ++step) {
        const auto* hold = std::get_if<Hold>(&plan.steps[step]);
        if (!hold)
            continue;
        ReportedHold told{{hold->at, hold->band}, hold->length, {}, {}};
        if (const StepRun* run = runOf(followed, step))
            told.found = findHold(plan, step, told.band, *run, control);
        holds.push_back(std::move(told));
    }
    return holds;
}

std::vector<ReportedRings> ringsOf(const Plan& plan, const PlanFollowed& followed, const Curve& control) {
    std::vector<ReportedRings> all;
    for (std::size_t step = 0; step < plan.steps.size(); ++step) {
        const auto* rings = std::get_if<Rings>(&plan.steps[step]);
        if (!rings)
            continue;
        auto& told = all.emplace_back(ReportedRings{levelsOf(*rings), rings->count, {}});
        // from the step before: its fall to the first low belongs to the first ring
        const StepRun* run = runOf(followed, step);
        const StepRun* before = step > 0 ? runOf(followed, step - 1) : run;
        if (run)
            for (const Ring& ring : ringsFrom(control, before ? before->levelStart : run->start, *rings))
                told.rings.push_back({ring, {}});
    }
    return all;
}

std::vector<ReportedBand> bandsOf(const std::vector<ReportedHold>& holds) {
    std::vector<ReportedBand> bands;
    for (const auto& hold : holds)
        if (hold.found)
            bands.push_back({{hold.found->start, hold.found->end}, hold.band});
    return bands;
}

std::optional<ReportedCrystal> drawCrystal(const Curve& control, const GrowthRate& rate,
                                           TemperatureDifference offset, std::vector<ReportedHold>& holds,
                                           std::vector<ReportedRings>& rings) {
    Curve felt = control;
    for (auto& point : felt)
        point.temperature = point.temperature - offset;
    const CrystalGrowth growth(felt, rate);
    if (growth.radius().likely_mm < leastCrystal_mm)
        return std::nullopt;
    std::vector<Ring> counted;
    for (const auto& step : rings)
        for (const auto& ring : step.rings)
            counted.push_back(ring.ring);
    auto drawn = growth.rings(counted);
    auto next = drawn.begin();
    for (auto& step : rings)
        for (auto& ring : step.rings)
            ring.drawn = *next++;
    for (auto& hold : holds) {
        const Excursion* longest = hold.found ? longestExcursion(*hold.found) : nullptr;
        if (longest && longest->start > *growth.began())
            hold.excursionRadius = growth.radiusAt(longest->start + (longest->end - longest->start) / 2);
    }
    return ReportedCrystal{growth.radius(), std::move(drawn), rate, *growth.began(), offset};
}

} // namespace ringhold
