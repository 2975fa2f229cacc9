#include "core/learn/firing_figures.h"

#include "core/cones/bending.h"
#include "core/watch/curve_parts.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace ringhold {

namespace {

constexpr auto nearPeak = TemperatureDifference::fromCelsius(10);
constexpr auto climbJudged = TemperatureDifference::fromCelsius(100);
constexpr auto usualBand = TemperatureDifference::fromCelsius(6);
constexpr auto lowestGrowth = Temperature::fromCelsius(900);
constexpr auto belowPeak = TemperatureDifference::fromCelsius(30);
constexpr double mostDrift_C_per_h = 15;

auto peakOf(const Curve& curve) {
    return std::ranges::max_element(curve, {}, &CurvePoint::temperature);
}

/// When the straight line between the points is at that temperature.
Instant crossing(const CurvePoint& a, const CurvePoint& b, Temperature level) {
    const double share = (level - a.temperature).celsius() / (b.temperature - a.temperature).celsius();
    return a.at + durationFromSeconds(inSeconds(b.at - a.at) * share);
}

struct Wanted {
    HoldBand band;
    std::optional<Duration> length; ///< where rings follow
};

std::optional<Temperature> goal(const Step& step) {
    if (const auto* climb = std::get_if<Climb>(&step))
        return climb->to;
    if (const auto* wait = std::get_if<ConeWait>(&step))
        return wait->set;
    return std::nullopt;
}

/// The step where growth begins: a hold that is no soak at the top, or rings.
std::optional<std::size_t> growthStep(const Plan& plan) {
    const auto& steps = plan.steps;
    const auto hottest = std::ranges::max_element(steps, {}, goal);
    if (hottest == steps.end() || !goal(*hottest))
        return std::nullopt;
    for (auto step = std::next(hottest); step != steps.end(); ++step) {
        const auto* hold = std::get_if<Hold>(&*step);
        if (std::holds_alternative<Rings>(*step) || (hold && hold->at + nearPeak <= *goal(*hottest)))
            return static_cast<std::size_t>(step - steps.begin());
    }
    return std::nullopt;
}

std::optional<Wanted> wantedHold(const Plan& plan) {
    const auto at = growthStep(plan);
    if (!at)
        return std::nullopt;
    if (const auto* rings = std::get_if<Rings>(&plan.steps[*at]))
        return Wanted{{rings->high, usualBand}, rings->highDwell};
    const auto& hold = std::get<Hold>(plan.steps[*at]);
    const bool ringsFollow =
        *at + 1 < plan.steps.size() && std::holds_alternative<Rings>(plan.steps[*at + 1]);
    return Wanted{{hold.at, hold.band > TemperatureDifference() ? hold.band : usualBand},
                  ringsFollow ? std::optional(hold.length) : std::nullopt};
}

std::optional<HoldStatistics> found(const Curve& cooling, const Wanted& wanted) {
    auto holds = findHolds(cooling, wanted.band);
    if (holds.empty())
        return std::nullopt;
    const auto& hold = holds.front();
    if (!wanted.length || hold.end - hold.start <= *wanted.length || *wanted.length <= Duration(0))
        return hold;
    return judgeHold(cooling, wanted.band, {hold.start, hold.start + *wanted.length});
}

/// How long the curve was in each degree, from `low` up.
std::vector<double> secondsByDegree(const Curve& curve, Temperature low, Temperature high) {
    std::vector<double> seconds(static_cast<std::size_t>((high - low).celsius()));
    for (std::size_t i = 1; i < curve.size(); ++i) {
        const double a = (curve[i - 1].temperature - low).celsius();
        const double b = (curve[i].temperature - low).celsius();
        const double first = std::floor(std::min(a, b));
        const double last = std::floor(std::max(a, b));
        const double each = inSeconds(curve[i].at - curve[i - 1].at) / (last - first + 1);
        for (double degree = std::max(first, 0.0);
             degree <= last && degree < static_cast<double>(seconds.size()); ++degree)
            seconds[static_cast<std::size_t>(degree)] += each;
    }
    return seconds;
}

/// The middle of the band where the curve was longest.
std::optional<Temperature> longestAt(const Curve& curve, Temperature low, Temperature high) {
    const auto width = static_cast<std::size_t>(2 * usualBand.celsius());
    if ((high - low).celsius() < static_cast<double>(width))
        return std::nullopt;
    const auto seconds = secondsByDegree(curve, low, high);
    std::size_t best = 0;
    double most = 0;
    for (std::size_t start = 0; start + width <= seconds.size(); ++start) {
        const auto from = seconds.begin() + static_cast<std::ptrdiff_t>(start);
        const double sum = std::accumulate(from, from + static_cast<std::ptrdiff_t>(width), 0.0);
        if (sum > most) {
            most = sum;
            best = start;
        }
    }
    if (most <= 0)
        return std::nullopt;
    double weighted = 0;
    for (std::size_t degree = best; degree < best + width; ++degree)
        weighted += seconds[degree] * (static_cast<double>(degree) + 0.5);
    return low + TemperatureDifference::fromCelsius(weighted / most);
}

std::optional<HoldStatistics> foundWithoutPlan(const Curve& cooling) {
    const auto at = longestAt(cooling, lowestGrowth, cooling.front().temperature - belowPeak);
    if (!at)
        return std::nullopt;
    auto holds = findHolds(cooling, {*at, usualBand});
    std::erase_if(holds, [](const HoldStatistics& hold) {
        return std::abs(hold.drift.rate.celsiusPerHour()) > mostDrift_C_per_h;
    });
    const auto longest = std::ranges::max_element(holds, {}, &HoldStatistics::minutes);
    return longest == holds.end() ? std::nullopt : std::optional(*longest);
}

} // namespace

