// The durable path of readings into a book.
#pragma once

#include "core/base/result.h"
#include "core/firing/journal.h"

#include <chrono>
#include <filesystem>
#include <memory>
#include <vector>

namespace ringhold {

struct JournalTiming {
    std::chrono::milliseconds busyTimeout = std::chrono::seconds(5); ///< before a held book is a failure
    std::chrono::milliseconds retryAfter = std::chrono::seconds(1);  ///< after a failure
};

/// A thread of its own with a connection of its own: whatever is waiting goes into the book in one
/// transaction, at once, and is acknowledged when that is on the disk. What cannot be written waits in memory
/// and is tried again for ever: a full disk, another program that holds the book, a disk that was unplugged,
/// a book that was moved away (for which no other book is taken, should one have its name).
///
/// All functions may be called from any thread, but close() and the destructor by its owner only.
class BookJournal : public Journal {
  public:
    /// Opens an existing book. The listener must outlive the journal.
    static Result<std::unique_ptr<BookJournal>> open(const std::filesystem::path& book,
                                                     JournalListener& listener, JournalTiming timing = {});
    /// As close(); whoever wants to know what was not written calls close() first.
    ~BookJournal() override;

    Ticket append(const Reading& reading) override;
    void keep(const Channel& channel) override;

    /// The last ticket that is on disk with all before it, but for those refused; 0 at first.
    Ticket durable() const;
    /// Waits until all that was appended before is on the disk, or says why a try at it failed.
    Status flush();
    /// Writes what waits, or tries once more, and ends the thread. append() is not allowed after it.
    Status close();
    /// What is in memory only, oldest first.
    std::vector<Reading> pending() const;

  private:
    class Worker;
    explicit BookJournal(std::unique_ptr<Worker> worker);
    std::unique_ptr<Worker> m_worker;
};

} // namespace ringhold
