#include "core/watch/step_follower.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double arrival_C = 3;      ///< this near to where a climb or drop goes, it has arrived
constexpr double plainlyAway_C = 20; ///< this far from a hold, in the direction of the next step, it is left
constexpr double plainlyDropping_C = 25;
constexpr double leavingShare = 1.0 / 3; ///< of a ring's swing, after which the dwell is over

TemperatureDifference celsius(double degrees) {
    return TemperatureDifference::fromCelsius(degrees);
}

/// How near to the target a leg counts as arrived: less on the short ways of a ring.
double arrivalOf(const PlannedLeg& leg) {
    return std::min(arrival_C, std::abs((leg.to - leg.from).celsius()) / 4);
}

} // namespace

StepFollower::StepFollower(Plan plan, PlanContext context)
    : m_plan(std::move(plan)), m_context(std::move(context)), m_ahead(planCurve(m_plan, m_context)) {
    m_legSince = m_stepSince = m_context.start;
}

void StepFollower::restart(const Curve& curve, std::vector<Look> looks,
                           std::vector<StepCorrection> corrections) {
    m_looks = std::move(looks);
    std::erase_if(m_looks, [](const Look& look) { return look.struck || look.cold; });
    m_corrections = std::move(corrections);
    std::erase_if(m_corrections, &StepCorrection::struck);
    std::ranges::stable_sort(m_corrections, {}, &StepCorrection::at);
    m_obeyed = 0;
    m_real.clear();
    m_gone.clear();
    m_started = false;
    m_leg = 0;
    m_late = {};
    m_hottestInStep.reset();
    m_context.soFar.clear();
    m_ahead = planCurve(m_plan, m_context);
    m_legSince = m_stepSince = m_context.start;
    for (const auto& point : curve)
        add(point);
    if (!m_corrections.empty())
        passTime(m_corrections.back().at);
}

void StepFollower::passTime(Instant now) {
    if (m_started)
        obey(now, m_real.back());
}

void StepFollower::obey(Instant now, const CurvePoint& point) {
    for (; m_obeyed < m_corrections.size() && m_corrections[m_obeyed].at <= now; ++m_obeyed) {
        for (const auto& planned : m_ahead.curve)
            if (planned.at < point.at && (m_gone.empty() || planned.at > m_gone.back().at))
                m_gone.push_back(planned);
        planFrom(std::min(m_corrections[m_obeyed].step, m_plan.steps.size()), point);
    }
}

void StepFollower::add(const CurvePoint& point) {
    m_real.push_back(point);
    if (!m_started) {
        m_started = true;
        m_context.start = point.at;
        m_context.startTemperature = point.temperature;
        m_legSince = m_stepSince = point.at;
        planFrom(0, point);
    }
    if (!m_hottestInStep || point.temperature > *m_hottestInStep)
        m_hottestInStep = point.temperature;
    obey(point.at, point);
    advance(point);
}

void StepFollower::advance(const CurvePoint& point) {
    while (m_leg < m_ahead.legs.size() && legEnded(leg(), point))
        nextLeg(point);
}

bool StepFollower::coneWaitEnded(const ConeWait& wait, const CurvePoint& point) const {
    const bool seenDown = std::ranges::any_of(m_looks, [&](const Look& look) {
        return look.cone == wait.cone && look.hour >= 6 && look.at <= point.at && look.at >= m_stepSince;
    });
    // The potter may have dropped the kiln without a word.
    const bool dropping = m_hottestInStep && *m_hottestInStep > wait.set - celsius(2 * plainlyDropping_C) &&
                          *m_hottestInStep - point.temperature > celsius(plainlyDropping_C);
    return seenDown || dropping;
}

bool StepFollower::legEnded(const PlannedLeg& leg, const CurvePoint& point) const {
    if (const auto* wait = std::get_if<ConeWait>(&m_plan.steps[leg.step]))
        return coneWaitEnded(*wait, point);
    if (leg.motion == Motion::up)
        return point.temperature >= leg.to - celsius(arrivalOf(leg));
    if (leg.motion == Motion::down)
        return point.temperature <= leg.to + celsius(arrivalOf(leg));
    if (point.at - m_legSince >= leg.end - leg.start)
        return true;
    // left early for where the next leg goes
    if (m_leg + 1 >= m_ahead.legs.size())
        return false;
    const PlannedLeg& next = m_ahead.legs[m_leg + 1];
    const double way_C = (next.to - leg.to).celsius();
    const double gone_C = (point.temperature - leg.to).celsius();
    const double enough_C =
        leg.ring ? std::abs(way_C) * leavingShare
                 : std::min(std::max(plainlyAway_C, 3 * leg.band.value_or(celsius(0)).celsius()),
                            std::abs(way_C) * 2 / 3);
    return way_C * gone_C > 0 && std::abs(gone_C) >= enough_C;
}

void StepFollower::nextLeg(const CurvePoint& point) {
    const std::size_t step = leg().step;
    if (m_leg + 1 < m_ahead.legs.size() && m_ahead.legs[m_leg + 1].step == step) {
        m_late = point.at - leg().end;
        ++m_leg;
        m_legSince = point.at;
        return;
    }
    for (const auto& planned : m_ahead.curve)
        if (planned.at < point.at && planned.at < leg().end + std::max(Duration(0), m_late))
            m_gone.push_back(planned);
    // steps with nothing to do have no leg: the next leg's step, or the end
    const std::size_t next =
        m_leg + 1 < m_ahead.legs.size() ? m_ahead.legs[m_leg + 1].step : m_plan.steps.size();
    planFrom(next, point);
}

void StepFollower::planFrom(std::size_t step, const CurvePoint& point) {
    m_context.soFar = m_real;
    m_ahead = planCurveFrom(m_plan, m_context, step, point.at, point.temperature);
    m_leg = 0;
    m_late = {};
    m_legSince = m_stepSince = point.at;
    m_hottestInStep = point.temperature;
}

std::optional<StepPosition> StepFollower::position() const {
    if (!m_started || m_leg >= m_ahead.legs.size())
        return std::nullopt;
    const auto& now = leg();
    const double hours = inHours(now.end - now.start);
    const auto rate = now.ownPace
                          ? std::nullopt
                          : std::optional(Rate::fromCelsiusPerHour((now.to - now.from).celsius() / hours));
    return StepPosition{now.step, now.ring, now.motion, m_legSince, m_legSince + (now.end - now.start),
                        now.to,   now.from, rate};
}

Curve StepFollower::drawn() const {
    Curve curve = m_gone;
    for (const auto& point : m_ahead.curve)
        if (curve.empty() || point.at > curve.back().at)
            curve.push_back(point);
    return curve;
}

Temperature StepFollower::plannedAt(Instant at) const {
    return m_ahead.temperatureAt(at - m_late);
}

} // namespace ringhold
