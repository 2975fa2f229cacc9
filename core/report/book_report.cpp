#include "core/report/book_report.h"

#include "core/book/book.h"
#include "core/book/glaze_evidence.h"
#include "core/book/reader.h"
#include "core/report/make_report.h"

namespace ringhold {

Result<ReportContent> reportFromBook(const Book& book, FiringId firing, const WordStyle& style) {
    const BookReader reader(book);
    const auto record = reader.whole(firing, Pictures::with);
    if (!record)
        return record.error();
    const auto history = reader.filedOffsets(record->kiln.id);
    if (!history)
        return history.error();
    const auto alarms = reader.alarms(firing);
    if (!alarms)
        return alarms.error();
    const auto events = reader.events(firing);
    if (!events)
        return events.error();
    const auto growth = growthRateFor(book, record->pieces);
    if (!growth)
        return growth.error();
    return makeReport(
        *record,
        {.style = style, .history = *history, .alarms = *alarms, .events = *events, .growth = *growth});
}

} // namespace ringhold
