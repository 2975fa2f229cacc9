// Makes a firing's report.
#pragma once

#include "core/report/report_content.h"

#include <vector>

namespace ringhold {

/// What a report takes beside the firing itself.
struct ReportContext {
    WordStyle style;
    std::vector<FiledOffset>
        history; ///< of the kiln, in any order; what this and later firings told is left out
    std::vector<AlarmRecord> alarms; ///< of this firing
    std::vector<LogEvent> events;    ///< of this firing
    GrowthRate growth = publishedGrowthRate();
};

/// Any record has a report: what it lacks is left out. Struck lines count for nothing but are in the log. A
/// few milliseconds per thousand readings, most of it the cones' model.
ReportContent makeReport(const FiringRecord& record, const ReportContext& context = {});

} // namespace ringhold
