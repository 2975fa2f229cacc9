// Photos of ware made small enough for a report.
#pragma once

namespace ringhold {

struct ReportContent;

/// Photos larger than what a thumbnail shows are made smaller; broken ones are left out. Takes some
/// milliseconds a photo; may run in any thread.
void shrinkPhotos(ReportContent& content);

} // namespace ringhold
