// The connection by which a journal commits, for BookJournal alone.
#pragma once

#include "core/book/book.h"
#include "core/firing/records.h"

#include <cstddef>
#include <map>
#include <optional>
#include <vector>

namespace ringhold {

/// A reading that the book will never take, by its place in the batch.
struct Refusal {
    std::size_t place = 0;
    Error why;
};

/// What is to be committed together: channels, then readings, which may name new channels by ids below 0.
struct Batch {
    std::vector<Channel> channels;
    std::vector<Reading> readings;
};

/// What became of a batch that was committed.
struct Committed {
    std::vector<Refusal> refused;
    std::map<ChannelId, ChannelId> channels; ///< the book's id of each new one, by the one that was given
};

/// Commits batches into one book and finds it again after a failure. Used by one thread at a time.
class ReadingStore {
  public:
    static Result<ReadingStore> open(const std::filesystem::path& file,
                                     std::chrono::milliseconds busyTimeout);

    /// One transaction: when this succeeds the batch is on the disk, but for the refused. When it fails
    /// nothing of the batch is in the book, or it is there whole and a second try adds nothing.
    Result<Committed> commit(const Batch& batch);

  private:
    ReadingStore(Book book, std::chrono::milliseconds busyTimeout);
    Status connect();

    std::filesystem::path m_file;
    std::string m_id; ///< of the book; another one with its name is not taken for it
    std::chrono::milliseconds m_busyTimeout;
    std::map<ChannelId, ChannelId> m_channels; ///< of all batches
    std::optional<Book> m_book;                ///< nothing after a failure that may have cost the connection
};

} // namespace ringhold
