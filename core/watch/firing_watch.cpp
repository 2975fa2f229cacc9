#include "core/watch/firing_watch.h"

#include "core/learn/firing_figures.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr Duration potterHoldsOn = std::chrono::hours(24); ///< nobody told when a told hold ends

/// The greatest temperature that the plan ever allows, ceilings included.
std::optional<Temperature> hottestOf(const std::optional<Plan>& plan) {
    std::optional<Temperature> hottest;
    const auto allow = [&](Temperature t) { hottest = std::max(hottest.value_or(t), t); };
    for (const auto& step : plan ? plan->steps : std::vector<Step>{}) {
        if (const auto* climb = std::get_if<Climb>(&step))
            allow(climb->to);
        else if (const auto* hold = std::get_if<Hold>(&step))
            allow(hold->at + hold->band);
        else if (const auto* wait = std::get_if<ConeWait>(&step))
            allow(wait->ceiling);
        else if (const auto* rings = std::get_if<Rings>(&step))
            allow(rings->high);
    }
    return hottest;
}

/// When the potter last said something that moves the plan on, which may be after the last reading.
std::optional<Instant> newestWord(const FiringRecord& record) {
    std::optional<Instant> newest;
    for (const auto& correction : record.stepCorrections)
        if (!correction.struck)
            newest = std::max(newest.value_or(correction.at), correction.at);
    for (const auto& look : record.looks)
        if (!look.struck && !look.cold)
            newest = std::max(newest.value_or(look.at), look.at);
    return newest;
}

} // namespace

FiringWatch::FiringWatch(WatchedFiring watched, WatchSettings settings)
    : m_watched(std::move(watched)), m_settings(std::move(settings)),
      m_board(m_watched.firing->record().firing.id, m_settings.alarms),
      m_firingCone(ringhold::firingCone(m_watched.firing->record())),
      m_causes(m_watched.firing->record().kiln, hottestOf(m_watched.firing->record().firing.plan)),
      m_energy(m_watched.firing->record().kiln.ratedPower, m_watched.firing->record().kiln.ratedVolts),
      m_holds(m_settings.hold, m_settings.steady), m_attended(m_watched.firing->record().firing.began) {
    const auto& record = m_watched.firing->record();
    if (m_watched.alarms.empty())
        m_watched.alarms = record.alarmEvents;
    m_board.restore(m_watched.alarms);
}

Result<std::unique_ptr<FiringWatch>> FiringWatch::make(WatchedFiring watched, WatchSettings settings) {
    std::unique_ptr<FiringWatch> watch(new FiringWatch(std::move(watched), std::move(settings)));
    if (const auto begun = watch->begin(); !begun)
        return begun.error();
    return watch;
}

Status FiringWatch::begin() {
    const auto& record = m_watched.firing->record();
    if (!record.packs.empty()) {
        auto forecaster = FiringForecast::make(record.packs, m_watched.priors);
        if (!forecaster)
            return forecaster.error();
        m_forecaster.emplace(std::move(*forecaster));
    }
    if (record.firing.plan) {
        PlanContext context;
        context.start = record.firing.began;
        context.kiln = kilnModelFor(record.kiln.ratedPower, record.kiln.ratedVolts);
        context.coneDown = [this](const Curve& whole, const std::string& cone) {
            return m_forecaster ? m_forecaster->coneDownOn(whole, cone) : std::nullopt;
        };
        m_context = context;
        m_follower.emplace(*record.firing.plan, context);
    }
    if (m_follower)
        m_follower->restart({}, record.looks, record.stepCorrections);
    m_holds.restart(record.settings, m_settings.style.scale);
    const auto& curve = m_watched.firing->controlCurve();
    std::size_t others = 0;
    for (const auto& point : curve) {
        takeUpOthers(others, point.at);
        if (m_follower)
            m_follower->add(point);
        m_holds.add(point, curve, follower());
        watchCauses(point);
    }
    followFromStart(record.firing.began);
    return {};
}

/// What the other channels say up to that instant, of what the book has.
void FiringWatch::takeUpOthers(std::size_t& next, Instant until) {
    const auto& record = m_watched.firing->record();
    const auto control = m_watched.firing->controlChannel();
    for (; next < record.readings.size() && record.readings[next].at <= until; ++next) {
        const auto& reading = record.readings[next];
        const auto channel = std::ranges::find(record.channels, reading.channel, &Channel::id);
        if (reading.struck || channel == record.channels.end())
            continue;
        m_energy.add(*channel, reading.at, reading.value);
        if (control != channel->id)
            m_causes.addOther(*channel, reading.at, reading.value);
    }
}

