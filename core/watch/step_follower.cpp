#include "core/watch/step_follower.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

using std::chrono::minutes;

constexpr double arrival_C = 3;      ///< this near to where a climb or drop goes, it has arrived
constexpr double plainlyAway_C = 20; ///< this far from a hold, in the direction of the next step, it is left
constexpr double plainlyDropping_C = 25;
constexpr double leavingShare = 1.0 / 3; ///< of a ring's swing, after which the dwell is over
constexpr double movesOn_C = 3;          ///< from a stay whose time is over
constexpr double nearStop_C = 15;        ///< of a set point: a kiln that stops there has arrived at it
constexpr double nearStopShare = 0.4;    ///< of a ring's way
constexpr double fast_C_per_h = 120;     ///< a move that shows within minutes that it has stopped
constexpr double begun_C = 8;            ///< above the start, a kiln heats
constexpr double oddWay_C = 25;          ///< against its leg's direction
constexpr Duration sparse = minutes(4);  ///< readings farther apart show no ring
constexpr Duration awayFor = minutes(10), oddFor = minutes(12);
constexpr Duration restep = minutes(5);
constexpr double levelMemory_min = 10;

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
    m_resting = true;
    m_level_C.reset();
    m_awaySince.reset();
    m_oddSince.reset();
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
    if (!m_started)
        return;
    obey(now, m_real.back());
    const CurvePoint here{std::max(now, m_real.back().at), m_real.back().temperature};
    while (m_leg < m_ahead.legs.size()) { // its climb and its soak are two legs
        const auto* wait = std::get_if<ConeWait>(&m_plan.steps[leg().step]);
        if (!wait || !coneWaitEnded(*wait, here))
            break;
        nextLeg(here);
    }
}

void StepFollower::obey(Instant now, const CurvePoint& point) {
    for (; m_obeyed < m_corrections.size() && m_corrections[m_obeyed].at <= now; ++m_obeyed) {
        leavePlanned(point.at);
        planFrom(std::min(m_corrections[m_obeyed].step, m_plan.steps.size()), point);
    }
}

void StepFollower::add(const CurvePoint& point) {
    // where readings are seldom a wait ended at the look, not at the next reading
    if (m_started)
        for (const auto& look : m_looks)
            if (look.hour >= 6 && look.at > m_real.back().at && look.at < point.at)
                passTime(look.at);
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
    waitForTheStart(point);
    advance(point);
    findAgain(point);
}

/// Plugged in and logging, but not yet heating: the plan begins when it does.
void StepFollower::waitForTheStart(const CurvePoint& point) {
    if (!m_resting || m_leg >= m_ahead.legs.size())
        return;
    m_resting = leg().step == 0 && leg().motion == Motion::up && m_corrections.empty() &&
                point.temperature < m_context.startTemperature + celsius(begun_C);
    const bool late = (plannedAt(point.at) - point.temperature).celsius() > begun_C / 2;
    if (m_resting && late && point.at - m_legSince >= restep) {
        m_context.start = point.at;
        planFrom(0, point);
    }
}

