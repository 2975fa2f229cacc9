// The two statements that BookWriter mostly runs, for it alone.
#pragma once

#include "core/book/book.h"
#include "core/book/sql.h"

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

} // namespace ringhold::sql
