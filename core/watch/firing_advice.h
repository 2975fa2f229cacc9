// What the potter could do now, and what would come of it: always with an interval.
#pragma once

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

/// Of one pack of a live firing, as it stands at the last reading; forecaster and follower (null without a
/// plan) outlive it. An answer costs up to a few dozen milliseconds.
class FiringAdvice {
  public:
    FiringAdvice(const FiringForecast& forecaster, const StepFollower* follower, std::size_t pack = 0);

    /// Whether there are readings enough to say anything.
    bool can() const { return m_shown.has_value(); }
    Instant now() const { return m_shown->at; }
    Temperature temperature() const { return m_shown->temperature; }

    /// When the cone is down if the kiln goes to that temperature and stays: up at the climb shown (at least
    /// 30 °C/h), down as it falls.
    std::optional<TimeInterval> downHolding(Temperature at, const std::string& cone) const;

    /// The steady climb from now on that has the cone down by then: the rates for which it is so by 5, 50 and
    /// 95 % of belief, none slower than 0 nor faster than `fastestClimb`. Nothing when even the fastest is
    /// too slow for 50 %; all 0 when it is down by then in a kiln that stays as it is.
    std::optional<Interval<Rate>> climbToBeDownBy(Instant by, const std::string& cone) const;

    /// The hour of a cone after cooling, if the kiln stays so much longer at its top and then drops: at the
    /// present temperature, or from when `firingCone` goes down where that is still to come.
    std::optional<Interval<double>> hourAfterMore(Duration more, const std::string& cone,
                                                  const std::string& firingCone) const;

    /// The cones that are not down yet, in the pack's order.
    std::vector<ConeAfterDrop> afterDropNow() const;

    static constexpr double fastestClimb_C_per_h = 400;

  private:
    const ConeForecast* find(const Forecast& forecast, const std::string& cone) const;
    std::optional<TimeInterval> downOn(const Curve& curve, const std::string& cone) const;
    /// The curve so far goes to the firing cone's end by the plan's climb.
    Curve upToTheTop(const std::string& firingCone) const;
    void addDrop(Curve& curve) const;

    const FiringForecast& m_forecaster;
    const StepFollower* m_follower;
    std::size_t m_pack;
    std::optional<ClimbShown> m_shown;
};

} // namespace ringhold
