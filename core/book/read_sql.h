// The queries that whoever reads in the book mostly runs, for core/book alone.
#pragma once

#include "core/book/book.h"
#include "core/book/rows.h"

namespace ringhold::sql {

/// Runs a query in one view of the book.
template <class Query>
auto read(const Book& book, Query&& query) -> Result<std::invoke_result_t<Query, SQLite::Database&>> {
    using Answer = Result<std::invoke_result_t<Query, SQLite::Database&>>;
    return guarded(book.file(), [&]() -> Answer {
        Savepoint view(book.database());
        Answer answer = query(book.database());
        view.release();
        return answer;
    });
}

template <class Record, class... Values>
Result<std::vector<Record>> readAll(const Book& book, const rows::Form<Record>& form, const char* where,
                                    const Values&... values) {
    return read(book, [&](SQLite::Database& d) { return rows::all(d, form, where, values...); });
}

template <class Record, class... Values>
Result<std::optional<Record>> readFirst(const Book& book, const rows::Form<Record>& form, const char* where,
                                        const Values&... values) {
    return read(book, [&](SQLite::Database& d) { return rows::first(d, form, where, values...); });
}

} // namespace ringhold::sql
