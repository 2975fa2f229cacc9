#include "core/plan/planned_curve.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr Duration sampling = std::chrono::minutes(1);
constexpr Duration shortestLeg = std::chrono::milliseconds(1);
constexpr Rate slowestFall = Rate::fromCelsiusPerHour(1);
constexpr Rate slowestRise = Rate::fromCelsiusPerHour(30);

/// How long that change takes at that rate, to the millisecond and above 0.
Duration timeFor(TemperatureDifference change, Rate rate) {
    return std::max(durationFromHours(std::abs(change.celsius()) / rate.celsiusPerHour()), shortestLeg);
}

void append(Curve& curve, CurvePoint point) {
    if (!curve.empty() && curve.back().at == point.at)
        curve.pop_back();
    curve.push_back(point);
}

/// The brick after the chamber went in a straight line from `from` to `to`. It solves
/// C2 db/dt = G12 (z-b) - Gb (b-Ta) for z linear in time: b follows a line behind z, and forgets where it
/// began.
Temperature brickAfter(const KilnConstants& kiln, Temperature brick, Temperature from, Temperature to,
                       Duration dt) {
    const double total_W_per_K = kiln.chamberToBrick_W_per_K + kiln.brickLoss_W_per_K;
    const double k_per_s = total_W_per_K / kiln.brick_J_per_K;
    const double seconds = inSeconds(dt);
    const auto soaked_C = [&](Temperature chamber) {
        return (kiln.chamberToBrick_W_per_K * chamber.celsius() +
                kiln.brickLoss_W_per_K * kiln.surroundings.celsius()) /
               total_W_per_K;
    };
    const double lag_C = (soaked_C(to) - soaked_C(from)) / seconds / k_per_s;
    const double excess_C = brick.celsius() - (soaked_C(from) - lag_C);
    return Temperature::fromCelsius(soaked_C(to) - lag_C + excess_C * std::exp(-k_per_s * seconds));
}

/// The brick at the end of a curve at whose first point the kiln was soaked through.
Temperature brickAtEndOf(const Curve& curve, const KilnConstants& kiln) {
    Temperature brick = curve.front().temperature;
    for (std::size_t i = 1; i < curve.size(); ++i)
        brick = brickAfter(kiln, brick, curve[i - 1].temperature, curve[i].temperature,
                           curve[i].at - curve[i - 1].at);
    return brick;
}

/// Draws the curve step by step; the model kiln's chamber is on the curve, its brick follows.
class CurveDrawer {
  public:
    explicit CurveDrawer(const PlanContext& context)
        : m_context(context),
          m_now(context.start), m_kiln{context.startTemperature, context.startTemperature} {
        for (const auto& point : context.soFar)
            if (point.at < context.start)
                m_before.push_back(point);
        Curve history = m_before;
        history.push_back({m_now, m_kiln.chamber});
        m_kiln.brick = brickAtEndOf(history, constants());
        m_planned.begin = m_kiln;
        m_planned.curve.push_back({m_now, m_kiln.chamber});
    }

    void draw(std::size_t index, const Step& step) {
        m_step = {index, m_now, m_now, m_kiln.chamber, m_kiln.chamber, {}, {}};
        std::visit(*this, step);
        m_step.end = m_now;
        m_step.to = m_kiln.chamber;
        m_planned.steps.push_back(m_step);
    }
    PlannedCurve planned() && { return std::move(m_planned); }

    void operator()(const Climb& climb) {
        if (climb.to > m_kiln.chamber)
            goStraightTo(climb.to, timeFor(climb.to - m_kiln.chamber, climb.rate));
    }

    void operator()(const Hold& hold) {
        goAtOwnPaceTo(hold.at);
        m_step.band = hold.band;
        stay(hold.length);
    }

    void operator()(const ConeWait& wait) {
        if (m_kiln.chamber > wait.set)
            goAtOwnPaceTo(wait.set);
        const Temperature from = m_kiln.chamber;
        const Duration climb = from < wait.set ? timeFor(wait.set - from, wait.rate) : Duration::zero();
        const Duration whole = lengthOf(wait, climb);
        const Duration climbed = std::min(climb, whole);
        if (climbed > Duration::zero())
            goStraightTo(climbed == climb
                             ? wait.set
                             : from + (wait.set - from) * (inSeconds(climbed) / inSeconds(climb)),
                         climbed);
        stay(whole - climbed);
    }

    void operator()(const Drop& drop) { fall(drop.to, drop.rate); }
    void operator()(const Cool& cool) { fall(cool.to, cool.rate); }

    void operator()(const Rings& rings) {
        for (int ring = 1; ring <= rings.count; ++ring) {
            m_ring = ring;
            goAtOwnPaceTo(rings.low);
            stay(rings.lowDwell);
            goAtOwnPaceTo(rings.high);
            stay(rings.highDwell);
        }
        m_ring.reset();
    }

  private:
    const KilnConstants& constants() const { return m_context.kiln.constants; }

    void fall(Temperature to, std::optional<Rate> rate) {
        if (to >= m_kiln.chamber)
            return;
        if (rate)
            goStraightTo(to, timeFor(to - m_kiln.chamber, *rate));
        else
            goAtOwnPaceTo(to);
    }

