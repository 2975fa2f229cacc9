#include "core/watch/power_evidence.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr Duration recently = std::chrono::minutes(2);
constexpr Duration known = std::chrono::minutes(5);
constexpr double usualMemory_h = 1;
constexpr double ordinaryChange = 0.025; ///< of the usual volts; more is not let into the usual
constexpr double nothing_A = 0.5;
constexpr double deadVolts = 0.5; ///< of the usual

constexpr Duration alike = std::chrono::seconds(90);
constexpr Duration offFor = std::chrono::seconds(30);
constexpr double leastOfRated = 0.75; ///< worn elements draw no less than this share of the rated amps
constexpr double steadyShare = 0.015;

} // namespace

PowerEvidence::PowerEvidence(std::optional<Power> rated, std::optional<Volts> ratedVolts)
    : m_rated(rated), m_ratedVolts(ratedVolts) {
    if (rated && ratedVolts && ratedVolts->volts > 0)
        m_mostConductance_S = leastOfRated * rated->watts / (ratedVolts->volts * ratedVolts->volts);
}

void PowerEvidence::addVolts(Instant at, double volts) {
    m_volts.add(at, volts);
    if (!m_usual_V) {
        const bool nearRated = m_ratedVolts && std::abs(volts / m_ratedVolts->volts - 1) < 0.1;
        m_usual_V = nearRated || !m_ratedVolts ? volts : m_ratedVolts->volts;
    } else if (std::abs(volts / *m_usual_V - 1) < ordinaryChange) {
        *m_usual_V += (volts - *m_usual_V) * -std::expm1(-inHours(at - *m_usualAt) / usualMemory_h);
    }
    m_usualAt = at;
}

void PowerEvidence::addAmps(Instant at, double amps) {
    m_amps.add(at, amps);
    const auto mean = m_amps.meanOver(at - std::chrono::minutes(1), at);
    const auto volts = m_volts.meanOver(at - std::chrono::minutes(1), at);
    const double line = volts.value_or(m_ratedVolts.value_or(Volts{0}).volts);
    if (mean && line > 0)
        m_mostConductance_S = std::max(m_mostConductance_S, *mean / line);
}

std::optional<double> PowerEvidence::recent(const RecentValues& values, Instant now, Duration window) const {
    if (values.empty() || now - values.lastAt() > known)
        return std::nullopt;
    const auto mean = values.meanOver(now - window, now);
    return mean ? mean : std::optional(values.last());
}

std::optional<Volts> PowerEvidence::volts(Instant now) const {
    const auto mean = recent(m_volts, now, recently);
    return mean ? std::optional(Volts{*mean}) : std::nullopt;
}

std::optional<Amps> PowerEvidence::amps(Instant now) const {
    const auto mean = recent(m_amps, now, recently);
    return mean ? std::optional(Amps{*mean}) : std::nullopt;
}

std::optional<Volts> PowerEvidence::usualVolts() const {
    return m_usual_V ? std::optional(Volts{*m_usual_V}) : std::nullopt;
}

std::optional<double> PowerEvidence::voltsDown(Instant now) const {
    const auto greatest = m_volts.greatestOver(now - alike, now);
    return greatest && m_usual_V ? std::optional(std::max(0.0, 1 - *greatest / *m_usual_V)) : std::nullopt;
}

std::optional<double> PowerEvidence::demand(Instant now, Duration window) const {
    if (const auto duty = recent(m_duty, now, window))
        return std::clamp(*duty, 0.0, 1.0);
    const auto mean = recent(m_amps, now, window);
    const double line = recent(m_volts, now, window).value_or(m_ratedVolts.value_or(Volts{0}).volts);
    if (!mean || line <= 0 || !m_rated || m_mostConductance_S <= 0)
        return std::nullopt;
    return std::clamp(*mean / line / m_mostConductance_S, 0.0, 1.0);
}

std::optional<Power> PowerEvidence::power(Instant now, Duration window) const {
    const auto amps = recent(m_amps, now, window);
    const auto volts = recent(m_volts, now, window);
    if (amps && (volts || m_ratedVolts))
        return Power{*amps * volts.value_or(m_ratedVolts.value_or(Volts{0}).volts)};
    const auto duty = recent(m_duty, now, window);
    if (!duty || !m_rated)
        return std::nullopt;
    return Power{*duty * m_rated->watts *
                 (volts && m_ratedVolts ? powerShareAt(Volts{*volts}, *m_ratedVolts) : 1.0)};
}

bool PowerEvidence::isOff(Instant now) const {
    const auto line = m_volts.greatestOver(now - offFor, now);
    if (line && m_usual_V && *line < deadVolts * *m_usual_V)
        return true;
    const auto current = m_amps.greatestOver(now - 4 * offFor, now);
    return current && *current < nothing_A;
}

bool PowerEvidence::isSteady(Instant now) const {
    const auto& values = m_duty.empty() ? m_amps : m_duty;
    const auto least = values.leastOver(now - std::chrono::minutes(12), now);
    const auto greatest = values.greatestOver(now - std::chrono::minutes(12), now);
    const auto lately = demand(now, std::chrono::minutes(3));
    const auto before = demand(now - std::chrono::minutes(6), std::chrono::minutes(6));
    return least && greatest && *greatest > nothing_A / 10 && lately && before &&
           std::abs(*lately - *before)<steadyShare&& * least> 0.95 * *greatest;
}

} // namespace ringhold
