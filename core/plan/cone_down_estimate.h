// The planned end of a cone wait, by the heat-work law of its cone.
#pragma once

#include "core/cones/cone_table.h"
#include "core/plan/planned_curve.h"

namespace ringhold {

/// Whether the table has every cone that the plan waits for: badInput names the first step whose cone it has
/// not.
Status checkCones(const Plan& plan, const ConeTable& table, ConeType type = ConeType::selfSupporting);

/// When W reaches 1 on the curve, `probeOffset` being what the probe reads above what the cones feel. One
/// number without an interval: for planning, not for telling a potter when to look. The table must have the
/// cone and outlive the estimate.
ConeDownEstimate coneDownByHeatWork(const ConeTable& table, ConeType type = ConeType::selfSupporting,
                                    TemperatureDifference probeOffset = {});

} // namespace ringhold
