#include "core/book/book_alarm_journal.h"

#include "core/book/book.h"
#include "core/book/writer.h"

#include <utility>

namespace ringhold {

/// Used by the thread alone.
struct BookAlarmJournal::OpenBook {
    std::optional<Book> book;
    std::string id; ///< of the book that the events belong to, once it was open
};

namespace {

/// Trying again changes nothing.
bool isHopeless(const Status& status) {
    return !status && status.error().kind == ErrorKind::badInput;
}

} // namespace

BookAlarmJournal::BookAlarmJournal(std::filesystem::path book, Listener listener,
                                   std::chrono::milliseconds retryAfter)
    : m_file(std::move(book)), m_listener(std::move(listener)), m_retryAfter(retryAfter),
      m_thread([this] { work(); }) {}

BookAlarmJournal::~BookAlarmJournal() {
    {
        const std::lock_guard lock(m_mutex);
        m_stop = true;
        m_wake.notify_one();
    }
    m_thread.join();
}

void BookAlarmJournal::append(const AlarmEvent& event) {
    const std::lock_guard lock(m_mutex);
    m_waiting.push_back(event);
    m_wake.notify_one();
}

std::size_t BookAlarmJournal::pending() const {
    const std::lock_guard lock(m_mutex);
    return m_waiting.size();
}

void BookAlarmJournal::work() {
    OpenBook book;
    std::unique_lock lock(m_mutex);
    while (true) {
        m_wake.wait(lock, [this] { return m_stop || !m_waiting.empty(); });
        if (m_waiting.empty())
            return;
        const AlarmEvent event = m_waiting.front();
        const bool last = m_stop;
        lock.unlock();
        const Status kept = write(event, book);
        const bool settled = kept || isHopeless(kept);
        lock.lock();
        if (settled)
            m_waiting.pop_front();
        lock.unlock();
        m_listener(kept); // who hears it finds nothing of it waiting
        lock.lock();
        if (settled)
            continue;
        if (last)
            return;
        m_wake.wait_for(lock, m_retryAfter, [this] { return m_stop; });
    }
}

/// A book that was moved away meanwhile is not written to, nor another that has its name: nobody would find
/// the events there.
Status BookAlarmJournal::write(const AlarmEvent& event, OpenBook& open) const {
    auto& [book, id] = open;
    if (book && !book->inPlace())
        book.reset();
    if (!book) {
        auto opened = Book::open(m_file, Access::write);
        if (!opened)
            return opened.error();
        if (!id.empty() && opened->id() != id)
            return Error{ErrorKind::foreign, m_file.string() + ": another book has its name now"};
        id = opened->id();
        book.emplace(std::move(*opened));
    }
    return BookWriter(*book).add(event);
}

} // namespace ringhold
