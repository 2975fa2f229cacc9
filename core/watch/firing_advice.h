// What the potter could do now, and what would come of it: always with an interval.
#pragma once

#include "core/cones/advice.h"
#include "core/watch/firing_forecast.h"

#include <optional>
#include <string>
#include <vector>

namespace ringhold {

/// How a cone would stand once the kiln has cooled, if it were dropped now.
struct ConeAfterDrop {
    std::string cone;
    Interval<double> now;   ///< hours, 0 to 6
    Interval<double> after; ///< what the heat of cooling still adds is in it
};

/// When to drop for a cone to go down while the kiln cools, and when it would be down without.
struct DropAdvice {
    TimeInterval drop; ///< from then on a drop brings it down yet; none is before the last reading
    TimeInterval down; ///< if the kiln goes on instead
};

/// core/cones/advice.h for a live firing, as it stands at the last reading: temperatures as the plan goes on,
/// drops as it drops (at 300 °C/h where it has none). Forecaster and follower (null without a plan) outlive
/// it. An answer costs up to some milliseconds.
class FiringAdvice {
  public:
    FiringAdvice(const FiringForecast& forecaster, const StepFollower* follower, std::size_t pack = 0);

    /// Whether there are readings enough to say anything.
    bool can() const { return m_shown.has_value(); }
    Instant now() const { return m_shown->at; }
    Temperature temperature() const { return m_shown->temperature; }

    /// When the cone is down if the kiln goes to that temperature and stays.
    std::optional<TimeInterval> downHolding(Temperature at, const std::string& cone) const;

    /// The steady climb from now on that has the cone down by then: the rates for which it is so by 5, 50 and
    /// 95 % of belief, none slower than 0 nor faster than `fastestRate()`. Nothing when even the fastest is
    /// too slow for 50 %; all 0 when it is down by then in a kiln that stays as it is.
    std::optional<Interval<Rate>> climbToBeDownBy(Instant by, const std::string& cone) const;

    /// The hour of a cone after cooling, if the kiln stays so much longer at its top and then drops: at the
    /// present temperature, or at where `firingCone` goes down when that is still to come.
    std::optional<Interval<double>> hourAfterMore(Duration more, const std::string& cone,
                                                  const std::string& firingCone) const;

    /// The cones that are not down yet, in the pack's order.
    std::vector<ConeAfterDrop> afterDropNow() const;

    /// Nothing for a cone that is surely down.
    std::optional<DropAdvice> earliestDrop(const std::string& cone) const;

  private:
    const ConeForecast* find(const Forecast& forecast, const std::string& cone) const;
    Rate drop() const;
    /// The course to where the firing cone goes down by the forecast's middle; a point where it is down.
    Curve upToTheTop(const std::string& firingCone) const;

    const FiringForecast& m_forecaster;
    const StepFollower* m_follower;
    std::size_t m_pack;
    std::optional<ClimbShown> m_shown;
};

} // namespace ringhold
