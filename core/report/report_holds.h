// The holds and growth rings that a firing's plan meant, as its curve shows them.
#pragma once

#include "core/growth/crystal.h"
#include "core/report/report_content.h"
#include "core/report/report_curves.h"

#include <vector>

namespace ringhold {

/// One entry for each hold of the plan, in its order. A hold is looked for from where the kiln came to the
/// step, and ends at the latest where the first ring of a rings step after it begins.
std::vector<ReportedHold> holdsOf(const Plan& plan, const PlanFollowed& followed, const Curve& control);

/// One entry for each rings step of the plan; the rings are counted in the curve from that step on.
std::vector<ReportedRings> ringsOf(const Plan& plan, const PlanFollowed& followed, const Curve& control);

/// The bands of the holds that were found, for the curve's picture.
std::vector<ReportedBand> bandsOf(const std::vector<ReportedHold>& holds);

/// The crystal of a curve; `control` as the probe read it. Sets the radii of the holds' excursions and of the
/// rings. Nothing when there was no growth worth a tenth of a millimetre.
std::optional<ReportedCrystal> drawCrystal(const Curve& control, const GrowthRate& rate,
                                           TemperatureDifference offset, std::vector<ReportedHold>& holds,
                                           std::vector<ReportedRings>& rings);

} // namespace ringhold