void StepFollower::advance(const CurvePoint& point) {
    while (m_leg < m_ahead.legs.size()) {
        const auto end = legEnd(leg(), point);
        if (!end)
            break;
        nextLeg(*end);
        if (end->at == point.at)
            continue;
        // it ended some time ago: what came since belongs to the next
        const auto since = std::ranges::upper_bound(m_real, end->at, {}, &CurvePoint::at);
        const Curve later(since, m_real.end());
        for (const auto& p : later)
            advance(p);
        break;
    }
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

/// Where the leg ended: this reading or an earlier one; nothing while it goes on.
std::optional<CurvePoint> StepFollower::legEnd(const PlannedLeg& leg, const CurvePoint& point) {
    if (const auto* wait = std::get_if<ConeWait>(&m_plan.steps[leg.step]))
        return coneWaitEnded(*wait, point) ? std::optional(point) : std::nullopt;
    if (leg.motion == Motion::level)
        return stayEnd(leg, point);
    const bool seldom = m_real.size() > 1 && point.at - (m_real.end() - 2)->at > sparse;
    const bool over =
        leg.ring && seldom ? point.at >= leg.end : arrived(leg, point) || stoppedNear(leg, point);
    return over ? std::optional(point) : std::nullopt;
}

bool StepFollower::arrived(const PlannedLeg& leg, const CurvePoint& point) const {
    return leg.motion == Motion::up ? point.temperature >= leg.to - celsius(arrivalOf(leg))
                                    : point.temperature <= leg.to + celsius(arrivalOf(leg));
}

/// A controller whose set point is a little other than the plan's stops there.
bool StepFollower::stoppedNear(const PlannedLeg& leg, const CurvePoint& point) const {
    const double way_C = std::abs((leg.to - leg.from).celsius());
    const double near_C = leg.ring ? std::min(nearStop_C, way_C * nearStopShare) : nearStop_C;
    const double rate_C_per_h = std::abs((leg.to - leg.from).celsius()) / inHours(leg.end - leg.start);
    const Duration window = leg.ring ? minutes(3) : rate_C_per_h > fast_C_per_h ? minutes(5) : minutes(12);
    if (std::abs((leg.to - point.temperature).celsius()) > near_C || point.at - m_legSince < window)
        return false;
    const bool goesOn = m_leg + 1 < m_ahead.legs.size() && m_ahead.legs[m_leg + 1].motion == leg.motion;
    const double moved_C = std::abs((point.temperature - temperatureAt(m_real, point.at - window)).celsius());
    return !goesOn && moved_C < std::min(1.5, rate_C_per_h * inHours(window) / 4);
}

std::optional<CurvePoint> StepFollower::stayEnd(const PlannedLeg& leg, const CurvePoint& point) {
    const bool seldom = m_real.size() > 1 && point.at - (m_real.end() - 2)->at > sparse;
    const bool timeUp = point.at >= leg.end;
    const bool last = m_leg + 1 >= m_ahead.legs.size();
    if (last || m_ahead.legs[m_leg + 1].motion == Motion::level || (leg.ring && seldom))
        return timeUp ? std::optional(point) : std::nullopt;
    const PlannedLeg& next = m_ahead.legs[m_leg + 1];
    const double way_C = (next.to - leg.to).celsius();
    const auto gone = [&](double from_C) {
        return (point.temperature.celsius() - from_C) * (way_C > 0 ? 1 : -1);
    };
    const double level_C = m_level_C.value_or(leg.to.celsius());
    if (timeUp && gone(level_C) >= std::min(movesOn_C, std::abs(way_C) / 4))
        return point;
    const double since_min = m_real.size() > 1 ? inMinutes(point.at - (m_real.end() - 2)->at) : 0;
    const double share = -std::expm1(-since_min / levelMemory_min);
    if (std::abs(point.temperature.celsius() - level_C) < movesOn_C)
        m_level_C = level_C + (point.temperature.celsius() - level_C) * share;
    const double enough_C =
        leg.ring ? std::abs(way_C) * leavingShare
                 : std::min(std::max(plainlyAway_C, 3 * leg.band.value_or(celsius(0)).celsius()),
                            std::abs(way_C) * 2 / 3);
    if (gone(leg.to.celsius()) < enough_C) {
        m_awaySince.reset();
        return std::nullopt;
    }
    // long before its time a door is likelier: wait whether it comes back
    const bool soon =
        leg.ring || leg.end - point.at <= std::max<Duration>(minutes(15), (leg.end - leg.start) / 4);
    if (!m_awaySince)
        m_awaySince = point;
    return soon || point.at - m_awaySince->at >= awayFor ? m_awaySince : std::nullopt;
}

/// A kiln that goes the other way than its leg for long has skipped some of the plan: the next leg that goes
/// its way and holds its temperature is where it is.
void StepFollower::findAgain(const CurvePoint& point) {
    if (m_leg >= m_ahead.legs.size() || std::holds_alternative<ConeWait>(m_plan.steps[leg().step]) ||
        point.at - m_legSince < oddFor)
        return;
    const double slope_C = (point.temperature - temperatureAt(m_real, point.at - oddFor)).celsius();
    const double low_C = std::min(leg().from, leg().to).celsius() - oddWay_C;
    const double high_C = std::max(leg().from, leg().to).celsius() + oddWay_C;
    const bool falls = point.temperature.celsius() < low_C && slope_C < -oddWay_C / 3;
    const bool rises = point.temperature.celsius() > high_C && slope_C > oddWay_C / 3;
    if ((falls && leg().motion == Motion::down) || (rises && leg().motion == Motion::up) ||
        (!falls && !rises)) {
        m_oddSince.reset();
        return;
    }
    if (!m_oddSince)
        m_oddSince = point.at;
    if (point.at - *m_oddSince < oddFor)
        return;
    const Motion motion = falls ? Motion::down : Motion::up;
    const auto fits = [&](const PlannedLeg& later) {
        return later.step != leg().step && later.motion == motion &&
               point.temperature > std::min(later.from, later.to) &&
               point.temperature < std::max(later.from, later.to);
    };
    const auto later =
        std::find_if(m_ahead.legs.begin() + static_cast<std::ptrdiff_t>(m_leg), m_ahead.legs.end(), fits);
    m_oddSince.reset();
    if (later == m_ahead.legs.end())
        return;
    leavePlanned(point.at);
    planFrom(later->step, point);
}

void StepFollower::nextLeg(const CurvePoint& point) {
    const std::size_t step = leg().step;
    if (m_leg + 1 < m_ahead.legs.size() && m_ahead.legs[m_leg + 1].step == step) {
        shift(point.at);
        ++m_leg;
        m_legSince = point.at;
        m_level_C.reset();
        m_awaySince.reset();
        return;
    }
    leavePlanned(point.at);
    // steps with nothing to do have no leg: the next leg's step, or the end
    const std::size_t next =
        m_leg + 1 < m_ahead.legs.size() ? m_ahead.legs[m_leg + 1].step : m_plan.steps.size();
    planFrom(next, point);
}

/// Keeps for the drawing what was planned of the present step up to then.
void StepFollower::leavePlanned(Instant at) {
    const Instant until = m_leg < m_ahead.legs.size() ? leg().end : m_ahead.end();
    for (const auto& planned : m_ahead.curve)
        if (planned.at < at && planned.at <= until && (m_gone.empty() || planned.at > m_gone.back().at))
            m_gone.push_back(planned);
    // the plan from here on begins where the kiln is, which is not where this leg was to be
    const Instant close = at - std::chrono::milliseconds(1);
    if (m_ahead.curve.empty() || (!m_gone.empty() && close <= m_gone.back().at))
        return;
    m_gone.push_back({close, temperatureAt(m_ahead.curve, std::min(close, until))});
}

/// The present leg really ends then: all that is planned after it moves along.
void StepFollower::shift(Instant newEnd) {
    const Instant oldEnd = leg().end;
    const Duration by = newEnd - oldEnd;
    Curve curve;
    for (const auto& planned : m_ahead.curve)
        if (planned.at < std::min(oldEnd, newEnd))
            curve.push_back(planned);
    curve.push_back({newEnd, leg().to});
    for (const auto& planned : m_ahead.curve)
        if (planned.at > oldEnd)
            curve.push_back({planned.at + by, planned.temperature});
    m_ahead.curve = std::move(curve);
    m_ahead.legs[m_leg].end = newEnd;
    for (std::size_t i = m_leg + 1; i < m_ahead.legs.size(); ++i) {
        m_ahead.legs[i].start += by;
        m_ahead.legs[i].end += by;
    }
    for (auto& step : m_ahead.steps) {
        step.start += step.start >= oldEnd ? by : Duration(0);
        step.end += by;
    }
}

void StepFollower::planFrom(std::size_t step, const CurvePoint& point) {
    m_context.soFar = m_real;
    m_ahead = planCurveFrom(m_plan, m_context, step, point.at, point.temperature);
    m_leg = 0;
    m_legSince = m_stepSince = point.at;
    m_hottestInStep = point.temperature;
    m_level_C.reset();
    m_awaySince.reset();
    m_oddSince.reset();
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

/// By how much the present leg runs behind its plan.
Duration StepFollower::overdue() const {
    if (!m_started || m_leg >= m_ahead.legs.size())
        return Duration(0);
    return std::max(Duration(0), m_real.back().at - leg().end);
}

Curve StepFollower::drawn() const {
    Curve curve = m_gone;
    const auto draw = [&](const CurvePoint& point) {
        if (curve.empty() || point.at > curve.back().at)
            curve.push_back(point);
    };
    const Duration late = overdue();
    const Instant until = late > Duration(0) ? leg().end : m_ahead.end();
    for (const auto& point : m_ahead.curve)
        if (point.at <= until)
            draw(point);
    if (late == Duration(0))
        return curve;
    draw({until + late, leg().to});
    for (const auto& point : m_ahead.curve)
        if (point.at > until)
            draw({point.at + late, point.temperature});
    return curve;
}

Temperature StepFollower::plannedAt(Instant at) const {
    if (!m_started || m_leg >= m_ahead.legs.size() || at <= leg().end)
        return m_ahead.temperatureAt(at);
    return m_ahead.temperatureAt(std::max(leg().end, at - overdue()));
}

} // namespace ringhold
