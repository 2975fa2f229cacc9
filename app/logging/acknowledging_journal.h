// A journal that says of each single reading when it is on the disk.
#pragma once

#include "app/console.h"
#include "core/book/journal.h"

#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <string>

namespace ringhold {

/// Stands between a live firing and the book's journal. What the disk refuses, and that it fails, is
/// complained about.
class AcknowledgingJournal final : public Journal, private JournalListener {
  public:
    /// In the thread of append(): what will be said of the reading.
    using Describe = std::function<std::string(const Reading&)>;
    /// In the journal's thread: that text, once the reading is durable. Return soon.
    using Acknowledge = std::function<void(std::string)>;

    /// Opens an existing book. The console must outlive the journal.
    static Result<std::unique_ptr<AcknowledgingJournal>>
    open(const std::filesystem::path& book, Console& console, Describe describe, Acknowledge acknowledge);

    Ticket append(const Reading& reading) override;
    void keep(const Channel& channel) override { m_journal->keep(channel); }
    /// As BookJournal::close().
    Status close() { return m_journal->close(); }

  private:
    AcknowledgingJournal(Console& console, Describe describe, Acknowledge acknowledge)
        : m_console(console), m_describe(std::move(describe)), m_acknowledge(std::move(acknowledge)) {}
    void onDurable(Ticket upTo) override;
    void onRefused(Ticket ticket, const Reading& reading, const Error& why) override;
    void onFailing(const Error& why) override { m_console.complain(why); }
    void onRecovered() override {}

    struct Waiting {
        Ticket ticket;
        std::string text;
    };
    Console& m_console;
    Describe m_describe;
    Acknowledge m_acknowledge;
    std::mutex m_mutex;
    std::deque<Waiting> m_waiting;
    std::unique_ptr<BookJournal> m_journal; ///< last: its thread ends before what it reports to goes
};

} // namespace ringhold
