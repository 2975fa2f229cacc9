// Lays a report out on pages.
#pragma once

#include "ui/report/page_flow.h"

namespace ringhold {

struct ReportContent;

/// One to three pages, with photos four. A long log is set smaller, in two columns; if that is not enough,
/// the readings by hand are left out of it, which the page says. A log longer than even that takes the pages
/// it needs.
PageDocument layOutReport(const ReportContent& content, Paper paper);

} // namespace ringhold