std::optional<std::size_t> growthHoldStep(const Plan& plan) {
    const auto at = growthStep(plan);
    return at && std::holds_alternative<Hold>(plan.steps[*at]) ? at : std::nullopt;
}

std::string firingCone(const FiringRecord& record) {
    if (record.firing.plan)
        for (auto step = record.firing.plan->steps.rbegin(); step != record.firing.plan->steps.rend(); ++step)
            if (const auto* wait = std::get_if<ConeWait>(&*step))
                return wait->cone;
    for (const auto& pack : record.packs)
        if (!pack.cones.empty())
            return pack.cones[pack.cones.size() > 1 ? 1 : 0];
    return {};
}

std::optional<Instant> coneDownSeen(const FiringRecord& record) {
    const std::string cone = firingCone(record);
    std::optional<Instant> seen;
    for (const auto& look : record.looks)
        if (look.cone == cone && look.hour >= hourDown && !look.cold && !look.struck)
            seen = std::min(seen.value_or(look.at), look.at);
    return seen;
}

std::optional<Rate> lastClimbOf(const Curve& control) {
    const auto peak = peakOf(control);
    if (peak == control.end())
        return std::nullopt;
    const auto low = peak->temperature - climbJudged;
    auto above = peak;
    while (above != control.begin() && std::prev(above)->temperature >= low)
        --above;
    if (above == control.begin())
        return std::nullopt;
    const Instant left = crossing(*std::prev(above), *above, low);
    const auto high = peak->temperature - nearPeak;
    const auto there =
        std::find_if(above, control.end(), [&](const CurvePoint& p) { return p.temperature >= high; });
    const Instant arrived = crossing(*std::prev(there), *there, high);
    if (arrived <= left)
        return std::nullopt;
    return Rate::fromCelsiusPerHour((climbJudged - nearPeak).celsius() / inHours(arrived - left));
}

std::optional<HoldStatistics> growthHoldOf(const std::optional<Plan>& plan, const Curve& control) {
    const auto peak = peakOf(control);
    if (peak == control.end())
        return std::nullopt;
    const Curve cooling(peak, control.end());
    if (!plan)
        return foundWithoutPlan(cooling);
    const auto wanted = wantedHold(*plan);
    return wanted ? found(cooling, *wanted) : std::nullopt;
}

FiringFigures figuresOf(const FiringRecord& record, const Curve& control) {
    FiringFigures figures;
    figures.firingCone = firingCone(record);
    figures.coneDown = coneDownSeen(record);
    const auto peak = peakOf(control);
    if (peak == control.end())
        return figures;
    figures.peak = *peak;
    figures.nearPeak = totalLength(stretchesWithin(control, peak->temperature - nearPeak, peak->temperature));
    figures.lastClimb = lastClimbOf(control);
    figures.growthHold = growthHoldOf(record.firing.plan, control);
    return figures;
}

} // namespace ringhold
