#include "core/book/journal.h"

#include "core/book/reading_store.h"

#include <condition_variable>
#include <deque>
#include <mutex>
#include <thread>
#include <utility>

namespace ringhold {

namespace {

/// So many readings at most go into one transaction: a writer at the keyboard waits no longer than for that.
constexpr std::size_t largestBatch = 5000;

} // namespace

class BookJournal::Worker {
  public:
    Worker(ReadingStore store, JournalListener& listener, std::chrono::milliseconds retryAfter)
        : m_store(std::move(store)), m_listener(listener), m_retryAfter(retryAfter),
          m_thread([this] { work(); }) {}

    Ticket append(const Reading& reading) {
        const std::lock_guard lock(m_mutex);
        m_waiting.push_back(reading);
        m_wake.notify_one();
        return ++m_appended;
    }

    void keep(const Channel& channel) {
        const std::lock_guard lock(m_mutex);
        m_channels.push_back(channel);
        m_wake.notify_one();
    }

    Ticket durable() const {
        const std::lock_guard lock(m_mutex);
        return m_durable;
    }

    std::vector<Reading> pending() const {
        const std::lock_guard lock(m_mutex);
        return {m_waiting.begin(), m_waiting.end()};
    }

    Status flush() {
        std::unique_lock lock(m_mutex);
        const Ticket wanted = m_appended;
        const auto triesBefore = m_tries;
        m_hurry = true;
        m_wake.notify_one();
        m_settled.wait(lock, [&] { return m_durable >= wanted || m_failedTry > triesBefore || m_ended; });
        return m_durable >= wanted ? Status() : Status(m_why);
    }

    Status close() {
        {
            const std::lock_guard lock(m_mutex);
            m_stop = true;
            m_wake.notify_one();
        }
        if (m_thread.joinable())
            m_thread.join();
        return m_waiting.empty() ? Status() : Status(m_why);
    }

  private:
    void work();
    bool waitForWork(std::unique_lock<std::mutex>& lock);
    Batch nextBatch() const;
    bool idle() const { return m_waiting.empty() && m_channels.empty(); }
    void settle(const Batch& batch, const Committed& done);
    void fail(const Error& why);

    ReadingStore m_store; ///< used by the thread alone
    JournalListener& m_listener;
    const std::chrono::milliseconds m_retryAfter;

    mutable std::mutex m_mutex; ///< guards all below but the thread
    std::condition_variable m_wake;
    std::condition_variable m_settled;
    std::deque<Reading> m_waiting;
    std::deque<Channel> m_channels; ///< to be written before them
    Ticket m_appended = 0;
    Ticket m_durable = 0; ///< told to the listener
    std::uint64_t m_tries = 0;
    std::uint64_t m_failedTry = 0;
    bool m_failing = false;                                  ///< the last try failed
    Error m_why{ErrorKind::failed, "the journal is closed"}; ///< of the last failure
    bool m_hurry = false;                                    ///< somebody waits in flush()
    bool m_stop = false;
    bool m_ended = false;

    std::thread m_thread; ///< last, so that all above is there when it starts
};

/// Gives true when there is something to try, false when all is done.
bool BookJournal::Worker::waitForWork(std::unique_lock<std::mutex>& lock) {
    const auto called = [this] { return m_stop || (m_hurry && !idle()); };
    if (m_failing)
        m_wake.wait_for(lock, m_retryAfter, called);
    else
        m_wake.wait(lock, [&] { return called() || !idle(); });
    m_hurry = false;
    return !idle();
}

/// With the lock held.
Batch BookJournal::Worker::nextBatch() const {
    const auto count = static_cast<long>(std::min(m_waiting.size(), largestBatch));
    return {{m_channels.begin(), m_channels.end()}, {m_waiting.begin(), m_waiting.begin() + count}};
}

void BookJournal::Worker::work() {
    std::unique_lock lock(m_mutex);
    while (true) {
        if (waitForWork(lock)) {
            ++m_tries;
            const bool last = m_stop;
            const Batch batch = nextBatch();
            lock.unlock();
            const auto done = m_store.commit(batch);
            if (done)
                settle(batch, *done);
            else
                fail(done.error());
            lock.lock();
            if (!done && last)
                break;
        } else if (m_stop) {
            break;
        }
    }
    m_ended = true;
    m_settled.notify_all();
}

void BookJournal::Worker::settle(const Batch& batch, const Committed& done) {
    Ticket before = 0;
    bool recovered = false;
    {
        const std::lock_guard lock(m_mutex);
        m_waiting.erase(m_waiting.begin(), m_waiting.begin() + static_cast<long>(batch.readings.size()));
        m_channels.erase(m_channels.begin(), m_channels.begin() + static_cast<long>(batch.channels.size()));
        before = m_durable;
        recovered = std::exchange(m_failing, false);
    }
    if (recovered)
        m_listener.onRecovered();
    for (const auto& [given, kept] : done.channels)
        m_listener.onChannel(given, kept);
    for (const auto& refusal : done.refused)
        m_listener.onRefused(before + refusal.place + 1, batch.readings[refusal.place], refusal.why);
    if (!batch.readings.empty())
        m_listener.onDurable(before + batch.readings.size());
    const std::lock_guard lock(m_mutex);
    m_durable = before + batch.readings.size();
    m_settled.notify_all();
}

void BookJournal::Worker::fail(const Error& why) {
    bool news = false;
    {
        const std::lock_guard lock(m_mutex);
        news = !std::exchange(m_failing, true) || m_why.text() != why.text();
        m_why = why;
    }
    if (news)
        m_listener.onFailing(why);
    const std::lock_guard lock(m_mutex);
    m_failedTry = m_tries;
    m_settled.notify_all();
}

BookJournal::BookJournal(std::unique_ptr<Worker> worker) : m_worker(std::move(worker)) {}

BookJournal::~BookJournal() {
    static_cast<void>(m_worker->close());
}

Result<std::unique_ptr<BookJournal>> BookJournal::open(const std::filesystem::path& book,
                                                       JournalListener& listener, JournalTiming timing) {
    auto store = ReadingStore::open(book, timing.busyTimeout);
    if (!store)
        return store.error();
    return std::unique_ptr<BookJournal>(
        new BookJournal(std::make_unique<Worker>(std::move(*store), listener, timing.retryAfter)));
}

Ticket BookJournal::append(const Reading& reading) {
    return m_worker->append(reading);
}

Ticket BookJournal::durable() const {
    return m_worker->durable();
}

Status BookJournal::flush() {
    return m_worker->flush();
}

Status BookJournal::close() {
    return m_worker->close();
}

void BookJournal::keep(const Channel& channel) {
    m_worker->keep(channel);
}

std::vector<Reading> BookJournal::pending() const {
    return m_worker->pending();
}

} // namespace ringhold
