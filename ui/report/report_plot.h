// The curve of a firing over its plan, as a report shows it.
#pragma once

#include "ui/report/page_flow.h"

namespace ringhold {

struct ReportContent;

/// With axes, bands, the cones where they were seen down, alarms and a key. Vectors only; pens in points.
PageBlock curveBlock(const ReportContent& content, double width, double height);

} // namespace ringhold
