// All that watches one firing, in one object: follower, forecast, hold, causes and the alarms they raise.
#pragma once

#include "core/firing/alarm_event.h"
#include "core/firing/live_firing.h"
#include "core/report/words.h"
#include "core/watch/alarm_board.h"
#include "core/watch/cause_watch.h"
#include "core/watch/cone_due.h"
#include "core/watch/energy_meter.h"
#include "core/watch/firing_forecast.h"
#include "core/watch/hold_follower.h"
#include "core/watch/ring_clock.h"
#include "core/watch/step_follower.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace ringhold {

struct WatchSettings {
    std::optional<Duration> attendance; ///< remind when nobody was at the kiln for so long
    ConeDueRules cone;
    AlarmRules alarms;
    HoldWatchSettings hold;
    SteadyRules steady;                                ///< of a hold that no plan tells
    WordStyle style;                                   ///< of the words in alarms
    Duration forecastEvery = std::chrono::seconds(15); ///< of the kiln's time, at the soonest
};

/// What a firing is watched by, as the book has it.
struct WatchedFiring {
    const LiveFiring* firing = nullptr; ///< outlives the watch
    std::vector<OffsetPrior> priors;    ///< one a pack of the record
    /// Of an earlier run of the program, in time order; those of the firing's record when empty.
    std::vector<AlarmEvent> alarms{};
};

/// What the firing itself does not know. Empty when all is well.
struct WatchTroubles {
    std::string link; ///< why the instrument is lost
    std::string disk; ///< why readings do not get to the disk
};

/// One firing's watch. Readings go in by onReading() at once and cost O(1); what they mean is asked by
/// check(). No clock of its own; instants are the kiln's. One thread at a time; not to be moved.
class FiringWatch {
  public:
    /// badInput for an unknown cone in a pack.
    static Result<std::unique_ptr<FiringWatch>> make(WatchedFiring watched, WatchSettings settings = {});
    FiringWatch(const FiringWatch&) = delete;
    FiringWatch& operator=(const FiringWatch&) = delete;

    /// A new value at the end of its channel, as LiveFiringListener hears it.
    void onReading(const Channel& channel, const Reading& reading);
    /// Lines were added, struck or restored, corrections of the step too: everything is followed from the
    /// start again.
    void onLinesChanged(Instant from);

    /// Judges the firing as it stands at that instant. Call after each reading and once a second besides;
    /// the events are to be written to the log. Does not go back in time.
    std::vector<AlarmEvent> check(Instant now, const WatchTroubles& troubles = {});

    std::vector<AlarmEvent> acknowledge(AlarmCause cause, Instant now, const std::string& who);
    std::vector<AlarmEvent> acknowledgeAll(Instant now, const std::string& who);
    /// Somebody is at the kiln: a look, note or typed reading says so by itself.
    void attended(Instant at);
    AlarmBoard& board() { return m_board; }
    const AlarmBoard& board() const { return m_board; }
    /// Changes what can be changed while it goes on: reminder, words.
    void setSettings(const WatchSettings& settings) { m_settings = settings; }
    const WatchSettings& settings() const { return m_settings; }

    /// Nothing without a plan.
    const StepFollower* follower() const { return m_follower ? &*m_follower : nullptr; }
    const FiringForecast* forecaster() const { return m_forecaster ? &*m_forecaster : nullptr; }
    /// The newest forecast; nothing before there are packs and two readings.
    const std::optional<Forecast>& forecast() const { return m_forecast; }
    /// Made anew now, whatever its age.
    void refreshForecast();
    /// The hold under way, by the plan, the potter's word or the curve; nothing otherwise.
    const std::optional<HoldUnderWay>& holdUnderWay() const { return m_holds.hold(); }
    /// That one, but null for a level that nobody told while the firing cone is still to go down: climbing on
    /// is what is wanted then.
    const HoldUnderWay* holdToKeep() const;
    /// What watches it.
    const HoldWatch* hold() const { return m_holds.watch(); }
    std::optional<RingClock> ringClock(Instant now) const;
    /// So far and to come; some milliseconds, so not at each reading.
    FiringEnergy energy(Instant now) const;
    const CauseWatch& causes() const { return m_causes; }
    const std::string& firingCone() const { return m_firingCone; }

  private:
    FiringWatch(WatchedFiring watched, WatchSettings settings);
    Status begin();
    void takeUpOthers(std::size_t& next, Instant until);
    void followFromStart(Instant from);
    void follow(const CurvePoint& point);
    void watchCauses(const CurvePoint& point);

    std::vector<AlarmFinding> findings(Instant now, const WatchTroubles& troubles) const;
    void findCauses(Instant now, std::vector<AlarmFinding>& found) const;
    void findHold(Instant now, std::vector<AlarmFinding>& found) const;
    void findSilence(Instant now, const WatchTroubles& troubles, std::vector<AlarmFinding>& found) const;
    void findCone(Instant now, std::vector<AlarmFinding>& found) const;
    void findAbsence(Instant now, std::vector<AlarmFinding>& found) const;
    bool coneAwaited() const;
    bool coneToCome() const;

    WatchedFiring m_watched;
    WatchSettings m_settings;
    AlarmBoard m_board;
    std::string m_firingCone;
    std::optional<StepFollower> m_follower;
    std::optional<FiringForecast> m_forecaster;
    std::optional<Forecast> m_forecast;
    CauseWatch m_causes;
    std::optional<Instant> m_causesThrough; ///< they were told of the readings up to then
    EnergyMeter m_energy;
    PlanContext m_context; ///< that the follower had
    HoldFollower m_holds;
    std::optional<Instant> m_forecastAt;
    Instant m_attended;
};

} // namespace ringhold
