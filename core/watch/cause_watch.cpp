#include "core/watch/cause_watch.h"

#include "core/kiln/atmosphere.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

using std::chrono::minutes;

constexpr Duration fresh = minutes(5); ///< older readings tell nothing of now
constexpr double saggingShare = 0.03;  ///< of the volts
constexpr double deepSag = 0.08;
constexpr double suffers = 0.8; ///< a climb below this share of the plan's rate suffers
constexpr double aboveCeiling_C = 3;
constexpr Duration witnessBin = minutes(2), witnessKeep = std::chrono::hours(12);
constexpr double coolest_C = 100; ///< below, a drop means nothing

Rate perHour(double rate) {
    return Rate::fromCelsiusPerHour(rate);
}

bool kilnExplained(const std::vector<CauseFound>& found) {
    return std::ranges::any_of(found, [](const auto& f) { return f.cause != AlarmCause::reducing; });
}

} // namespace

CauseWatch::CauseWatch(const Kiln& kiln, std::optional<Temperature> hottest)
    : m_hottest(hottest), m_power(kiln.ratedPower, kiln.ratedVolts) {}

void CauseWatch::add(const KilnMoment& moment) {
    if (m_moment && moment.reading.at <= m_moment->reading.at)
        return;
    m_moment = moment;
    m_control.add(moment.reading.at, moment.reading.temperature.celsius());
    if (!moment.byHand)
        m_probe.add(moment.reading);
    if (m_probe.same() && m_probe.same()->since == moment.reading.at)
        m_plannedWhenSame = moment.planned;
    const auto& position = moment.position;
    if (position && m_legSince != position->since) {
        m_legSince = position->since;
        m_legBegan = moment.reading.temperature;
    }
    if (position && position->motion == Motion::up && position->rate)
        m_lastClimb = position->rate;
}

void CauseWatch::addOther(const Channel& channel, Instant at, double value) {
    if (channel.quantity == Quantity::lineVolts)
        m_power.addVolts(at, value);
    else if (channel.quantity == Quantity::lineAmps)
        m_power.addAmps(at, value);
    else if (channel.quantity == Quantity::duty)
        m_power.addDuty(at, value);
    else if (channel.quantity == Quantity::oxygenMillivolts)
        m_oxygen_mV.add(at, value);
    else if (channel.quantity == Quantity::temperature && m_moment)
        m_witnesses.try_emplace(channel.id, witnessBin, witnessKeep).first->second.add(at, value - now_C());
}

std::vector<CauseFound> CauseWatch::found(Instant now) const {
    Found found;
    if (!m_moment)
        return found;
    if (now - m_moment->reading.at > fresh)
        return found;
    findProbe(found);
    if (!found.empty() || m_probe.inDoubt())
        return found;
    findTooHot(found);
    findReduction(found);
    findPower(found);
    if (!m_moment->position)
        return found;
    findFastDrop(found);
    findClimbing(found);
    findSlowClimb(found);
    findWrongStep(found);
    findProbeLow(found);
    return found;
}

double CauseWatch::level_C() const {
    return m_control.meanOver(now() - std::chrono::seconds(45), now()).value_or(now_C());
}

CauseFigures CauseWatch::figures() const {
    CauseFigures figures;
    figures.temperature = m_moment->reading.temperature;
    if (const auto rate = slope(minutes(4)))
        figures.rate = perHour(*rate);
    figures.demand = m_power.demand(now());
    figures.volts = m_power.volts(now());
    figures.usualVolts = m_power.usualVolts();
    return figures;
}

