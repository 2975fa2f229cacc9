#include "core/book/reading_store.h"

#include "core/book/open.h"
#include "core/book/reading_statement.h"

#include <sqlite3.h>

namespace ringhold {

namespace {

/// After these the connection is as good as before.
bool passes(int code) {
    return code == SQLITE_FULL || code == SQLITE_BUSY || code == SQLITE_LOCKED;
}

std::vector<Refusal> commitAll(const Book& book, std::span<const Reading> batch) {
    std::vector<Refusal> refused;
    SQLite::Transaction transaction(book.database(), SQLite::TransactionBehavior::IMMEDIATE);
    ReadingStatement statement(book.database());
    for (std::size_t i = 0; i < batch.size(); ++i) {
        try {
            statement.add(batch[i]);
        } catch (const SQLite::Exception& e) {
            if (e.getErrorCode() != SQLITE_CONSTRAINT)
                throw;
            refused.push_back({i, sql::errorFrom(e, book.file())});
        }
    }
    transaction.commit();
    return refused;
}

} // namespace

ReadingStore::ReadingStore(Book book, std::chrono::milliseconds busyTimeout)
    : m_file(book.file()), m_id(book.id()), m_busyTimeout(busyTimeout), m_book(std::move(book)) {}

Result<ReadingStore> ReadingStore::open(const std::filesystem::path& file,
                                        std::chrono::milliseconds busyTimeout) {
    auto book = Book::open(file, Access::write, busyTimeout);
    if (!book)
        return book.error();
    return ReadingStore(std::move(*book), busyTimeout);
}

/// Sees to it that the connection leads to the book that was opened first, under its name.
Status ReadingStore::connect() {
    if (m_book && m_book->inPlace())
        return {};
    if (m_book) // moved with its main file only: what it committed late must go with it
        m_book->database().tryExec("PRAGMA wal_checkpoint(TRUNCATE)");
    m_book.reset();
    const auto id = idOfBook(m_file);
    if (!id)
        return id.error();
    if (*id != m_id)
        return Error{ErrorKind::failed, "another book has taken its place", m_file.string()};
    auto book = Book::open(m_file, Access::write, m_busyTimeout);
    if (!book)
        return book.error();
    m_book = std::move(*book);
    return {};
}

Result<std::vector<Refusal>> ReadingStore::commit(std::span<const Reading> batch) {
    if (const Status connected = connect(); !connected)
        return connected.error();
    try {
        auto refused = commitAll(*m_book, batch);
        if (m_book->inPlace())
            return refused;
        return Error{ErrorKind::notFound, "the book was moved away or deleted", m_file.string()};
    } catch (const SQLite::Exception& e) {
        if (!passes(e.getErrorCode()))
            m_book.reset();
        return sql::errorFrom(e, m_file);
    } catch (const std::exception& e) {
        return Error{ErrorKind::failed, e.what(), m_file.string()};
    }
}

} // namespace ringhold
