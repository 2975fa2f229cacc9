#include "app/logging/log_session.h"

#include "core/book/reader.h"
#include "core/book/writer.h"

#include <algorithm>

namespace ringhold {

LogSession::LogSession(const Book& book, const Clock& clock, Console& console)
    : m_book(book), m_clock(clock), m_printer(console.out), m_lines(book) {
    m_due.setSingleShot(true);
    m_due.setTimerType(Qt::PreciseTimer);
}

Result<std::unique_ptr<LogSession>> LogSession::begin(const Book& book, FiringId firing, const Clock& clock,
                                                      Console& console) {
    std::unique_ptr<LogSession> session(new LogSession(book, clock, console));
    if (const auto status = session->open(firing, console); !status)
        return status.error();
    return session;
}

Status LogSession::open(FiringId firing, Console& console) {
    auto record = BookReader(m_book).whole(firing);
    if (!record)
        return record.error();
    auto journal = AcknowledgingJournal::open(
        m_book.file(), console, [this](const Reading& reading) { return readingLine(*m_firing, reading); },
        [this](std::string line) { m_printer.print(std::move(line)); });
    if (!journal)
        return journal.error();
    m_journal = std::move(*journal);
    m_began = record->firing.began;
    m_firing.emplace(std::move(*record), *m_journal, m_lines);
    m_intake.emplace(*m_firing, console);
    return {};
}

Status LogSession::run(Instrument& instrument, std::optional<Duration> length) {
    if (length)
        QTimer::singleShot(*length, &m_loop, &QEventLoop::quit);
    QObject::connect(&m_due, &QTimer::timeout, &m_loop, [this, &instrument] { advance(instrument); });
    note("logging", "from " + instrument.description());
    if (const auto status = instrument.open(*this); !status)
        return status;
    advance(instrument);
    if (!m_ended)
        m_loop.exec();
    instrument.close();
    note("logging ended", {});
    return m_journal->close();
}

void LogSession::advance(Instrument& instrument) {
    const Instant now = m_clock.now();
    if (const auto next = instrument.advance(now))
        m_due.start(std::max(*next - now, Duration(0)));
}

void LogSession::onSample(const Sample& sample) {
    beginNoLaterThan(sample.at);
    m_intake->take(sample);
}

/// A replay is of the past: its firing begins with its first reading.
void LogSession::beginNoLaterThan(Instant first) {
    if (first >= m_began)
        return;
    m_began = first;
    auto firing = m_firing->record().firing;
    firing.began = first;
    (void)BookWriter(m_book).alter(firing); // the journal tells of a disk that fails
}

void LogSession::onLink(LinkState state, const std::string& detail) {
    if (state == LinkState::lost && !m_lost)
        note("instrument lost", detail);
    if (state == LinkState::connected && m_lost)
        note("instrument back", detail);
    if (state == LinkState::lost || state == LinkState::connected)
        m_lost = state == LinkState::lost;
    if (state == LinkState::ended) {
        m_ended = true;
        end();
    }
}

/// Into the log of the firing; a disk that fails is the journal's to tell.
void LogSession::note(const std::string& kind, const std::string& detail) {
    (void)BookWriter(m_book).add(LogEvent{
        .firing = m_firing->record().firing.id, .at = m_clock.now(), .kind = kind, .detail = detail});
}

} // namespace ringhold