void CauseWatch::findProbe(Found& found) const {
    const auto moved = m_moment->planned && m_plannedWhenSame ? *m_moment->planned - *m_plannedWhenSame
                                                              : TemperatureDifference{};
    if (const auto same = m_probe.frozen(moved)) {
        CauseFigures figures;
        figures.temperature = same->value;
        figures.since = same->since;
        found.push_back({AlarmCause::frozen, AlarmLevel::warning, figures});
    }
    if (const auto jump = m_probe.noisy()) {
        CauseFigures figures;
        figures.scatter = jump->now;
        figures.usualScatter = jump->usual;
        found.push_back({AlarmCause::noisy, AlarmLevel::warning, figures});
    }
    const auto rate = slope(minutes(6));
    const bool heating = !m_moment->position || m_moment->position->motion == Motion::up;
    if (heating && m_probe.fallsFromStart() && rate && *rate < -20) {
        auto told = figures();
        told.expected = m_probe.first();
        told.rate = perHour(*rate);
        found.push_back({AlarmCause::probeReversed, AlarmLevel::urgent, told});
    }
}

void CauseWatch::findTooHot(Found& found) const {
    if (!m_hottest || level_C() <= m_hottest->celsius() + aboveCeiling_C)
        return;
    auto told = figures();
    told.expected = m_hottest;
    found.push_back({AlarmCause::aboveCeiling, AlarmLevel::urgent, told});
}

/// The zinc that pure zinc oxide would give off; the glaze's own gives off less.
void CauseWatch::findReduction(Found& found) const {
    const auto mean_mV = m_oxygen_mV.meanOver(now() - minutes(3), now());
    if (!mean_mV || !oxygenProbeIsHot(m_moment->reading.temperature))
        return;
    const Millivolts probe{*mean_mV};
    if (zincPressure_atm(probe, m_moment->reading.temperature) < zincRisk_atm)
        return;
    auto told = figures();
    told.oxygen = probe;
    found.push_back({AlarmCause::reducing, AlarmLevel::warning, told});
}

/// A climb that is behind its plan, or slower.
bool CauseWatch::climbSuffers() const {
    const auto& position = m_moment->position;
    if (!position || position->motion != Motion::up || !position->rate || inLeg() < minutes(10))
        return false;
    const auto rate = slope(minutes(10));
    return rate && *rate < suffers * position->rate->celsiusPerHour();
}

/// Near the end of a stay a controller that keeps other time than the plan may go down already.
bool CauseWatch::mayMoveOn() const {
    const auto& position = *m_moment->position;
    return position.motion == Motion::level && (position.ring || position.expectedEnd - now() < minutes(15));
}

void CauseWatch::findPower(Found& found) const {
    const auto& position = m_moment->position;
    const bool wanted = position && position->motion != Motion::down && !mayMoveOn();
    if (m_power.isOff(now())) {
        const auto rate = slope(minutes(4));
        if (wanted && rate && *rate < -20)
            found.push_back({AlarmCause::powerOff, AlarmLevel::urgent, figures()});
        return;
    }
    const auto down = m_power.voltsDown(now());
    if (!down || *down < saggingShare)
        return;
    const bool holdSuffers = m_moment->hold && now_C() < m_moment->hold->low().celsius();
    const bool pressing = climbSuffers() || holdSuffers || *down >= deepSag;
    auto told = figures();
    if (position)
        told.expectedRate = position->rate;
    found.push_back({AlarmCause::sag, pressing ? AlarmLevel::warning : AlarmLevel::notice, told});
}

void CauseWatch::findFastDrop(Found& found) const {
    const auto& position = *m_moment->position;
    if (position.motion == Motion::down || inLeg() < minutes(3) || mayMoveOn() || now_C() < coolest_C)
        return;
    const auto rate = slope(minutes(2));
    const auto before = m_control.meanOver(now() - minutes(6), now() - minutes(3));
    const auto lately = m_control.meanOver(now() - std::chrono::seconds(50), now());
    const double plain_C = m_moment->hold ? std::max(6.0, m_moment->hold->halfWidth.celsius()) : 10.0;
    const double least_C = std::max(plain_C, 4 * m_probe.scatter_C());
    if (!rate || *rate > -120 || !before || !lately || *before - *lately < least_C)
        return;
    if (std::ranges::any_of(found, [](const auto& f) { return f.cause == AlarmCause::powerOff; }))
        return;
    auto told = figures();
    told.rate = perHour(*rate);
    told.expected = Temperature::fromCelsius(*before);
    found.push_back({AlarmCause::doorOpen, AlarmLevel::urgent, told});
}

