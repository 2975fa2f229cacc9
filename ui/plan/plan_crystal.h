// The crystal that a plan would draw, if it went as planned.
#pragma once

#include "core/growth/crystal.h"
#include "ui/plan/plan_basis.h"

#include <QString>

#include <optional>

namespace ringhold {

struct PlanCrystal {
    SizeRange radius;
    std::vector<CrystalRing> rings; ///< of the likely crystal, from within
    GrowthRate rate;
    std::string glaze{}; ///< that the rate is of; empty: any
};

/// The planned curve less the probe's offset (carried down with the temperature), by the growth
/// rate of the basis. Nothing where the plan grows none.
std::optional<PlanCrystal> planCrystal(const Plan& plan, const PlannedCurve& planned, const PlanBasis& basis);

/// "about 31 mm across".
QString sizeWords(const PlanCrystal& crystal);
/// "12 to 64 mm by published growth rates; 3 rings, 0.9 to 1.1 mm wide", "27 to 34 mm by the growth of 7
/// pieces of Ice 3".
QString sourceWords(const PlanCrystal& crystal);

} // namespace ringhold
