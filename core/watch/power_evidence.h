// What volts, amps and duty tell of the kiln's power.
#pragma once

#include "core/units/electrical.h"
#include "core/watch/recent_values.h"

#include <optional>

namespace ringhold {

/// Share of power that is left at `now` volts instead of `usual`: P = V²/R, so 5 % less volts is 9.75 % less
/// power. `usual` above 0.
constexpr double powerShareAt(Volts now, Volts usual) {
    return now.volts / usual.volts * (now.volts / usual.volts);
}

/// Follows the electrical channels of one firing; any may be missing. O(1) a value.
class PowerEvidence {
  public:
    PowerEvidence(std::optional<Power> rated, std::optional<Volts> ratedVolts);

    void addVolts(Instant at, double volts);
    void addAmps(Instant at, double amps);
    void addDuty(Instant at, double share) { m_duty.add(at, share); }

    /// Mean of the last 2 min; nothing when none came in the last 5.
    std::optional<Volts> volts(Instant now) const;
    std::optional<Amps> amps(Instant now) const;
    /// The firing's own usual: a slow mean that a sag does not drag along.
    std::optional<Volts> usualVolts() const;
    /// By how much of itself the voltage is down, at least 0: what all of the last 90 s share.
    std::optional<double> voltsDown(Instant now) const;
    /// Share of the power that the kiln would take at these volts if fully on, 0 to 1: from duty, else from
    /// amps against those of the rated power, or the most amps per volt yet seen if that is more. Elements
    /// worn by a tenth show as 0.91. Nothing without duty and rating.
    std::optional<double> demand(Instant now, Duration window = std::chrono::minutes(2)) const;
    /// Power taken, mean over the window that ends then: from volts and amps, else from duty and rating.
    std::optional<Power> power(Instant now, Duration window) const;
    /// Hardly any volts or amps for half a minute.
    bool isOff(Instant now) const;
    /// The demand hardly changed in 12 min: a controller that holds or climbs with power to spare changes it
    /// all the time, a kiln that gives all it can does not.
    bool isSteady(Instant now) const;

  private:
    std::optional<double> recent(const RecentValues& values, Instant now, Duration window) const;

    std::optional<Power> m_rated;
    std::optional<Volts> m_ratedVolts;
    RecentValues m_volts, m_amps, m_duty;
    std::optional<double> m_usual_V;
    std::optional<Instant> m_usualAt;
    double m_mostConductance_S = 0;
};

} // namespace ringhold