/// Climbing though the plan stays or goes down, or far faster than it climbs.
void CauseWatch::findClimbing(Found& found) const {
    const auto& position = *m_moment->position;
    const auto rate = slope(minutes(3));
    if (!rate || inLeg() < minutes(3))
        return;
    auto told = figures();
    told.rate = perHour(*rate);
    told.expected = m_moment->planned;
    const double usual = m_lastClimb ? m_lastClimb->celsiusPerHour() : 60.0;
    told.demand = m_power.demand(now(), std::chrono::seconds(45)); // it comes all at once
    const bool fullyOn = told.demand && (*told.demand > 0.97 || m_power.isSteady(now()));
    // without amps the pace must tell: a stuck relay climbs as fast as the kiln can
    const bool faster = !m_lastClimb || *rate > std::max(1.5 * usual, usual + 40);
    const bool stuck = !told.demand ? faster
                                    : fullyOn && (position.motion == Motion::level || !m_lastClimb ||
                                                  *rate > std::max(1.2 * usual, usual + 20));
    const auto tell = [&](AlarmCause cause, AlarmLevel level) { found.push_back({cause, level, told}); };
    if (position.motion == Motion::level && position.target) {
        const double edge_C =
            m_moment->hold ? m_moment->hold->high().celsius() : position.target->celsius() + 6;
        told.expected = position.target;
        if (level_C() > std::max(edge_C, position.target->celsius() + 4) && *rate > 25)
            tell(stuck ? AlarmCause::relayStuck : AlarmCause::wrongStep, AlarmLevel::urgent);
    } else if (position.motion == Motion::down && m_legBegan && *rate > 25 &&
               level_C() > m_legBegan->celsius() - 3) {
        tell(stuck ? AlarmCause::relayStuck : AlarmCause::wrongStep, AlarmLevel::urgent);
    } else if (position.motion == Motion::up && position.rate && m_moment->planned &&
               level_C() > m_moment->planned->celsius() + 12 &&
               *rate >
                   std::max(1.8 * position.rate->celsiusPerHour(), position.rate->celsiusPerHour() + 40)) {
        told.expectedRate = position.rate;
        tell(fullyOn || !told.demand ? AlarmCause::relayStuck : AlarmCause::wrongStep,
             fullyOn ? AlarmLevel::urgent : AlarmLevel::warning);
    }
}

/// The signature of too little power, as it shows without volts: slower than the plan at full demand. All at
/// once it looks like the mains, bit by bit like the kiln's own limit.
void CauseWatch::findSlowClimb(Found& found) const {
    const auto& position = *m_moment->position;
    if (position.motion != Motion::up || !position.rate || inLeg() < minutes(20) || !m_moment->planned)
        return;
    const bool told = std::ranges::any_of(found, [](const auto& f) {
        return f.cause == AlarmCause::sag || f.cause == AlarmCause::powerOff ||
               f.cause == AlarmCause::doorOpen;
    });
    const double planned = position.rate->celsiusPerHour();
    const auto rate = slope(minutes(12));
    const auto before = m_control.slopePerHour(now() - minutes(12), minutes(18));
    const bool near = position.target && now_C() > position.target->celsius() - 5;
    const double behind_C = m_moment->planned->celsius() - now_C();
    if (told || !rate || !before || near || behind_C < 4)
        return;
    auto evidence = figures();
    const bool fully = !evidence.demand || *evidence.demand > 0.97 || m_power.isSteady(now());
    evidence.rate = perHour(*rate);
    evidence.expected = position.target;
    evidence.expectedRate = position.rate;
    const bool atOnce = *rate < 0.75 * before.value() && before.value() > 0.8 * planned;
    const bool stillClimbs = slope(minutes(4)).value_or(0) > 0.1 * planned;
    const bool halted = *rate < 0.12 * planned;
    const bool voltsKnownWell = evidence.volts && m_power.voltsDown(now()).value_or(0) < saggingShare;
    if (halted && atOnce && (!evidence.demand || !fully))
        found.push_back({AlarmCause::wrongStep, AlarmLevel::warning, evidence});
    else if (fully && atOnce && stillClimbs && !voltsKnownWell)
        found.push_back({AlarmCause::sag, AlarmLevel::warning, evidence});
    else if (fully && *rate<0.5 * planned&& * rate> - 30)
        found.push_back({AlarmCause::ceiling, AlarmLevel::warning, evidence});
    else if (!fully && *rate < 0.12 * planned && behind_C > 15)
        found.push_back({AlarmCause::wrongStep, AlarmLevel::warning, evidence});
}

