#include "core/watch/energy_meter.h"

#include "core/watch/curve_parts.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr Duration longestGap = std::chrono::minutes(10);

} // namespace

void EnergyMeter::add(const Channel& channel, Instant at, double value) {
    if (channel.quantity == Quantity::lineVolts) {
        m_volts = value;
    } else if (channel.quantity == Quantity::lineAmps) {
        if (!m_amps)
            m_last.clear();
        m_amps = true;
        if (m_volts || m_ratedVolts)
            addPower(channel.id, at, value * m_volts.value_or(m_ratedVolts.value_or(Volts{}).volts));
    } else if (channel.quantity == Quantity::duty && !m_amps && m_rated) {
        const bool known = m_volts && m_ratedVolts && m_ratedVolts->volts > 0;
        const double line = known ? *m_volts / m_ratedVolts->volts : 1.0;
        addPower(channel.id, at, value * m_rated->watts * line * line);
    }
}

void EnergyMeter::addPower(ChannelId channel, Instant at, double watts) {
    const auto last = m_last.find(channel);
    if (last != m_last.end() && at > last->second.at && at - last->second.at <= longestGap) {
        m_joules += (watts + last->second.watts) / 2 * inSeconds(at - last->second.at);
        m_any = true;
    }
    m_last[channel] = {at, watts};
}

std::optional<Energy> EnergyMeter::soFar() const {
    return m_any ? std::optional(Energy{m_joules}) : std::nullopt;
}

std::optional<Energy> energyByMeter(const std::vector<MeterStand>& stands) {
    std::vector<std::pair<Instant, double>> counted;
    for (const auto& stand : stands)
        if (!stand.struck && stand.unit == MeterUnit::kilowattHours)
            counted.emplace_back(stand.at, stand.stand);
    if (counted.size() < 2)
        return std::nullopt;
    const auto [first, last] = std::ranges::minmax(counted);
    return last.second >= first.second ? std::optional(Energy::fromKilowattHours(last.second - first.second))
                                       : std::nullopt;
}

std::optional<Energy> energyToCome(const StepFollower& follower, const PlanContext& context, Instant now) {
    const auto& ahead = follower.ahead();
    if (!follower.position() || ahead.curve.size() < 2 || now >= ahead.end())
        return std::nullopt;
    const double whole_J = planEnergy(ahead, context).total.joules;
    if (now <= ahead.start())
        return Energy{whole_J};
    PlannedCurve gone = ahead;
    gone.curve = cut(ahead.curve, ahead.start(), now);
    std::erase_if(gone.legs, [&](const PlannedLeg& leg) { return leg.start >= now; });
    std::erase_if(gone.steps, [&](const PlannedStep& step) { return step.start >= now; });
    if (!gone.legs.empty())
        gone.legs.back().end = std::min(gone.legs.back().end, now);
    if (!gone.steps.empty())
        gone.steps.back().end = std::min(gone.steps.back().end, now);
    return Energy{std::max(0.0, whole_J - planEnergy(gone, context).total.joules)};
}

std::optional<double> FiringEnergy::costSoFar() const {
    const auto& energy = byMeter ? byMeter : soFar;
    return energy && pricePerKilowattHour ? std::optional(energy->kilowattHours() * *pricePerKilowattHour)
                                          : std::nullopt;
}

std::optional<double> FiringEnergy::costInAll() const {
    const auto gone = costSoFar();
    return gone && toCome ? std::optional(*gone + toCome->kilowattHours() * *pricePerKilowattHour)
                          : std::nullopt;
}

} // namespace ringhold
