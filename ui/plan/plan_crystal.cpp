#include "ui/plan/plan_crystal.h"

#include "ui/plan/plan_words.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double smallestShown_mm = 0.5;

/// What the glaze feels when the probe reads the curve: the offset shrinks with the temperature in °C.
Curve feltBy(const PlannedCurve& planned, TemperatureDifference offset) {
    const double top_C = std::ranges::max(planned.curve, {}, &CurvePoint::temperature).temperature.celsius();
    Curve felt = planned.curve;
    for (auto& point : felt)
        point.temperature = point.temperature - offset * (point.temperature.celsius() / top_C);
    return felt;
}

std::vector<Ring> ringsOf(const Plan& plan, const PlannedCurve& planned) {
    std::vector<Ring> all;
    for (const auto& step : planned.steps) {
        const auto* rings = std::get_if<Rings>(&plan.steps[step.step]);
        if (!rings)
            continue;
        const auto counted = countRings(planned.curve, {rings->high, rings->low});
        std::ranges::copy_if(counted, std::back_inserter(all), [&](const Ring& r) {
            return r.low.start >= step.start && r.low.start < step.end;
        });
    }
    return all;
}

QString millimetres(double mm, int decimals) {
    return QString::number(mm, 'f', decimals);
}

QString basisWords(const PlanCrystal& crystal) {
    if (crystal.rate.basis != GrowthBasis::measured)
        return PlanWords::tr("published growth rates");
    return PlanWords::tr("the growth of %1 pieces of %2")
        .arg(crystal.rate.pieces)
        .arg(QString::fromStdString(crystal.glaze));
}

} // namespace

std::optional<PlanCrystal> planCrystal(const Plan& plan, const PlannedCurve& planned,
                                       const PlanBasis& basis) {
    const CrystalGrowth growth(feltBy(planned, basis.offset.prior.mean), basis.growth);
    if (growth.radius().likely_mm * 2 < smallestShown_mm)
        return std::nullopt;
    return PlanCrystal{growth.radius(), growth.rings(ringsOf(plan, planned)), growth.rate(), basis.glaze};
}

QString sizeWords(const PlanCrystal& crystal) {
    return PlanWords::tr("about %1\u202fmm across").arg(millimetres(2 * crystal.radius.likely_mm, 0));
}

QString sourceWords(const PlanCrystal& crystal) {
    QString words = PlanWords::tr("%1 to %2\u202fmm by %3")
                        .arg(millimetres(2 * crystal.radius.low_mm, 0),
                             millimetres(2 * crystal.radius.high_mm, 0), basisWords(crystal));
    if (crystal.rings.empty())
        return words;
    const auto [narrow, wide] = std::ranges::minmax(crystal.rings, {}, &CrystalRing::width_mm);
    return words + PlanWords::tr("; %1 %2 about %3 to %4\u202fmm wide")
                       .arg(crystal.rings.size())
                       .arg(crystal.rings.size() == 1 ? PlanWords::tr("ring") : PlanWords::tr("rings"))
                       .arg(millimetres(narrow.width_mm(), 1), millimetres(wide.width_mm(), 1));
}

} // namespace ringhold
