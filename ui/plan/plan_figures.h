// What is reckoned from a plan, in words: how long, how much energy, at what cost, and what the kiln cannot
// do.
#pragma once

#include "core/plan/plan_energy.h"
#include "ui/plan/plan_basis.h"

#include <QString>
#include <QStringList>

#include <vector>

namespace ringhold {

class Preferences;

struct PlanFigure {
    QString label;  ///< "Energy"
    QString value;  ///< "71 kWh"
    QString source; ///< where it comes from, and what it is not
};

/// Length, cone down for each cone wait, crystal, energy and cost; `energy` may still be missing.
std::vector<PlanFigure> planFigures(const Plan& plan, const PlannedCurve& planned, const PlanEnergy* energy,
                                    const PlanBasis& basis, const Preferences& preferences);

/// What to think about before firing so: a cone that would not go down, a rate that the kiln has not.
QStringList planWarnings(const Plan& plan, const PlannedCurve& planned, const PlanEnergy* energy,
                         const PlanBasis& basis, const Preferences& preferences);

/// Whether the model kiln says something about that one.
bool hasEnergyModel(const PlanBasis& basis);

} // namespace ringhold
