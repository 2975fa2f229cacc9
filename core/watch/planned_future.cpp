#include "core/watch/planned_future.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr Duration climbWindow = std::chrono::minutes(20);
constexpr Duration enoughOfStep = std::chrono::minutes(8);
constexpr Duration whereDropCounts = std::chrono::minutes(3);
constexpr Duration cornerLasts = std::chrono::minutes(5); ///< of a step into the next
constexpr Rate usualFall = Rate::fromCelsiusPerHour(300); ///< of a kiln without power near its top
constexpr double relativeSd = 0.05;                       ///< of a rate for the time ahead
constexpr double slowestClimb_C_per_h = 1;
constexpr double mayLevelOff = 0.1; ///< below this probability it is left out
constexpr double noGoal_C = 3000;
constexpr double arriving_C = 10; ///< so near its goal a kiln slows down by its controller

/// The firing as it goes on, leg by leg.
class CourseAhead {
  public:
    CourseAhead(Instant now, Temperature from) : m_curve{{now, from}} {}

    void goTo(Temperature to, double rate_C_per_h) {
        const double hours = std::abs((to - m_curve.back().temperature).celsius()) / rate_C_per_h;
        if (hours > 1e-6)
            m_curve.push_back({m_curve.back().at + durationFromHours(hours), to});
    }
    /// So for a while, then at another rate.
    void goTo(Temperature to, double rate_C_per_h, Duration first, double then_C_per_h) {
        const auto reached =
            m_curve.back().temperature + TemperatureDifference::fromCelsius(rate_C_per_h * inHours(first));
        if (reached < to) {
            m_curve.push_back({m_curve.back().at + first, reached});
            goTo(to, then_C_per_h);
        } else {
            goTo(to, rate_C_per_h);
        }
    }
    void stayUntil(Instant end) {
        if (end > m_curve.back().at)
            m_curve.push_back({end, m_curve.back().temperature});
    }
    void stayFor(Duration length) { stayUntil(m_curve.back().at + length); }
    Curve soaked() {
        stayFor(forecastHorizon);
        return std::move(m_curve);
    }

  private:
    Curve m_curve;
};

std::optional<Rate> plannedRate(const Step& step) {
    if (const auto* climb = std::get_if<Climb>(&step))
        return climb->rate;
    if (const auto* wait = std::get_if<ConeWait>(&step))
        return wait->rate;
    return std::nullopt;
}

/// Of one case: the present leg's rate, its share of the usual one, and how a climb that has slowed goes on.
struct Pace {
    double rate_C_per_h;
    double share;
    std::optional<Duration> recovers;
    double then_C_per_h;
};

/// The present leg at this pace to where it goes, then the plan's own steps.
Curve climbingCase(const StepFollower& follower, const ClimbShown& shown, const Pace& pace) {
    const auto& steps = follower.plan().steps;
    const std::size_t present = follower.position()->step;
    CourseAhead course(shown.at, shown.temperature);
    for (std::size_t i = present; i < steps.size(); ++i) {
        const auto planned = plannedRate(steps[i]);
        const double rate =
            i == present || !planned ? pace.rate_C_per_h : planned->celsiusPerHour() * pace.share;
        const auto go = [&](Temperature to) {
            if (i == present && pace.recovers)
                course.goTo(to, rate, *pace.recovers, pace.then_C_per_h);
            else
                course.goTo(to, rate);
        };
        if (const auto* climb = std::get_if<Climb>(&steps[i])) {
            go(climb->to);
        } else if (const auto* hold = std::get_if<Hold>(&steps[i])) {
            if (i == present)
                course.stayUntil(follower.position()->expectedEnd);
            else
                course.stayFor(hold->length);
        } else if (const auto* wait = std::get_if<ConeWait>(&steps[i])) {
            go(wait->set);
            break;
        } else {
            const auto* drop = std::get_if<Drop>(&steps[i]);
            const auto* cool = std::get_if<Cool>(&steps[i]);
            if (drop || cool)
                course.goTo(drop ? drop->to : cool->to,
                            nextDropRate(follower).value_or(usualFall).celsiusPerHour());
            break;
        }
    }
    return course.soaked();
}

/// Whether the plan climbs or soaks before it first drops.
bool beforeDrop(const StepFollower& follower) {
    const auto& steps = follower.plan().steps;
    const auto present = static_cast<std::ptrdiff_t>(follower.position()->step);
    return std::none_of(steps.begin(), steps.begin() + present + 1, [](const Step& step) {
        return std::holds_alternative<Drop>(step) || std::holds_alternative<Rings>(step) ||
               std::holds_alternative<Cool>(step);
    });
}

/// A plan that goes down for a while before its cone wait is one yet to climb.
bool waitAhead(const StepFollower& follower) {
    const auto& steps = follower.plan().steps;
    return std::any_of(steps.begin() + static_cast<std::ptrdiff_t>(follower.position()->step), steps.end(),
                       [](const Step& step) { return std::holds_alternative<ConeWait>(step); });
}