    /// How long the cone wait lasts from now on, and in m_step how that was found.
    Duration lengthOf(const ConeWait& wait, Duration climb) {
        const Duration longest = climb + wait.longestSoak;
        if (!m_context.coneDown) {
            m_step.coneWaitEnd = ConeWaitEnd::assumed;
            return climb + wait.longestSoak / 2;
        }
        Curve whole = m_before;
        whole.insert(whole.end(), m_planned.curve.begin(), m_planned.curve.end());
        append(whole, {m_now + climb, wait.set});
        append(whole, {m_now + longest, wait.set});
        const auto down = m_context.coneDown(whole, wait.cone);
        const bool inTime = down && *down <= m_now + longest;
        m_step.coneWaitEnd = inTime ? ConeWaitEnd::estimated : ConeWaitEnd::stillStanding;
        return inTime ? std::max(*down - m_now, Duration::zero()) : longest;
    }

    void stay(Duration length) {
        if (length > Duration::zero())
            goStraightTo(m_kiln.chamber, length);
    }

    void goStraightTo(Temperature to, Duration length) {
        const PlannedLeg leg = legTowards(to);
        moveTo(to, length);
        finish(leg);
    }

    void goAtOwnPaceTo(Temperature to) {
        if (to == m_kiln.chamber)
            return;
        PlannedLeg leg = legTowards(to);
        leg.ownPace = true;
        const bool up = to > m_kiln.chamber;
        const Power power =
            up ? constants().powerAt(m_context.line.value_or(constants().ratedVolts)) : Power{};
        const auto least = TemperatureDifference::fromCelsius(
            (up ? slowestRise : slowestFall).celsiusPerHour() * inHours(sampling));
        while (m_kiln.chamber != to) {
            const KilnState free = advanced(constants(), m_kiln, power, sampling);
            const auto moved = up ? std::max(free.chamber - m_kiln.chamber, least)
                                  : std::min(free.chamber - m_kiln.chamber, -least);
            const double share = (to - m_kiln.chamber).celsius() / moved.celsius(); // of a minute to the end
            if (share > 1)
                moveTo(m_kiln.chamber + moved, sampling);
            else
                moveTo(to, std::max(durationFromSeconds(share * inSeconds(sampling)), shortestLeg));
        }
        finish(leg);
    }

    void moveTo(Temperature to, Duration length) {
        m_kiln.brick = brickAfter(constants(), m_kiln.brick, m_kiln.chamber, to, length);
        m_kiln.chamber = to;
        m_now += length;
        m_planned.curve.push_back({m_now, to});
    }

    PlannedLeg legTowards(Temperature to) const {
        const Temperature from = m_kiln.chamber;
        const Motion motion = to > from ? Motion::up : to < from ? Motion::down : Motion::level;
        return {m_step.step, m_ring, motion, false, m_now, m_now, from, to, m_step.band};
    }

    void finish(PlannedLeg leg) {
        leg.end = m_now;
        m_planned.legs.push_back(leg);
    }

    const PlanContext& m_context;
    Curve m_before; ///< the real curve up to the start
    Instant m_now;
    KilnState m_kiln;
    PlannedStep m_step{0, {}, {}, Temperature::fromCelsius(0), Temperature::fromCelsius(0), {}, {}};
    std::optional<int> m_ring;
    PlannedCurve m_planned{{}, {}, {}, m_kiln};
};

PlannedCurve draw(const Plan& plan, std::size_t first, std::size_t last, const PlanContext& context) {
    CurveDrawer drawer(context);
    for (std::size_t i = first; i < std::min(last, plan.steps.size()); ++i)
        drawer.draw(i, plan.steps[i]);
    return std::move(drawer).planned();
}

/// The curve moved in time so that it ends there.
Curve endingAt(Curve curve, Instant end) {
    const Duration shift = end - curve.back().at;
    for (auto& point : curve)
        point.at += shift;
    return curve;
}

} // namespace

const PlannedLeg* PlannedCurve::legAt(Instant at) const {
    const auto leg = std::ranges::upper_bound(legs, at, {}, &PlannedLeg::end);
    return leg == legs.end() || at < leg->start ? nullptr : &*leg;
}

bool PlannedCurve::restsOnAssumption() const {
    return std::ranges::any_of(
        steps, [](const PlannedStep& step) { return step.coneWaitEnd == ConeWaitEnd::assumed; });
}

PlannedCurve planCurve(const Plan& plan, const PlanContext& context) {
    return draw(plan, 0, plan.steps.size(), context);
}

PlannedCurve planCurveFrom(const Plan& plan, const PlanContext& context, std::size_t firstStep, Instant at,
                           Temperature temperature) {
    PlanContext rest = context;
    rest.start = at;
    rest.startTemperature = temperature;
    if (rest.soFar.empty())
        rest.soFar = endingAt(draw(plan, 0, firstStep, context).curve, at);
    return draw(plan, firstStep, plan.steps.size(), rest);
}

} // namespace ringhold
