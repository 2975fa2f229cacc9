// One firing of the demo studio, lived through in kiln time and written down as it goes, through the same
// doors as a real one.
#pragma once

#include "app/demo/demo_ware.h"
#include "core/book/book_firing_log.h"
#include "core/firing/journal.h"
#include "core/firing/live_firing.h"
#include "core/kiln/practice_potter.h"
#include "core/watch/firing_watch.h"

#include <map>
#include <memory>
#include <optional>
#include <vector>

namespace ringhold {

/// Keeps readings in hand until they are written together; channels go into the book, which outlives it, at
/// once.
class DemoJournal final : public Journal {
  public:
    explicit DemoJournal(const Book& book) : m_writer(book) {}
    Ticket append(const Reading& reading) override;
    void keep(const Channel& channel) override;
    const std::vector<Reading>& readings() const { return m_readings; }
    /// Why a channel could not be written.
    const Status& trouble() const { return m_trouble; }

  private:
    BookWriter m_writer;
    std::map<ChannelId, ChannelId> m_kept;
    std::vector<Reading> m_readings;
    Status m_trouble;
};

/// Within an open transaction of the book, which outlives it.
class DemoRun : private LiveFiringListener {
  public:
    /// `ids` has the studio's kilns and probes with the ids of the book.
    static Result<std::unique_ptr<DemoRun>> begin(const Book& book, const DemoStudio& studio,
                                                  const DemoFiring& firing, std::uint64_t seed);
    /// To the end of the plan and through unloading: readings, looks, alarms, cold packs, the filed offset.
    Status fire();

    FiringId id() const { return m_live->record().firing.id; }
    Instant ended() const { return now(); }
    DemoCourse course() const;

  private:
    DemoRun(const Book& book, const DemoStudio& studio, const DemoFiring& firing, std::uint64_t seed);
    Status writeBeginning(std::uint64_t seed);
    Status watchIt();
    const DemoKiln& kiln() const { return m_studio.kilns[m_firing.kiln]; }
    bool hasFlame() const { return kiln().kiln.fuel != Fuel::electric; }
    const Probe& probe() const { return kiln().probes[m_firing.probe].probe; }
    Duration elapsed() const { return std::chrono::duration_cast<Duration>(m_kiln.elapsed()); }
    Instant now() const { return m_firing.lit + elapsed(); }

    Status step();
    Status read();
    Status readFlue(Temperature at);
    Status look();
    Status judge();
    Status acknowledge();
    Status tellStep();
    Status writeMeter(double stand);
    Status unload();
    Status fileOffsets();

    void onReading(const Channel& channel, const Reading& reading) override {
        m_watch->onReading(channel, reading);
    }
    void onLinesChanged(Instant from) override {
        if (m_watch)
            m_watch->onLinesChanged(from);
    }

    const Book& m_book;
    const DemoStudio& m_studio;
    const DemoFiring& m_firing;
    PracticeKiln m_kiln;
    PracticePotter m_potter;
    BookFiringLog m_log;
    DemoJournal m_journal;
    std::unique_ptr<LiveFiring> m_live;
    std::unique_ptr<FiringWatch> m_watch;
    std::optional<std::size_t> m_step;
    std::optional<Instant> m_acknowledgeAt;
    Curve m_felt; ///< by the ware, which no instrument tells
    double m_energy_Wh = 0;
    double m_meterBegan = 0;
    bool m_reduced = false;
};

} // namespace ringhold
