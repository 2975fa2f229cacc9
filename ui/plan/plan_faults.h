// What is wrong with a plan, in words for the potter and in the potter's degrees.
#pragma once

#include "core/cones/cone.h"
#include "core/plan/plan_check.h"

#include <QString>

#include <vector>

namespace ringhold {

class Preferences;

struct ToldFault {
    std::optional<std::size_t> step;
    std::string_view key; ///< of the cell, as in a plan file; may be empty
    QString words;        ///< "set point: below the 1 270 °C that the kiln has by then; this step goes up"
    bool barsReckoning = true; ///< without this the plan has no curve
};

/// All faults of the plan. A cone that the chart does not have is told too; it does not bar reckoning, yet
/// its end can only be assumed.
std::vector<ToldFault> toldFaults(const Plan& plan, ConeType cones, const Preferences& preferences);

/// "Step 3, set point: ..."
QString withItsStep(const ToldFault& fault);

} // namespace ringhold
