#include "core/book/offsets_refiled.h"

#include "core/book/drawn_firing.h"
#include "core/book/write_sql.h"
#include "core/book/writer.h"
#include "core/report/fired_cones.h"

namespace ringhold {

Result<std::vector<FiledOffset>> refileOffsets(const Book& book, FiringId firing) {
    return sql::together(book, [&](SQLite::Database& database) -> Result<std::vector<FiledOffset>> {
        const auto drawn = drawnFiring(book, firing, {.others = false, .power = false});
        if (!drawn)
            return drawn.error();
        const auto told = offsetsTold(drawn->record, drawn->control);
        sql::run(database, "DELETE FROM filed_offset WHERE firing = ?", firing);
        for (const auto& offset : told)
            if (const Status kept = BookWriter(book).file(offset); !kept)
                return kept.error();
        return told;
    });
}

} // namespace ringhold
