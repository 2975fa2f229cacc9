// Why the kiln does not do what the plan says: causes with their evidence, from the readings alone. Each is
// what it looks like; none is proof, and Ringhold controls nothing and protects nobody.
#pragma once

#include "core/plan/plan_kiln.h"
#include "core/report/words.h"
#include "core/watch/alarm_cause.h"
#include "core/watch/hold_statistics.h"
#include "core/watch/power_evidence.h"
#include "core/watch/probe_evidence.h"
#include "core/watch/recent_values.h"
#include "core/watch/step_follower.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace ringhold {

/// The figures on which a cause rests; those that it does not need are absent.
struct CauseFigures {
    std::optional<Temperature> temperature{}; ///< now
    std::optional<Temperature> expected{};    ///< what the plan has, or what was before
    std::optional<Rate> rate{};               ///< now
    std::optional<Rate> expectedRate{};       ///< by the plan, or before
    std::optional<Volts> volts{};
    std::optional<Volts> usualVolts{};
    std::optional<double> demand{}; ///< share of full power
    std::optional<Power> power{};
    std::optional<Power> powerBefore{};
    std::optional<TemperatureDifference> scatter{};
    std::optional<TemperatureDifference> usualScatter{};
    std::optional<Instant> since{};
    std::optional<Millivolts> oxygen{}; ///< of the oxygen probe
};

struct CauseFound {
    AlarmCause cause = AlarmCause::sag;
    AlarmLevel level = AlarmLevel::warning;
    CauseFigures figures{};
};

/// A reading and what the plan wanted then.
struct KilnMoment {
    CurvePoint reading;
    bool byHand = false;
    std::optional<StepPosition> position{};
    std::optional<Temperature> planned{};
    std::optional<HoldBand> hold{}; ///< while a hold is under way
};

/// Follows one firing's readings, O(1) each; found() costs some passes over the last minutes. Causes that
/// would need readings to be believed are not told while the readings themselves are in doubt. One thread at
/// a time.
class CauseWatch {
  public:
    /// `hottest` is the plan's greatest temperature, ceilings included.
    CauseWatch(const Kiln& kiln, std::optional<Temperature> hottest);

    void add(const KilnMoment& moment);
    /// A value of another channel: volts, amps, duty, oxygen, a second probe.
    void addOther(const Channel& channel, Instant at, double value);

    /// What looks to be the matter now, the most telling first.
    std::vector<CauseFound> found(Instant now) const;
    const PowerEvidence& power() const { return m_power; }
    const ProbeEvidence& probe() const { return m_probe; }

  private:
    using Found = std::vector<CauseFound>;
    void findProbe(Found& found) const;
    void findPower(Found& found) const;
    void findFastDrop(Found& found) const;
    void findTooHot(Found& found) const;
    void findClimbing(Found& found) const;
    void findSlowClimb(Found& found) const;
    void findWrongStep(Found& found) const;
    void findProbeLow(Found& found) const;
    void findReduction(Found& found) const;
    std::optional<CauseFound> witnessDrift() const;

    Instant now() const { return m_moment->reading.at; }
    double now_C() const { return m_moment->reading.temperature.celsius(); }
    double level_C() const; ///< of the last 45 s, noise averaged
    std::optional<double> slope(Duration window) const { return m_control.slopePerHour(now(), window); }
    Duration inLeg() const { return now() - m_moment->position->since; }
    bool climbSuffers() const;
    bool mayMoveOn() const;
    CauseFigures figures() const;

    std::optional<Temperature> m_hottest;
    std::optional<KilnMoment> m_moment;
    RecentValues m_control;
    PowerEvidence m_power;
    ProbeEvidence m_probe;
    RecentValues m_oxygen_mV;
    std::map<ChannelId, RecentValues> m_witnesses; ///< other probe minus the control probe
    std::optional<Rate> m_lastClimb;               ///< the plan's, of the last climb
    std::optional<Temperature> m_plannedWhenSame;  ///< when the standing value was first read
    std::optional<Temperature> m_legBegan;         ///< what was read when this leg began
    std::optional<Instant> m_legSince;
};

/// "Looks like ...": the evidence in one or two sentences.
std::string causeWords(const CauseFound& found, const WordStyle& style);

} // namespace ringhold
