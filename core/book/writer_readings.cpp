// The part of BookWriter that writes readings, and never overwrites one.
#include "core/book/reading_statement.h"
#include "core/book/write_sql.h"
#include "core/book/writer.h"

namespace ringhold {

namespace {

/// A peak whose reading was struck is looked for again.
void findPeak(SQLite::Database& database, ChannelId channel) {
    sql::run(database, R"sql(
        UPDATE channel SET peak = (SELECT max(value) FROM reading WHERE channel = ?1 AND NOT struck)
        WHERE id = ?1 AND peak IS NULL)sql",
             channel);
}

std::string nameOf(ChannelId channel, Instant first, Instant last) {
    const std::string name =
        "channel " + std::to_string(static_cast<std::int64_t>(channel)) + " at " + formatIso8601(first);
    return first == last ? name : name + " to " + formatIso8601(last);
}

std::optional<FiringId> firingOf(SQLite::Database& database, ChannelId channel) {
    SQLite::Statement statement(database, "SELECT firing FROM channel WHERE id = ?");
    sql::bindAll(statement, channel);
    return statement.executeStep() ? std::optional(sql::idIn<FiringId>(statement.getColumn(0)))
                                   : std::nullopt;
}

/// Runs a statement that marks readings of a channel (?1) between two instants (?2, ?3), all that goes with
/// it, and leaves word of it.
Result<std::size_t> markReadings(BookWriter& writer, const Book& book, const char* text, const char* kind,
                                 ChannelId channel, Instant first, Instant last, Instant when) {
    return sql::guarded(book.file(), [&]() -> Result<std::size_t> {
        auto& database = book.database();
        sql::Savepoint savepoint(database);
        const int marked = sql::run(database, text, channel, first, last);
        if (marked == 0)
            return sql::missing(book, "there is no such reading");
        findPeak(database, channel);
        const LogEvent event{firingOf(database, channel), when, kind, nameOf(channel, first, last)};
        if (const Status told = writer.add(event); !told)
            return told.error();
        savepoint.release();
        return static_cast<std::size_t>(marked);
    });
}

constexpr const char* strikeThem =
    "UPDATE reading SET struck = 1 WHERE channel = ?1 AND at_ms BETWEEN ?2 AND ?3 AND NOT struck";

/// Of several lines of one instant only the last: the others were corrected by it.
constexpr const char* restoreThem = R"sql(
    UPDATE reading SET struck = 0 WHERE channel = ?1 AND at_ms BETWEEN ?2 AND ?3 AND struck AND seq =
        (SELECT max(seq) FROM reading AS same WHERE same.channel = ?1 AND same.at_ms = reading.at_ms))sql";

} // namespace

Result<std::size_t> BookWriter::add(std::span<const Reading> readings) {
    return sql::guarded(m_book->file(), [&]() -> Result<std::size_t> {
        auto& database = m_book->database();
        sql::Savepoint savepoint(database);
        ReadingStatement statement(database);
        std::size_t added = 0;
        for (const auto& reading : readings)
            added += statement.add(reading) ? 1 : 0;
        savepoint.release();
        return added;
    });
}

Result<std::size_t> BookWriter::strikeReadings(ChannelId channel, Instant first, Instant last, Instant when) {
    return markReadings(*this, *m_book, strikeThem, "struck", channel, first, last, when);
}

Result<std::size_t> BookWriter::restoreReadings(ChannelId channel, Instant first, Instant last,
                                                Instant when) {
    return markReadings(*this, *m_book, restoreThem, "restored", channel, first, last, when);
}

Status BookWriter::correct(const Reading& now, Instant when) {
    return sql::guarded(m_book->file(), [&]() -> Status {
        auto& database = m_book->database();
        sql::Savepoint savepoint(database);
        const auto struck =
            markReadings(*this, *m_book, strikeThem, "corrected", now.channel, now.at, now.at, when);
        if (!struck)
            return struck.error();
        sql::run(database, R"sql(
            INSERT INTO reading (channel, at_ms, seq, value, by_hand, struck)
            SELECT ?1, ?2, max(seq) + 1, ?3, 1, 0 FROM reading WHERE channel = ?1 AND at_ms = ?2)sql",
                 now.channel, now.at, now.value);
        savepoint.release();
        return {};
    });
}

} // namespace ringhold
