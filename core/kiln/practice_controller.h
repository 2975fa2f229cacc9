// The practice kiln's own controller: follows a plan by the probe's reading, as a kiln's controller would.
// It is part of the make-believe; Ringhold itself controls nothing.
#pragma once

#include "core/plan/plan.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace ringhold {

/// Slope and smoothed value of a noisy reading, from two exponential averages.
class ReadingTrend {
  public:
    void take(Temperature reading, Duration step);
    /// Free of most noise, about 10 s behind. Only after a reading was taken.
    Temperature smoothed() const { return *m_fast; }
    double slope_C_per_s() const;

  private:
    std::optional<Temperature> m_fast;
    std::optional<Temperature> m_slow;
};

/// PI with a limited integral, on the reading set forward by the probe's lag. A step without a rate is run at
/// full power or none until the chamber is about to arrive; then PI takes over with the power that would end
/// the slope.
class PracticeController {
  public:
    /// `fullPowerClimb`: how fast the chamber alone would heat if all power stayed in it.
    PracticeController(const Plan& plan, Rate fullPowerClimb, Duration probeLag);

    /// The share of full power wanted for the next `step` (1 to 10 s), 0 to 1. Without a reading it is 0.
    double demand(std::optional<Temperature> reading, Duration step);

    /// A person saw that cone down: a cone wait for it, now or to come, is over, and the plan goes on behind
    /// it. False when the plan waits for no such cone any more.
    bool coneDown(std::string_view cone);

    /// The plan's step that is being followed; the number of steps when all are done.
    std::size_t step() const;
    bool finished() const { return m_leg == m_legs.size(); }

  private:
    /// A plan's step is one leg or several: go to a temperature, or stay at it.
    struct Leg {
        std::size_t step = 0;
        Temperature to = Temperature::fromCelsius(0);
        std::optional<Rate> rate{};      ///< sign does not matter; nothing when as fast as may be
        std::optional<Duration> dwell{}; ///< stay so long instead of going
        std::string cone{};              ///< the cone that is waited for
    };
    static std::vector<Leg> legsOf(const Plan& plan);
    static void append(std::vector<Leg>& legs, std::size_t step, const Step& what);

    Temperature expected() const;
    bool arrived(const Leg& leg) const;
    double follow(const Leg& leg, Duration step);
    double runFree(const Leg& leg);
    void moveSetPoint(const Leg& leg, Duration step);
    double proportionalIntegral(Duration step);
    void enter(std::size_t leg);

    std::vector<Leg> m_legs;
    std::size_t m_stepCount;
    double m_fullPowerClimb_C_per_s;
    Duration m_probeLag;

    std::size_t m_leg = 0;
    bool m_free = true;                ///< in a leg without a rate: PI has not yet taken over
    std::optional<double> m_freePower; ///< of such a leg, once it is known which way it goes
    Duration m_dwelt{};
    std::optional<Temperature> m_set;
    ReadingTrend m_trend;
    double m_integral = 0; ///< share of full power
};

} // namespace ringhold
