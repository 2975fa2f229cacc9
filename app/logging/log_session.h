// Logging from an instrument into a firing until it is told to end.
#pragma once

#include "app/console.h"
#include "app/logging/acknowledging_journal.h"
#include "app/logging/line_printer.h"
#include "app/logging/sample_intake.h"
#include "core/base/clock.h"
#include "core/book/book.h"
#include "core/book/book_firing_log.h"

#include <QEventLoop>
#include <QTimer>

#include <memory>
#include <optional>

namespace ringhold {

/// Prints a line for each reading once it is durable. A lost instrument is waited for. Needs a
/// QCoreApplication.
class LogSession final : private InstrumentListener {
  public:
    /// Goes on with that firing of the book. All must outlive the session.
    static Result<std::unique_ptr<LogSession>> begin(const Book& book, FiringId firing, const Clock& clock,
                                                     Console& console);

    /// Until the instrument ends, the time is over or end() is called. Then everything is durable, or the
    /// status says why not; the firing stays open.
    Status run(Instrument& instrument, std::optional<Duration> length);
    void end() { m_loop.quit(); }

  private:
    LogSession(const Book& book, const Clock& clock, Console& console);
    Status open(FiringId firing, Console& console);
    void onSample(const Sample& sample) override;
    void onLine(const std::string&, bool) override {}
    void onLink(LinkState state, const std::string& detail) override;

    void advance(Instrument& instrument);
    void beginNoLaterThan(Instant first);
    void note(const std::string& kind, const std::string& detail);

    const Book& m_book;
    const Clock& m_clock;
    LinePrinter m_printer;
    BookFiringLog m_lines;
    std::unique_ptr<AcknowledgingJournal> m_journal;
    std::optional<LiveFiring> m_firing;
    std::optional<SampleIntake> m_intake;
    Instant m_began;
    QEventLoop m_loop;
    QTimer m_due;
    bool m_lost = false;
    bool m_ended = false;
};

} // namespace ringhold
