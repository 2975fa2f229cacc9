// A firing's report straight out of the book.
#pragma once

#include "core/base/result.h"
#include "core/report/report_content.h"

namespace ringhold {

class Book;

/// All that the book knows of the firing, photos too. notFound: no such firing; unreadable: the book is
/// damaged. Under a tenth of a second for three probes over a day. In the book's thread.
Result<ReportContent> reportFromBook(const Book& book, FiringId firing, const WordStyle& style);

} // namespace ringhold
