// What a FiringWatch finds the matter to be.
#include "core/cones/bending.h"
#include "core/watch/alarm_words.h"
#include "core/watch/firing_watch.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr TemperatureDifference plainDrop = TemperatureDifference::fromCelsius(50);
constexpr Duration urgentSilence = std::chrono::minutes(5); ///< of readings

/// Whether such a cause explains that a hold is left.
bool explainsHold(AlarmCause cause) {
    return cause == AlarmCause::sag || cause == AlarmCause::powerOff || cause == AlarmCause::doorOpen ||
           cause == AlarmCause::relayStuck || cause == AlarmCause::wrongStep ||
           cause == AlarmCause::aboveCeiling;
}

/// So far below its peak that the potter has seen the cone down, whatever was written.
bool hasDropped(const Curve& curve) {
    const auto peak = std::ranges::max_element(curve, {}, &CurvePoint::temperature);
    return peak != curve.end() && peak->temperature - curve.back().temperature > plainDrop;
}

} // namespace

std::vector<AlarmFinding> FiringWatch::findings(Instant now, const WatchTroubles& troubles) const {
    std::vector<AlarmFinding> found;
    findSilence(now, troubles, found);
    findCone(now, found);
    findCauses(now, found);
    findHold(now, found);
    findAbsence(now, found);
    return found;
}

void FiringWatch::findSilence(Instant now, const WatchTroubles& troubles,
                              std::vector<AlarmFinding>& found) const {
    if (!troubles.disk.empty())
        found.push_back({AlarmCause::diskFailing, AlarmLevel::urgent, troubles.disk});
    if (!troubles.link.empty())
        found.push_back({AlarmCause::instrumentLost, AlarmLevel::warning, troubles.link});
    const auto freshness = m_watched.firing->freshness(now);
    const auto last = m_watched.firing->lastReading();
    if (freshness == Freshness::open)
        found.push_back(
            {AlarmCause::probeOpen, AlarmLevel::urgent,
             "The instrument has no value: looks like a broken thermocouple or wire. Last reading " +
                 (last ? temperatureWords(last->temperature, m_settings.style) + " at " +
                             clockWords(last->at, m_settings.style)
                       : std::string("none")) +
                 "."});
    if (freshness == Freshness::stale && last) {
        const Duration age = now - last->at;
        const bool press = age >= std::max(urgentSilence, 4 * m_watched.firing->samplePeriod());
        found.push_back({AlarmCause::readingsStopped, press ? AlarmLevel::urgent : AlarmLevel::warning,
                         "Nothing for " + durationWords(age) + ", usual is every " +
                             durationWords(m_watched.firing->samplePeriod()) + ". Last reading " +
                             temperatureWords(last->temperature, m_settings.style) + " at " +
                             clockWords(last->at, m_settings.style) + "."});
    }
}

/// Before and in the wait for it; the potter who dropped the kiln without a word has seen it.
bool FiringWatch::coneAwaited() const {
    const auto position = m_follower ? m_follower->position() : std::nullopt;
    if (!m_follower)
        return true;
    if (!position)
        return false;
    const auto& steps = m_follower->plan().steps;
    return std::any_of(steps.begin() + static_cast<std::ptrdiff_t>(position->step), steps.end(),
                       [](const Step& step) { return std::holds_alternative<ConeWait>(step); });
}

bool FiringWatch::coneToCome() const {
    const auto& looks = m_watched.firing->record().looks;
    const bool seenDown = std::ranges::any_of(looks, [&](const Look& look) {
        return !look.struck && look.cone == m_firingCone && look.hour >= hourDown;
    });
    return !m_firingCone.empty() && !seenDown && coneAwaited() &&
           !hasDropped(m_watched.firing->controlCurve());
}

void FiringWatch::findCone(Instant now, std::vector<AlarmFinding>& found) const {
    if (!m_forecast || m_firingCone.empty() || !coneAwaited())
        return;
    const auto& record = m_watched.firing->record();
    for (std::size_t i = 0; i < m_forecast->packs.size(); ++i) {
        std::vector<Look> looks;
        std::ranges::copy_if(record.looks, std::back_inserter(looks),
                             [&](const Look& look) { return look.pack == record.packs[i].id; });
        for (const auto& cone : m_forecast->packs[i].cones) {
            if (cone.cone != m_firingCone)
                continue;
            if (auto due = coneDue({cone, looks}, now, m_settings.style, m_settings.cone))
                found.push_back(std::move(*due));
            return; // the first pack that has it
        }
    }
}

void FiringWatch::findCauses(Instant now, std::vector<AlarmFinding>& found) const {
    for (const auto& cause : m_causes.found(now))
        found.push_back({cause.cause, cause.level, causeWords(cause, m_settings.style)});
}

const HoldUnderWay* FiringWatch::holdToKeep() const {
    const auto& hold = holdUnderWay();
    return hold && (hold->source != HoldSource::curve || !coneToCome()) ? &*hold : nullptr;
}

void FiringWatch::findHold(Instant now, std::vector<AlarmFinding>& found) const {
    const auto* kept = holdToKeep();
    // a cause that explains it is alarm enough
    if (!kept || std::ranges::any_of(found, [](const auto& f) { return explainsHold(f.cause); }))
        return;
    const bool told = kept->source != HoldSource::curve;
    const auto tell = [&](AlarmCause cause, const std::string& words) {
        found.push_back({cause, told ? AlarmLevel::warning : AlarmLevel::notice,
                         told ? words : words + " " + levelOfCurveWords(*kept, m_settings.style)});
    };
    const auto& watch = *hold();
    if (const auto breach = watch.breach(now); breach && breach->confirmed)
        tell(AlarmCause::bandLeft, breachWords(*breach, watch.band(), now, m_settings.style));
    else if (const auto drift = watch.drift())
        tell(AlarmCause::drifting, holdDriftWords(*drift, m_settings.style));
}

void FiringWatch::findAbsence(Instant now, std::vector<AlarmFinding>& found) const {
    const auto& interval = m_settings.attendance;
    if (!interval || now - m_attended < *interval)
        return;
    const bool long_ = now - m_attended >= 2 * *interval;
    found.push_back({AlarmCause::attendance, long_ ? AlarmLevel::warning : AlarmLevel::notice,
                     "Nobody has looked, written or answered for " + durationWords(now - m_attended) + "."});
}

} // namespace ringhold
