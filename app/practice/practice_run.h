// A whole practice firing, as fast as the computer can, through the same doors as a real one.
#pragma once

#include "app/console.h"
#include "app/logging/acknowledging_journal.h"
#include "app/logging/sample_intake.h"
#include "app/practice/cone_watch.h"
#include "app/practice/practice_notebook.h"
#include "app/practice/practice_story.h"
#include "core/book/book_firing_log.h"
#include "core/instrument/practice_instrument.h"

#include <memory>

namespace ringhold {

/// The practice kiln's instrument is logged through the journal, the practice potter's looks are written
/// down, and the forecast follows both. At the end hold and rings are judged on the curve read back from the
/// book.
class PracticeRun final : private InstrumentListener {
  public:
    /// The firing ends about `now`. Book and console must outlive the run.
    static Result<std::unique_ptr<PracticeRun>> prepare(const Book& book, std::uint64_t seed, Instant now,
                                                        Console& console);
    Status fire();

  private:
    PracticeRun(const Book& book, PracticeSettings settings, PracticeNotebook notebook, ConeWatch watch,
                Console& console);
    Status open(const Book& book, Console& console);
    void onSample(const Sample& sample) override;
    void onLine(const std::string&, bool) override {}
    void onLink(LinkState, const std::string&) override {}

    Status live();
    Status besideTheKiln();
    Status beforeConeDown();
    Status afterwards();

    PracticeInstrument m_instrument;
    PracticePotter m_potter;
    PracticeNotebook m_notebook;
    PracticeStory m_story;
    ConeWatch m_watch;
    BookFiringLog m_lines;
    std::unique_ptr<AcknowledgingJournal> m_journal;
    std::optional<LiveFiring> m_firing;
    std::optional<SampleIntake> m_intake;
    std::size_t m_durable = 0; ///< readings; counted in the journal's thread until it is closed

    Instant m_now; ///< of the last sample
    std::optional<std::size_t> m_step;
    std::optional<Instant> m_trulyDown; ///< the firing cone, which only the practice kiln knows
    std::optional<PackForecast> m_found;
};

} // namespace ringhold