void CauseWatch::findWrongStep(Found& found) const {
    const auto& position = *m_moment->position;
    const auto rate = slope(minutes(8));
    if (!rate || kilnExplained(found))
        return;
    auto told = figures();
    told.rate = perHour(*rate);
    told.expected = position.target;
    told.expectedRate = position.rate;
    const bool off = m_moment->hold && (level_C() < m_moment->hold->low().celsius() - 4 ||
                                        level_C() > m_moment->hold->high().celsius() + 4);
    if (position.motion == Motion::level && off && std::abs(*rate) > 12 && inLeg() > minutes(8)) {
        const bool away = (*rate > 0) == (level_C() > position.target->celsius());
        if (away)
            found.push_back({AlarmCause::wrongStep, AlarmLevel::warning, told});
    } else if (position.motion == Motion::down && m_legBegan && position.target && inLeg() > minutes(5) &&
               level_C() > m_legBegan->celsius() - 5 && level_C() > position.target->celsius() + 10) {
        found.push_back(
            {AlarmCause::wrongStep, inLeg() > minutes(10) ? AlarmLevel::urgent : AlarmLevel::warning, told});
    }
}

/// A second probe that goes away from this one within one hold.
std::optional<CauseFound> CauseWatch::witnessDrift() const {
    const Instant holdSince = m_moment->position->since;
    for (const auto& [channel, difference] : m_witnesses) {
        if (difference.empty() || now() - difference.lastAt() > fresh)
            continue;
        const auto first = difference.meanOver(holdSince + minutes(15), holdSince + minutes(30));
        const auto last = difference.meanOver(now() - minutes(10), now());
        if (!first || !last || *last - *first < 5)
            continue;
        CauseFound drift{AlarmCause::probeLow, AlarmLevel::warning, figures()};
        drift.figures.scatter = TemperatureDifference::fromCelsius(*last - *first);
        drift.figures.since = holdSince;
        return drift;
    }
    return std::nullopt;
}

/// While the reading stands the power settles within an hour, each half hour bringing less than half of the
/// change before, as the brick takes on the chamber's temperature from either side. Power that goes on rising
/// heats a kiln that is hotter than its reading.
void CauseWatch::findProbeLow(Found& found) const {
    if (!m_moment->hold || inLeg() < minutes(90) || kilnExplained(found))
        return;
    if (auto drift = witnessDrift()) {
        found.push_back(*drift);
        return;
    }
    const double off_C = (m_moment->reading.temperature - m_moment->hold->target).celsius();
    const auto last = m_power.power(now(), minutes(20));
    const auto middle = m_power.power(now() - minutes(30), minutes(20));
    const auto first = m_power.power(now() - minutes(60), minutes(20));
    if (std::abs(off_C) > m_moment->hold->halfWidth.celsius() || !last || !middle || !first ||
        first->watts <= 0)
        return;
    // all at once it is something else
    const auto now_W = m_power.power(now(), minutes(4));
    if (!now_W || std::abs(now_W->watts - last->watts) > 0.03 * first->watts)
        return;
    const double early_W = middle->watts - first->watts, late_W = last->watts - middle->watts;
    if (late_W < 0.008 * first->watts || late_W < 0.8 * early_W || early_W + late_W < 0.02 * first->watts)
        return;
    auto told = figures();
    told.power = last;
    told.powerBefore = first;
    found.push_back({AlarmCause::probeLow, AlarmLevel::notice, told});
}

} // namespace ringhold
