#include "app/logging/acknowledging_journal.h"

#include <utility>

namespace ringhold {

Result<std::unique_ptr<AcknowledgingJournal>> AcknowledgingJournal::open(const std::filesystem::path& book,
                                                                         Console& console, Describe describe,
                                                                         Acknowledge acknowledge) {
    std::unique_ptr<AcknowledgingJournal> journal(
        new AcknowledgingJournal(console, std::move(describe), std::move(acknowledge)));
    auto opened = BookJournal::open(book, *journal);
    if (!opened)
        return opened.error();
    journal->m_journal = std::move(*opened);
    return journal;
}

Ticket AcknowledgingJournal::append(const Reading& reading) {
    auto text = m_describe(reading);
    // Locked over both, or else the reading might be durable before its text is here.
    const std::lock_guard lock(m_mutex);
    const auto ticket = m_journal->append(reading);
    m_waiting.push_back({ticket, std::move(text)});
    return ticket;
}

void AcknowledgingJournal::onDurable(Ticket upTo) {
    const std::lock_guard lock(m_mutex);
    for (; !m_waiting.empty() && m_waiting.front().ticket <= upTo; m_waiting.pop_front())
        m_acknowledge(std::move(m_waiting.front().text));
}

void AcknowledgingJournal::onRefused(Ticket ticket, const Reading&, const Error& why) {
    m_console.complain(why);
    const std::lock_guard lock(m_mutex);
    std::erase_if(m_waiting, [ticket](const Waiting& waiting) { return waiting.ticket == ticket; });
}

} // namespace ringhold
