#include "core/learn/growth_marks.h"

#include "core/learn/firing_figures.h"
#include "core/watch/curve_parts.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr Duration shortestSag = std::chrono::minutes(2);
constexpr double usualRadiusSd_mm = 0.3;

Curve feltBy(const Curve& cooling, const OffsetPrior& offset, Temperature offsetAt) {
    Curve felt = cooling;
    for (auto& point : felt)
        point.temperature = point.temperature - carriedTo(point.temperature, offset, offsetAt).mean;
    return felt;
}

std::vector<Ring> ringsOf(const Plan& plan, const Curve& cooling) {
    std::vector<Ring> all;
    for (const auto& step : plan.steps)
        if (const auto* rings = std::get_if<Rings>(&step)) {
            const auto counted = countRings(cooling, {rings->high, rings->low});
            all.insert(all.end(), counted.begin(), counted.end());
        }
    std::ranges::sort(all, {}, turnOf);
    return all;
}

GrowthSag sagOf(const Excursion& excursion, const HoldStatistics& hold, const Curve& curve) {
    GrowthSag sag{excursion.start, excursion.peak - hold.mean, excursion.end - excursion.start};
    double farthest = -1;
    for (const auto& point : curve) {
        const double off = std::abs((point.temperature - hold.mean).celsius());
        if (point.at >= excursion.start && point.at <= excursion.end && off > farthest) {
            farthest = off;
            sag.at = point.at;
        }
    }
    return sag;
}

std::vector<GrowthSag> sagsOf(const HoldStatistics& hold, const Curve& curve) {
    std::vector<GrowthSag> sags;
    for (const auto& excursion : hold.excursions)
        if (excursion.end - excursion.start >= shortestSag)
            sags.push_back(sagOf(excursion, hold, curve));
    std::ranges::stable_sort(sags, std::greater(),
                             [](const GrowthSag& sag) { return std::abs(sag.depth.celsius()); });
    sags.resize(std::min(sags.size(), mostSagsAsked));
    std::ranges::sort(sags, {}, &GrowthSag::at);
    return sags;
}

} // namespace

Instant turnOf(const Ring& ring) {
    return ring.low.start + ring.low.length;
}

GrowthMarks growthMarksOf(const std::optional<Plan>& plan, const Curve& control, const OffsetPrior& offset,
                          Temperature offsetAt) {
    GrowthMarks marks;
    const auto peak = std::ranges::max_element(control, {}, &CurvePoint::temperature);
    if (peak == control.end())
        return marks;
    const Curve cooling(peak, control.end());
    marks.felt = feltBy(cooling, offset, offsetAt);
    const auto hold = growthHoldOf(plan, control);
    marks.offsetSd_C =
        carriedTo(hold ? hold->mean : publishedGrowthRate().window.best, offset, offsetAt).sd.celsius();
    if (plan)
        marks.rings = ringsOf(*plan, cooling);
    if (hold)
        marks.sags = sagsOf(*hold, cooling);
    return marks;
}

std::optional<MeasuredCrystal> measuredCrystal(const GrowthMarks& marks,
                                               const std::optional<double>& largest_mm,
                                               std::span<const RingRadius> radii) {
    MeasuredCrystal crystal;
    if (largest_mm && *largest_mm > 0)
        crystal.radius_mm = *largest_mm / 2;
    double squares = 0;
    for (const auto& radius : radii) {
        const auto ring = static_cast<std::size_t>(radius.ring);
        if (radius.ring < 0 || ring >= marks.rings.size() || !(radius.radius_mm > 0))
            continue;
        crystal.rings.push_back({turnOf(marks.rings[ring]), radius.radius_mm});
        const double sd = radius.sd_mm > 0 ? radius.sd_mm : usualRadiusSd_mm;
        squares += sd * sd;
    }
    if (!crystal.rings.empty())
        crystal.sd_mm = std::sqrt(squares / static_cast<double>(crystal.rings.size()));
    return crystal.radius_mm || !crystal.rings.empty() ? std::optional(crystal) : std::nullopt;
}

std::optional<double> sagDepth_C(const GrowthMarks& marks, const SagSeen& answer) {
    if (answer.seen == SagSight::unsure)
        return std::nullopt;
    for (const auto& sag : marks.sags)
        if (answer.at >= sag.at - sag.length && answer.at <= sag.at + sag.length)
            return std::abs(sag.depth.celsius());
    return std::nullopt;
}

} // namespace ringhold
