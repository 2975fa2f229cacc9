#include "app/instruments/app_instrument_factory.h"
#include "app/logging/log_session.h"
#include "app/stop_signals.h"
#include "app/system_clock.h"
#include "app/verbs/headless_application.h"
#include "app/verbs/kiln_book.h"
#include "app/verbs/options.h"
#include "app/verbs/verb_list.h"

#include <CLI/CLI.hpp>

namespace ringhold {

namespace {

/// Logs from an instrument into the kiln's open firing.
class LogVerb final : public Verb {
  public:
    std::string name() const override { return "log"; }
    std::string summary() const override {
        return "Log an instrument into the kiln's open firing, or a new one";
    }
    void declare(CLI::App& command) override;
    Status run(Console& console) override;

  private:
    Result<std::unique_ptr<Instrument>> instrument(const Clock& clock) const;

    std::string m_book;
    std::string m_kiln;
    std::string m_source;
    std::optional<double> m_seconds;
};

void LogVerb::declare(CLI::App& command) {
    addBook(command, m_book);
    addKiln(command, m_kiln);
    std::string schemes;
    const SystemClock clock;
    for (const auto& kind : AppInstrumentFactory(clock).kinds())
        schemes += (schemes.empty() ? "" : ", ") + kind.example;
    command.add_option("--source", m_source, "The instrument: " + schemes)->type_name("SPEC")->required();
    addNumber(command, "--seconds", m_seconds, "End after so long; else when interrupted");
}

Result<std::unique_ptr<Instrument>> LogVerb::instrument(const Clock& clock) const {
    const auto spec = parseInstrumentSpec(m_source);
    if (!spec)
        return spec.error();
    return AppInstrumentFactory(clock).make(*spec);
}

Status LogVerb::run(Console& console) {
    if (m_seconds && (*m_seconds <= 0 || *m_seconds > 2e6))
        return Error{ErrorKind::badInput, "--seconds must be above 0 and at most 2000000"};
    std::optional<Duration> length;
    if (m_seconds)
        length = durationFromSeconds(*m_seconds);
    const HeadlessApplication application;
    LogSession* running = nullptr;
    const StopSignals signals([&running] {
        if (running)
            running->end();
    });
    const SystemClock clock;
    auto source = instrument(clock);
    if (!source)
        return source.error();
    const auto book = Book::open(m_book, Access::create);
    if (!book)
        return book.error();
    const auto kiln = kilnFor(*book, m_kiln);
    if (!kiln)
        return kiln.error();
    const auto firing = openFiringFor(*book, *kiln, clock.now());
    if (!firing)
        return firing.error();
    auto session = LogSession::begin(*book, firing->id, clock, console);
    if (!session)
        return session.error();
    running = session->get();
    return running->run(**source, length);
}

} // namespace

std::unique_ptr<Verb> makeLogVerb() {
    return std::make_unique<LogVerb>();
}

} // namespace ringhold
