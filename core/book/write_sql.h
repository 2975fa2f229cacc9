// The statements that whoever writes in the book mostly runs, for core/book alone.
#pragma once

#include "core/book/book.h"
#include "core/book/sql.h"
#include "core/firing/records.h"

#include <string>

namespace ringhold::sql {

/// One INSERT; gives the new row's id.
template <Id T, class... Values>
Result<T> insert(const Book& book, const char* text, const Values&... values) {
    return guarded(book.file(), [&]() -> Result<T> {
        run(book.database(), text, values...);
        return static_cast<T>(book.database().getLastInsertRowid());
    });
}

inline Error missing(const Book& book, const std::string& what) {
    return {ErrorKind::notFound, what, book.file().string()};
}

/// One statement that must find its row.
template <class... Values>
Status update(const Book& book, const char* text, const Values&... values) {
    return guarded(book.file(), [&]() -> Status {
        if (run(book.database(), text, values...) > 0)
            return {};
        return missing(book, "the book has no such line");
    });
}

/// Puts the firing's words, as they are now, into the index that is searched.
inline void reword(SQLite::Database& database, FiringId firing) {
    run(database,
        "INSERT OR REPLACE INTO words (rowid, text) SELECT firing, text FROM firing_words WHERE firing = ?",
        firing);
}

/// The firing that a piece is in, if there is such a piece.
inline std::optional<FiringId> firingOf(SQLite::Database& database, PieceId piece) {
    SQLite::Statement firing(database, "SELECT firing FROM piece WHERE id = ?");
    bindAll(firing, piece);
    return firing.executeStep() ? std::optional(idIn<FiringId>(firing.getColumn(0))) : std::nullopt;
}

inline void reword(SQLite::Database& database, std::optional<FiringId> firing) {
    if (firing)
        reword(database, *firing);
}

/// Work that gives a Result or Status and counts as a whole: what it wrote is rolled back unless it succeeds.
template <class Work>
auto together(const Book& book, Work&& work) -> std::invoke_result_t<Work, SQLite::Database&> {
    return guarded(book.file(), [&] {
        Savepoint savepoint(book.database());
        auto done = work(book.database());
        if (done)
            savepoint.release();
        return done;
    });
}

} // namespace ringhold::sql
