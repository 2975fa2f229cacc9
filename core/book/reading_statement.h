// How a reading gets into the book, for the writer and the journal.
#pragma once

#include "core/book/sql.h"
#include "core/firing/records.h"

namespace ringhold {

/// Prepared once, run for many readings.
class ReadingStatement {
  public:
    explicit ReadingStatement(SQLite::Database& database);
    /// Adds the reading after those of the same instant; false when the book has it already. Throws
    /// SQLite::Exception.
    bool add(const Reading& reading);

  private:
    SQLite::Statement m_statement;
};

} // namespace ringhold
