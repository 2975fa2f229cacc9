// A practice kiln in firing with everything that watches it, kept in memory only: for tests and studies.
#pragma once

#include "core/kiln/practice_firing.h"
#include "core/kiln/practice_potter.h"
#include "core/watch/firing_watch.h"

#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace ringhold::test {

/// Numbers readings and forgets them.
class ForgetfulJournal final : public Journal {
  public:
    Ticket append(const Reading&) override { return ++m_last; }
    void keep(const Channel&) override {}

  private:
    Ticket m_last = 0;
};

/// Gives ids and keeps nothing.
class ForgetfulLog final : public FiringLog {
  public:
    Result<ChannelId> add(const Channel&) override { return ChannelId(++m_last); }
    Status alter(const Channel&) override { return {}; }
    Result<LookId> add(const Look&) override { return LookId(++m_last); }
    Result<SettingId> add(const Setting&) override { return SettingId(++m_last); }
    Result<NoteId> add(const Note&) override { return NoteId(++m_last); }
    Status add(const Reading&) override { return {}; }
    Status add(const AlarmEvent&) override { return {}; }
    Result<StepCorrectionId> add(const StepCorrection&) override { return StepCorrectionId(++m_last); }
    Result<MeterStandId> add(const MeterStand&) override { return MeterStandId(++m_last); }
    Status strike(LookId, Instant) override { return {}; }
    Status strike(SettingId, Instant) override { return {}; }
    Status strike(NoteId, Instant) override { return {}; }
    Status strike(StepCorrectionId, Instant) override { return {}; }
    Status strike(MeterStandId, Instant) override { return {}; }
    Status strike(ChannelId, Instant, Instant) override { return {}; }
    Status restore(LookId, Instant) override { return {}; }
    Status restore(SettingId, Instant) override { return {}; }
    Status restore(NoteId, Instant) override { return {}; }
    Status restore(StepCorrectionId, Instant) override { return {}; }
    Status restore(MeterStandId, Instant) override { return {}; }
    Status restore(ChannelId, Instant, Instant) override { return {}; }
    Status file(const FiledOffset&) override { return {}; }
    Status end(FiringId, Instant) override { return {}; }

  private:
    int m_last = 0;
};

class WatchedPractice : private LiveFiringListener {
  public:
    struct Options {
        std::optional<Plan> watched;                             ///< that the firing has; else the kiln's own
        std::chrono::seconds spacing = std::chrono::seconds(10); ///< of the readings
        bool electrics = true;                                   ///< volts and amps are logged
        bool potter = true;                                      ///< somebody looks and writes it down
        bool byHand = false;                                     ///< readings are typed
        double roundedTo_C = 0;                                  ///< as the display shows them
        bool forecast = true; ///< the pack is known, its cones reckoned with
        WatchSettings watch;
    };

    WatchedPractice(PracticeSettings settings, Options options);

    /// Lives on until the next reading has been judged; false when the controller's plan is done.
    bool step();
    /// Until that time since the beginning, or the end.
    void runUntil(Duration elapsed);

    Instant began() const { return m_began; }
    Instant now() const { return m_began + std::chrono::duration_cast<Duration>(m_kiln.elapsed()); }
    Duration elapsed() const { return now() - m_began; }
    PracticeKiln& kiln() { return m_kiln; }
    FiringWatch& watch() { return *m_watch; }
    LiveFiring& firing() { return *m_firing; }
    const std::vector<AlarmEvent>& events() const { return m_events; }
    /// The first that was raised from then on and that counts.
    const AlarmEvent* firstRaised(Instant from, const std::function<bool(const AlarmEvent&)>& counts) const;

  private:
    void onReading(const Channel& channel, const Reading& reading) override {
        m_watch->onReading(channel, reading);
    }
    void onLinesChanged(Instant from) override {
        if (m_watch)
            m_watch->onLinesChanged(from);
    }
    void read();
    void look();

    Options m_options;
    PracticeKiln m_kiln;
    std::optional<PracticePotter> m_potter;
    ForgetfulJournal m_journal;
    ForgetfulLog m_log;
    Instant m_began;
    std::unique_ptr<LiveFiring> m_firing;
    std::unique_ptr<FiringWatch> m_watch;
    std::vector<AlarmEvent> m_events;
};

} // namespace ringhold::test