FiringEnergy FiringWatch::energy(Instant now) const {
    const auto& record = m_watched.firing->record();
    return {m_energy.soFar(), energyByMeter(record.meterStands),
            m_follower ? energyToCome(*m_follower, m_context, now) : std::nullopt,
            record.kiln.pricePerKilowattHour};
}

void FiringWatch::onReading(const Channel& channel, const Reading& reading) {
    const auto control = m_watched.firing->controlChannel();
    m_energy.add(channel, reading.at, reading.value);
    if (control && channel.id == *control)
        follow({reading.at, Temperature::fromCelsius(reading.value)});
    else
        m_causes.addOther(channel, reading.at, reading.value);
}

void FiringWatch::follow(const CurvePoint& point) {
    if (m_forecaster)
        m_forecaster->add(point);
    if (m_follower)
        m_follower->add(point);
    m_holds.add(point, m_watched.firing->controlCurve(), follower());
    watchCauses(point);
}

void FiringWatch::watchCauses(const CurvePoint& point) {
    const auto& channels = m_watched.firing->record().channels;
    const auto control = m_watched.firing->controlChannel();
    const bool byHand = std::ranges::any_of(
        channels, [&](const Channel& c) { return control == c.id && c.label == byHandLabel; });
    KilnMoment moment{point, byHand};
    m_causesThrough = point.at;
    if (m_follower) {
        moment.position = m_follower->position();
        moment.planned = m_follower->plannedAt(point.at);
    }
    if (const auto& hold = holdUnderWay(); hold && hold->source != HoldSource::curve) {
        moment.hold = hold->band;
        if (hold->source == HoldSource::potter) { // as good as a plan's
            moment.position = StepPosition{
                0, {}, Motion::level, hold->from, point.at + potterHoldsOn, hold->band.target, {}, {}};
            moment.planned = hold->band.target;
        }
    }
    m_causes.add(moment);
}

void FiringWatch::onLinesChanged(Instant from) {
    followFromStart(from);
}

void FiringWatch::followFromStart(Instant from) {
    const auto& record = m_watched.firing->record();
    const auto& curve = m_watched.firing->controlCurve();
    if (m_forecaster && !m_forecaster->restart(curve, from, record.looks).ok())
        m_forecast.reset(); // a look out of the readings' reach: it counts once there are readings
    if (m_follower)
        m_follower->restart({}, record.looks, record.stepCorrections);
    m_holds.restart(record.settings, m_settings.style.scale);
    for (const auto& point : curve) {
        if (m_follower)
            m_follower->add(point);
        m_holds.add(point, curve, follower());
        // what the causes know already is not forgotten: volts are not read again
        if (!m_causesThrough || point.at > *m_causesThrough)
            watchCauses(point);
    }
    if (const auto word = newestWord(record); m_follower && word && !curve.empty()) {
        m_follower->passTime(*word);
        m_holds.add(curve.back(), curve, follower());
    }
    if (!record.settings.empty())
        m_holds.passTime(record.settings.back().at, curve, follower());
    for (const auto& look : record.looks)
        attended(look.at);
    for (const auto& note : record.notes)
        attended(note.at);
    for (const auto& setting : record.settings)
        attended(setting.at);
    for (const auto& reading : record.readings)
        if (reading.origin == Origin::hand)
            attended(reading.at);
    refreshForecast();
}

void FiringWatch::refreshForecast() {
    m_forecast.reset();
    if (!m_forecaster)
        return;
    if (auto forecast = m_forecaster->forecast(follower()))
        m_forecast = std::move(*forecast);
    if (const auto last = m_watched.firing->lastReading())
        m_forecastAt = last->at;
}

void FiringWatch::attended(Instant at) {
    m_attended = std::max(m_attended, at);
}

std::vector<AlarmEvent> FiringWatch::check(Instant now, const WatchTroubles& troubles) {
    const auto last = m_watched.firing->lastReading();
    if (last && (!m_forecastAt || last->at - *m_forecastAt >= m_settings.forecastEvery))
        refreshForecast();
    return m_board.update(now, findings(now, troubles));
}

std::vector<AlarmEvent> FiringWatch::acknowledge(AlarmCause cause, Instant now, const std::string& who) {
    attended(now);
    return m_board.acknowledge(cause, now, who);
}

std::vector<AlarmEvent> FiringWatch::acknowledgeAll(Instant now, const std::string& who) {
    attended(now);
    return m_board.acknowledgeAll(now, who);
}

std::optional<RingClock> FiringWatch::ringClock(Instant now) const {
    return m_follower ? ringhold::ringClock(*m_follower, now) : std::nullopt;
}

} // namespace ringhold
