#include "core/watch/hold_follower.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr Duration lookEvery = std::chrono::minutes(1);

/// Where the plan has something else to be looked at than a level.
bool leavesRoom(const StepFollower* follower) {
    const auto position = follower ? follower->position() : std::nullopt;
    if (!position)
        return true;
    const auto& step = follower->plan().steps[position->step];
    return std::holds_alternative<Climb>(step) || std::holds_alternative<Drop>(step) ||
           std::holds_alternative<Cool>(step);
}

bool isInside(Temperature temperature, const HoldBand& band) {
    return temperature >= band.low() && temperature <= band.high();
}

} // namespace

bool HoldUnderWay::operator==(const HoldUnderWay& other) const {
    return band.target == other.band.target && band.halfWidth == other.band.halfWidth && from == other.from &&
           source == other.source;
}

void HoldFollower::restart(const std::vector<Setting>& settings, TemperatureScale scale) {
    *this = HoldFollower(m_watchSettings, m_rules);
    for (const auto& setting : settings)
        if (const auto told = toldHold(setting, scale))
            m_told.push_back(*told);
}

void HoldFollower::add(const CurvePoint& reading, const Curve& curve, const StepFollower* follower) {
    obey(reading.at);
    auto hold = follower ? planned(*follower) : std::nullopt;
    if (!hold && leavesRoom(follower))
        hold = unplanned(reading, curve);
    if (!hold)
        end();
    else if (hold != m_hold)
        begin(*hold, reading, curve);
    if (m_watch)
        m_watch->add(reading);
}

void HoldFollower::passTime(Instant now, const Curve& curve, const StepFollower* follower) {
    const std::size_t before = m_obeyed;
    obey(now);
    if (m_obeyed != before && !curve.empty())
        add(curve.back(), curve, follower);
}

void HoldFollower::obey(Instant now) {
    for (; m_obeyed < m_told.size() && m_told[m_obeyed].at <= now; ++m_obeyed) {
        const auto& told = m_told[m_obeyed];
        if (told.target || told.over()) {
            m_target = told.target;
            m_targetTold = told.at;
            m_halfWidth.reset();
        }
        if (told.halfWidth)
            m_halfWidth = told.halfWidth;
        if (m_hold && m_hold->source != HoldSource::plan) {
            if (!told.target && !told.over()) { // the band alone: what it stands at is meant
                m_target = m_hold->band.target;
                m_targetTold = told.at;
            }
            end();
        }
        m_looked.reset();
    }
}

std::optional<HoldUnderWay> HoldFollower::planned(const StepFollower& follower) const {
    const auto position = follower.position();
    if (!position || position->motion != Motion::level)
        return std::nullopt;
    const auto* step = std::get_if<Hold>(&follower.plan().steps[position->step]);
    if (!step)
        return std::nullopt;
    HoldBand band{step->at, m_halfWidth.value_or(step->band)};
    if (m_target && *m_targetTold >= position->since)
        band.target = *m_target;
    return HoldUnderWay{band, position->since, HoldSource::plan, step->length};
}

/// The told target where the kiln is within its band; else the hold that goes on; else a level that has been
/// steady.
std::optional<HoldUnderWay> HoldFollower::unplanned(const CurvePoint& reading, const Curve& curve) {
    const HoldBand told{m_target.value_or(reading.temperature), m_halfWidth.value_or(m_rules.halfWidth)};
    const bool potters = m_hold && m_hold->source == HoldSource::potter;
    if (m_target && !potters && isInside(reading.temperature, told)) {
        m_lastInside = reading.at;
        return HoldUnderWay{told, firstInside(curve, told, reading.at, m_rules.longestAbsence),
                            HoldSource::potter};
    }
    if (m_hold && m_hold->source != HoldSource::plan) {
        if (goesOn(reading))
            return m_hold;
        if (potters)
            m_target.reset(); // the kiln has left it for good
    }
    if (m_looked && reading.at - *m_looked < lookEvery)
        return std::nullopt;
    m_looked = reading.at;
    auto level = steadyLevel(curve, reading.at, m_rules);
    const bool over = m_targetTold && !m_target && reading.at - *m_targetTold < m_rules.least;
    if (!level || over)
        return std::nullopt;
    level->halfWidth = m_halfWidth.value_or(level->halfWidth);
    m_lastInside = reading.at;
    return HoldUnderWay{*level, firstInside(curve, *level, reading.at, m_rules.longestAbsence),
                        HoldSource::curve};
}

bool HoldFollower::goesOn(const CurvePoint& reading) {
    if (isInside(reading.temperature, m_hold->band))
        m_lastInside = reading.at;
    return reading.at - m_lastInside <= m_rules.longestAbsence;
}

void HoldFollower::begin(const HoldUnderWay& hold, const CurvePoint& reading, const Curve& curve) {
    m_hold = hold;
    const bool known = hold.source == HoldSource::plan;
    m_watch.emplace(hold.band, known ? reading.at : hold.from, m_watchSettings);
    if (known)
        return; // as the plan's step begins; a band told later counts from then on
    for (auto point = std::ranges::lower_bound(curve, hold.from, {}, &CurvePoint::at);
         point != curve.end() && point->at < reading.at; ++point)
        m_watch->add(*point);
}

void HoldFollower::end() {
    m_hold.reset();
    m_watch.reset();
}

} // namespace ringhold
