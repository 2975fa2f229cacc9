// What a firing has taken from the mains so far, and what it is still to take.
#pragma once

#include "core/firing/kiln_records.h"
#include "core/firing/records.h"
#include "core/plan/plan_energy.h"
#include "core/watch/step_follower.h"

#include <map>
#include <optional>
#include <vector>

namespace ringhold {

/// Adds up volts, amps and duty as they come, O(1) a value. From amps and volts (the rated ones where none
/// come), else from duty and rated power, corrected for the volts. Channels of amps are added up. Between
/// values more than 10 min apart nothing is counted.
class EnergyMeter {
  public:
    EnergyMeter(std::optional<Power> rated, std::optional<Volts> ratedVolts)
        : m_rated(rated), m_ratedVolts(ratedVolts) {}

    /// Other quantities are left out.
    void add(const Channel& channel, Instant at, double value);

    /// Nothing before there is something to reckon with.
    std::optional<Energy> soFar() const;

  private:
    struct Last {
        Instant at;
        double watts;
    };
    void addPower(ChannelId channel, Instant at, double watts);

    std::optional<Power> m_rated;
    std::optional<Volts> m_ratedVolts;
    std::optional<double> m_volts;
    bool m_amps = false; ///< amps come: duty is not needed
    std::map<ChannelId, Last> m_last;
    double m_joules = 0;
    bool m_any = false;
};

/// By the stands of the electricity meter that were written down, struck ones left out: the newest less the
/// oldest. Nothing for fewer than two, or where the newest is less.
std::optional<Energy> energyByMeter(const std::vector<MeterStand>& stands);

/// What the rest of the plan is to take from that instant on, by the model kiln; `context` as the follower
/// had it. Some milliseconds. Nothing once the plan is done.
std::optional<Energy> energyToCome(const StepFollower& follower, const PlanContext& context, Instant now);

/// A firing's energy as it stands.
struct FiringEnergy {
    std::optional<Energy> soFar;   ///< from the channels
    std::optional<Energy> byMeter; ///< between the first and the last stand written down
    std::optional<Energy> toCome;  ///< by the model
    std::optional<double> pricePerKilowattHour;

    /// In the potter's currency; the meter's word before the channels'.
    std::optional<double> costSoFar() const;
    std::optional<double> costInAll() const;
};

} // namespace ringhold
