// What the forecast said of a firing's cones while there was still time to act on it.
#pragma once

#include "core/firing/firing_record.h"
#include "core/report/report_content.h"

#include <vector>

namespace ringhold {

/// For each cone that the plan waits for (without such a plan: each cone) and that a look found down: what
/// was told an hour before, by the readings and looks until then, the plan followed. Nothing for a cone whose
/// pack the model does not know. Some tens of milliseconds a cone.
std::vector<ReportedForecast> forecastsTold(const FiringRecord& record, const Curve& control,
                                            const std::vector<FiledOffset>& history,
                                            const std::vector<ReportedPack>& packs);

/// What the firing filed for later ones, with the labels of its probes.
std::vector<ReportedFiled> offsetsFiled(const FiringRecord& record);

} // namespace ringhold
