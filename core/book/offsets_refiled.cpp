#include "core/book/offsets_refiled.h"

#include "core/book/reader.h"
#include "core/book/write_sql.h"
#include "core/book/writer.h"
#include "core/report/fired_cones.h"
#include "core/report/report_curves.h"

namespace ringhold {

Result<std::vector<FiledOffset>> refileOffsets(const Book& book, FiringId firing) {
    return sql::together(book, [&](SQLite::Database& database) -> Result<std::vector<FiledOffset>> {
        const auto record = BookReader(book).whole(firing); // its readings say which probe is in control
        if (!record)
            return record.error();
        const auto control = controlChannel(*record);
        const auto told = offsetsTold(*record, control ? curveOf(*record, *control) : Curve());
        sql::run(database, "DELETE FROM filed_offset WHERE firing = ?", firing);
        for (const auto& offset : told)
            if (const Status kept = BookWriter(book).file(offset); !kept)
                return kept.error();
        return told;
    });
}

} // namespace ringhold
