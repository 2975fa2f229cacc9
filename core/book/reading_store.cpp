#include "core/book/reading_store.h"

#include "core/book/open.h"
#include "core/book/reading_statement.h"
#include "core/book/record_text.h"

#include <sqlite3.h>

namespace ringhold {

namespace {

/// After these the connection is as good as before.
bool passes(int code) {
    return code == SQLITE_FULL || code == SQLITE_BUSY || code == SQLITE_LOCKED;
}

/// The channel's id in the book. One of this firing, quantity and label may be there already, from a try that
/// came to its end unheard.
ChannelId keptAs(const Book& book, const Channel& channel) {
    SQLite::Statement known(book.database(),
                            "SELECT id FROM channel WHERE firing = ? AND quantity = ? AND label = ?");
    sql::bindAll(known, channel.firing, bookText(channel.quantity), channel.label);
    if (known.executeStep())
        return sql::idIn<ChannelId>(known.getColumn(0));
    sql::run(book.database(), "INSERT INTO channel (firing, quantity, label, probe) VALUES (?, ?, ?, ?)",
             channel.firing, bookText(channel.quantity), channel.label, channel.probe);
    return static_cast<ChannelId>(book.database().getLastInsertRowid());
}

/// A channel that the book cannot take (its firing is not there) is left out, and its readings are refused.
void keepChannels(const Book& book, const std::vector<Channel>& channels,
                  std::map<ChannelId, ChannelId>& kept) {
    for (const auto& channel : channels) {
        try {
            if (channel.id < ChannelId{})
                kept[channel.id] = keptAs(book, channel);
            else
                sql::run(book.database(), "UPDATE channel SET label = ?2, probe = ?3 WHERE id = ?1",
                         channel.id, channel.label, channel.probe);
        } catch (const SQLite::Exception& e) {
            if (e.getErrorCode() != SQLITE_CONSTRAINT)
                throw;
        }
    }
}

Committed commitAll(const Book& book, const Batch& batch, const std::map<ChannelId, ChannelId>& earlier) {
    Committed done;
    SQLite::Transaction transaction(book.database(), SQLite::TransactionBehavior::IMMEDIATE);
    keepChannels(book, batch.channels, done.channels);
    std::map<ChannelId, ChannelId> known = earlier;
    known.insert(done.channels.begin(), done.channels.end());
    const auto inBook = [&known](Reading reading) {
        const auto kept = known.find(reading.channel);
        reading.channel = kept == known.end() ? reading.channel : kept->second;
        return reading;
    };
    ReadingStatement statement(book.database());
    for (std::size_t i = 0; i < batch.readings.size(); ++i) {
        try {
            statement.add(inBook(batch.readings[i]));
        } catch (const SQLite::Exception& e) {
            if (e.getErrorCode() != SQLITE_CONSTRAINT)
                throw;
            done.refused.push_back({i, sql::errorFrom(e, book.file())});
        }
    }
    transaction.commit();
    return done;
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

Result<Committed> ReadingStore::commit(const Batch& batch) {
    if (const Status connected = connect(); !connected)
        return connected.error();
    try {
        auto done = commitAll(*m_book, batch, m_channels);
        if (m_book->inPlace()) {
            m_channels.insert(done.channels.begin(), done.channels.end());
            return done;
        }
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
