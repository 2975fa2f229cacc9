// Which hold is under way, whoever tells it: the plan, the potter, or the curve itself.
#pragma once

#include "core/watch/hold_watch.h"
#include "core/watch/steady_level.h"
#include "core/watch/step_follower.h"
#include "core/watch/told_hold.h"

#include <optional>
#include <vector>

namespace ringhold {

/// Who says that the kiln is to stay there.
enum class HoldSource {
    plan,
    potter, ///< by the setting "hold"
    curve   ///< nobody: it has been steady for 20 min
};

struct HoldUnderWay {
    HoldBand band;
    Instant from; ///< of the arrival
    HoldSource source = HoldSource::plan;
    std::optional<Duration> planned{}; ///< length, by the plan
    bool operator==(const HoldUnderWay&) const;
};

/// Follows one firing's readings from hold to hold and keeps a watch on the one under way. Where the plan
/// waits for a cone or runs rings there is none. O(1) a reading, but for a look back over the last 20 min
/// once a minute. A hold that no plan tells ends with an absence from its band that is longer than the rules
/// allow. One thread at a time.
class HoldFollower {
  public:
    explicit HoldFollower(HoldWatchSettings watch = {}, SteadyRules steady = {})
        : m_watchSettings(watch), m_rules(steady) {}

    /// From the start again, with what the potter told, in time order.
    void restart(const std::vector<Setting>& settings, TemperatureScale scale);
    /// The next reading, which the curve has already; what the curve has later is not looked at. The follower
    /// is null without a plan.
    void add(const CurvePoint& reading, const Curve& curve, const StepFollower* follower);
    /// What was told since the last reading counts too.
    void passTime(Instant now, const Curve& curve, const StepFollower* follower);

    const std::optional<HoldUnderWay>& hold() const { return m_hold; }
    /// Null when there is none.
    const HoldWatch* watch() const { return m_watch ? &*m_watch : nullptr; }

  private:
    void obey(Instant now);
    std::optional<HoldUnderWay> planned(const StepFollower& follower) const;
    std::optional<HoldUnderWay> unplanned(const CurvePoint& reading, const Curve& curve);
    bool goesOn(const CurvePoint& reading);
    void begin(const HoldUnderWay& hold, const CurvePoint& reading, const Curve& curve);
    void end();

    HoldWatchSettings m_watchSettings;
    SteadyRules m_rules;
    std::vector<ToldHold> m_told;
    std::size_t m_obeyed = 0;                         ///< of them
    std::optional<Temperature> m_target;              ///< told, and not over
    std::optional<TemperatureDifference> m_halfWidth; ///< likewise
    std::optional<Instant> m_targetTold;
    std::optional<Instant> m_looked; ///< for a steady level
    Instant m_lastInside;
    std::optional<HoldUnderWay> m_hold;
    std::optional<HoldWatch> m_watch;
};

} // namespace ringhold
