// Small helpers between SQLiteCpp and the records, for core/book alone.
#pragma once

#include "core/base/result.h"
#include "core/units/time.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>

namespace ringhold::sql {

/// What SQLite threw, as an Error that names the book. A named CHECK constraint is its own explanation.
Error errorFrom(const SQLite::Exception& e, const std::filesystem::path& file);

/// Runs work that gives a Result or Status; what SQLite throws in it becomes an Error.
template <class Work>
auto guarded(const std::filesystem::path& file, Work&& work) -> std::invoke_result_t<Work> {
    try {
        return work();
    } catch (const SQLite::Exception& e) {
        return errorFrom(e, file);
    } catch (const std::exception& e) {
        return Error{ErrorKind::failed, e.what(), file.string()};
    }
}

inline std::int64_t milliseconds(Instant at) {
    return at.time_since_epoch().count();
}

template <class T>
concept Id = std::is_enum_v<T> && std::is_same_v<std::underlying_type_t<T>, std::int64_t>;

inline void bindAt(SQLite::Statement& s, int i, double v) {
    s.bind(i, v);
}
inline void bindAt(SQLite::Statement& s, int i, bool v) {
    s.bind(i, v ? 1 : 0);
}
inline void bindAt(SQLite::Statement& s, int i, int v) {
    s.bind(i, v);
}
inline void bindAt(SQLite::Statement& s, int i, std::int64_t v) {
    s.bind(i, v);
}
inline void bindAt(SQLite::Statement& s, int i, Instant v) {
    s.bind(i, milliseconds(v));
}
inline void bindAt(SQLite::Statement& s, int i, std::string_view v) {
    s.bind(i, std::string(v));
}
inline void bindAt(SQLite::Statement& s, int i, const std::string& v) {
    s.bind(i, v);
}
/// Bytes that are no text.
struct Blob {
    std::string_view bytes;
};
inline void bindAt(SQLite::Statement& s, int i, Blob v) {
    s.bind(i, static_cast<const void*>(v.bytes.data()), static_cast<int>(v.bytes.size()));
}
template <Id T>
void bindAt(SQLite::Statement& s, int i, T v) {
    s.bind(i, static_cast<std::int64_t>(v));
}
template <class T>
void bindAt(SQLite::Statement& s, int i, const std::optional<T>& v) {
    if (v)
        bindAt(s, i, *v);
    else
        s.bind(i);
}

/// Binds the values to the parameters 1, 2, 3 ... of a statement that is ready to run.
template <class... Values>
void bindAll(SQLite::Statement& statement, const Values&... values) {
    int i = 0;
    (bindAt(statement, ++i, values), ...);
}

/// Runs one statement with those values; gives the number of rows it changed.
template <class... Values>
int run(SQLite::Database& database, const char* text, const Values&... values) {
    SQLite::Statement statement(database, text);
    bindAll(statement, values...);
    return statement.exec();
}

template <Id T>
T idIn(const SQLite::Column& column) {
    return static_cast<T>(column.getInt64());
}
inline Instant instantIn(const SQLite::Column& column) {
    return Instant(Duration(column.getInt64()));
}
inline bool flagIn(const SQLite::Column& column) {
    return column.getInt() != 0;
}
inline std::optional<Instant> maybeInstantIn(const SQLite::Column& column) {
    return column.isNull() ? std::nullopt : std::optional(instantIn(column));
}
inline std::optional<double> maybeDoubleIn(const SQLite::Column& column) {
    return column.isNull() ? std::nullopt : std::optional(column.getDouble());
}

/// Several statements that count together or not at all, also inside a transaction. Rolls back unless
/// released. (SQLiteCpp's own leaves the transaction open when it rolls back.)
class Savepoint {
  public:
    explicit Savepoint(SQLite::Database& database) : m_database(database) {
        m_database.exec("SAVEPOINT together");
    }
    ~Savepoint() {
        if (m_released)
            return;
        m_database.tryExec("ROLLBACK TO together");
        m_database.tryExec("RELEASE together");
    }
    Savepoint(const Savepoint&) = delete;
    Savepoint& operator=(const Savepoint&) = delete;
    void release() {
        m_database.exec("RELEASE together");
        m_released = true;
    }

  private:
    SQLite::Database& m_database;
    bool m_released = false;
};

/// The single value of a query that gives exactly one.
inline std::int64_t number(SQLite::Database& database, const char* query) {
    return database.execAndGet(query).getInt64();
}

} // namespace ringhold::sql
