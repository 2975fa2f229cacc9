#include "core/book/reading_statement.h"

namespace ringhold {

ReadingStatement::ReadingStatement(SQLite::Database& database)
    : m_statement(database, R"sql(
        INSERT INTO reading (channel, at_ms, seq, value, by_hand, struck)
        SELECT ?1, ?2, (SELECT ifnull(max(seq) + 1, 0) FROM reading WHERE channel = ?1 AND at_ms = ?2), ?3, ?4, ?5
        WHERE NOT EXISTS
            (SELECT 1 FROM reading WHERE channel = ?1 AND at_ms = ?2 AND value = ?3 AND by_hand = ?4))sql") {}

bool ReadingStatement::add(const Reading& reading) {
    m_statement
        .tryReset(); // its result is that of the step before: a refused reading must not refuse the next
    sql::bindAll(m_statement, reading.channel, reading.at, reading.value, reading.origin == Origin::hand,
                 reading.struck);
    return m_statement.exec() > 0;
}

} // namespace ringhold
