// The durable path of alarm events into a book.
#pragma once

#include "core/base/result.h"
#include "core/firing/alarm_journal.h"

#include <chrono>
#include <condition_variable>
#include <deque>
#include <filesystem>
#include <functional>
#include <mutex>
#include <thread>

namespace ringhold {

/// A thread of its own with a connection of its own: a slow, full or held disk delays no alarm. What cannot
/// be written waits in memory and is tried again for ever, in the order of append(); only an event that the
/// book can never take (its firing is not there) is given up, and told.
class BookAlarmJournal : public AlarmJournal {
  public:
    /// Hears, in the journal's thread, that an event was kept, or why the newest try failed. Return soon.
    using Listener = std::function<void(const Status&)>;

    /// An existing book; it is opened in the thread, so a book that is not there is told to the listener.
    BookAlarmJournal(std::filesystem::path book, Listener listener,
                     std::chrono::milliseconds retryAfter = std::chrono::seconds(1));
    /// Writes what waits, or tries once more, and ends the thread.
    ~BookAlarmJournal() override;

    void append(const AlarmEvent& event) override;
    /// In memory only.
    std::size_t pending() const;

  private:
    struct OpenBook;
    void work();
    Status write(const AlarmEvent& event, OpenBook& open) const;

    const std::filesystem::path m_file;
    const Listener m_listener;
    const std::chrono::milliseconds m_retryAfter;

    mutable std::mutex m_mutex; ///< guards the three below
    std::condition_variable m_wake;
    std::deque<AlarmEvent> m_waiting;
    bool m_stop = false;

    std::thread m_thread; ///< last, so that all above is there when it starts
};

} // namespace ringhold