/// The hottest that the plan wants before it drops, if it climbs now.
std::optional<Temperature> wantedBeforeDrop(const StepFollower& follower) {
    const auto& steps = follower.plan().steps;
    std::optional<Temperature> wanted;
    const auto want = [&](Temperature t) { wanted = std::max(wanted.value_or(t), t); };
    for (std::size_t i = follower.position()->step; i < steps.size(); ++i) {
        if (const auto* climb = std::get_if<Climb>(&steps[i]))
            want(climb->to);
        else if (const auto* wait = std::get_if<ConeWait>(&steps[i]))
            want(wait->set);
        else
            break;
    }
    return wanted;
}

/// Puts the courses of a kiln that runs out of power among those of one that does not.
void mayRunOut(FutureTemperature& future, const Levelling& levelling, Instant now,
               std::optional<Temperature> wanted) {
    if (levelling.probability < mayLevelOff)
        return;
    for (auto& possible : future.cases)
        possible.weight *= 1 - levelling.probability;
    for (const auto& one : levelling.cases)
        future.cases.push_back({one.weight * levelling.probability, levellingCurve(one, now, wanted)});
    if (levelsOffBelow(levelling, wanted.value_or(Temperature::fromCelsius(noGoal_C))))
        future.levelsOff = levelling.ceiling;
}

} // namespace

ClimbShown climbInStep(const Curve& curve, ClimbShown shown, const StepFollower& follower) {
    const auto position = *follower.position();
    const Duration inStep = shown.at - position.since;
    if (shown.changed && shown.changed->at < position.since + cornerLasts)
        shown.changed.reset(); // the plan's own change
    if (inStep >= climbWindow)
        return shown;
    auto recent = climbShownAtEnd(curve, inStep);
    if (inStep >= enoughOfStep && recent && recent->readings >= 5) {
        recent->changed = shown.changed;
        return *recent;
    }
    if (const auto rate = plannedRate(follower.plan().steps[position.step])) {
        shown.rate = *rate;
        shown.rateSd = Rate::fromCelsiusPerHour(0.1 * rate->celsiusPerHour());
    }
    return shown;
}

FutureTemperature futureOnPlan(const ClimbShown& shown, const StepFollower& follower,
                               const std::optional<Levelling>& levelling) {
    if (!waitAhead(follower) && !beforeDrop(follower)) {
        Curve curve{{shown.at, shown.temperature}};
        for (const auto& point : follower.ahead().curve)
            if (point.at > shown.at)
                curve.push_back(point);
        curve.push_back({curve.back().at + forecastHorizon, curve.back().temperature});
        return {{{1.0, curve}}};
    }
    const Rate sd = aheadSd(shown);
    const double usual = shown.rate.celsiusPerHour();
    FutureTemperature future;
    const double before = shown.changed ? shown.changed->before.celsiusPerHour() : usual;
    for (const auto& course : coursesAfter(shown))
        for (const auto& node : rateNodes()) {
            const double rate = std::max(slowestClimb_C_per_h, usual + node.z * sd.celsiusPerHour());
            const double share = usual > 0 ? rate / usual : 1.0;
            const double then = std::max(slowestClimb_C_per_h, before * (1 + node.z * relativeSd));
            future.cases.push_back(
                {node.weight * course.weight,
                 climbingCase(follower, shown,
                              {rate, course.recovers ? 1.0 : share, course.recovers, then})});
        }
    const auto wanted = wantedBeforeDrop(follower);
    if (levelling && wanted && (*wanted - shown.temperature).celsius() > arriving_C)
        mayRunOut(future, *levelling, shown.at, wanted);
    return future;
}

FutureTemperature futureWithoutPlan(const ClimbShown& shown, const std::optional<Levelling>& levelling) {
    auto future = climbOnAsShown(shown, std::nullopt);
    if (levelling)
        mayRunOut(future, *levelling, shown.at, std::nullopt);
    return future;
}

std::optional<Rate> nextDropRate(const StepFollower& follower) {
    const auto& steps = follower.plan().steps;
    const auto& ahead = follower.ahead();
    for (const auto& planned : ahead.steps) {
        if (!std::holds_alternative<Drop>(steps[planned.step]) || planned.end <= planned.start)
            continue;
        if (const auto rate = std::get<Drop>(steps[planned.step]).rate)
            return rate;
        const Instant soon = std::min(planned.end, planned.start + whereDropCounts);
        const double fall_C = (planned.from - ahead.temperatureAt(soon)).celsius();
        if (fall_C > 0)
            return Rate::fromCelsiusPerHour(fall_C / inHours(soon - planned.start));
    }
    return std::nullopt;
}

} // namespace ringhold
