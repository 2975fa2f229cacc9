#include "core/kiln/practice_controller.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double fast_s = 10.0;
constexpr double slow_s = 60.0;
constexpr double gain_per_C = 0.05;
constexpr double integralTime_s = 300.0;
constexpr auto arrival = TemperatureDifference::fromCelsius(2.0);
/// The set point of a ramp waits for a kiln that is further behind.
constexpr auto longestLag = TemperatureDifference::fromCelsius(15.0);

double perSecond(Rate rate) {
    return std::abs(rate.celsiusPerHour()) / 3600.0;
}

Temperature averaged(std::optional<Temperature> old, Temperature now, double step_s, double time_s) {
    return old ? *old + (now - *old) * (-std::expm1(-step_s / time_s)) : now;
}

template <class... F>
struct Overloaded : F... {
    using F::operator()...;
};
template <class... F>
Overloaded(F...) -> Overloaded<F...>;

} // namespace

void ReadingTrend::take(Temperature reading, Duration step) {
    m_fast = averaged(m_fast, reading, inSeconds(step), fast_s);
    m_slow = averaged(m_slow, reading, inSeconds(step), slow_s);
}

double ReadingTrend::slope_C_per_s() const {
    // On a straight line each average lags by its own time.
    return m_fast ? (*m_fast - *m_slow).celsius() / (slow_s - fast_s) : 0.0;
}

PracticeController::PracticeController(const Plan& plan, Rate fullPowerClimb, Duration probeLag)
    : m_legs(legsOf(plan)), m_stepCount(plan.steps.size()),
      m_fullPowerClimb_C_per_s(perSecond(fullPowerClimb)), m_probeLag(probeLag) {}

std::vector<PracticeController::Leg> PracticeController::legsOf(const Plan& plan) {
    std::vector<Leg> legs;
    for (std::size_t i = 0; i < plan.steps.size(); ++i)
        append(legs, i, plan.steps[i]);
    return legs;
}

void PracticeController::append(std::vector<Leg>& legs, std::size_t step, const Step& what) {
    const auto go = [&](Temperature to, std::optional<Rate> rate) {
        legs.push_back({.step = step, .to = to, .rate = rate});
    };
    const auto stay = [&](Temperature at, Duration length) {
        legs.push_back({.step = step, .to = at, .dwell = length});
    };
    const auto waitForCone = [&](const ConeWait& wait) {
        const auto top = std::min(wait.set, wait.ceiling);
        legs.push_back({.step = step, .to = top, .rate = wait.rate, .cone = wait.cone});
        legs.push_back({.step = step, .to = top, .dwell = wait.longestSoak, .cone = wait.cone});
    };
    const auto ring = [&](const Rings& rings) {
        go(rings.low, std::nullopt);
        stay(rings.low, rings.lowDwell);
        go(rings.high, std::nullopt);
        stay(rings.high, rings.highDwell);
    };
    std::visit(Overloaded{[&](const Climb& climb) { go(climb.to, climb.rate); },
                          [&](const Hold& hold) {
                              go(hold.at, std::nullopt);
                              stay(hold.at, hold.length);
                          },
                          [&](const ConeWait& wait) { waitForCone(wait); },
                          [&](const Drop& drop) { go(drop.to, drop.rate); },
                          [&](const Rings& rings) {
                              for (int i = 0; i < rings.count; ++i)
                                  ring(rings);
                          },
                          [&](const Cool& cool) { go(cool.to, cool.rate); }},
               what);
}

double PracticeController::demand(std::optional<Temperature> reading, Duration step) {
    if (!reading || finished())
        return 0.0;
    m_trend.take(*reading, step);
    if (!m_set)
        m_set = m_trend.smoothed();
    const auto& leg = m_legs[m_leg];
    const double power = follow(leg, step);
    const bool over = leg.dwell ? m_dwelt >= *leg.dwell : arrived(leg);
    if (over)
        enter(m_leg + 1);
    return power;
}

double PracticeController::follow(const Leg& leg, Duration step) {
    if (leg.dwell) {
        m_dwelt += step;
        m_set = leg.to;
    } else if (leg.rate) {
        moveSetPoint(leg, step);
    } else if (m_free) {
        return runFree(leg);
    }
    return proportionalIntegral(step);
}

/// Where the chamber is by now, as the probe will show it.
Temperature PracticeController::expected() const {
    const double behind_s = fast_s + inSeconds(m_probeLag);
    return m_trend.smoothed() + TemperatureDifference::fromCelsius(m_trend.slope_C_per_s() * behind_s);
}

bool PracticeController::arrived(const Leg& leg) const {
    const auto off = m_trend.smoothed() - leg.to;
    return m_set == leg.to && off <= arrival && -off <= arrival;
}

double PracticeController::runFree(const Leg& leg) {
    if (!m_freePower)
        m_freePower = leg.to > m_trend.smoothed() ? 1.0 : 0.0;
    const bool thereSoon = *m_freePower > 0 ? expected() >= leg.to : expected() <= leg.to;
    if (thereSoon) {
        m_free = false;
        m_set = leg.to;
        m_integral = std::clamp(*m_freePower - m_trend.slope_C_per_s() / m_fullPowerClimb_C_per_s, 0.0, 1.0);
    }
    return *m_freePower;
}

void PracticeController::moveSetPoint(const Leg& leg, Duration step) {
    const bool up = leg.to > *m_set;
    const auto ahead = up ? *m_set - m_trend.smoothed() : m_trend.smoothed() - *m_set;
    if (ahead > longestLag)
        return;
    const auto move = TemperatureDifference::fromCelsius(perSecond(*leg.rate) * inSeconds(step));
    m_set = up ? std::min(*m_set + move, leg.to) : std::max(*m_set - move, leg.to);
}

double PracticeController::proportionalIntegral(Duration step) {
    const double error_C = (*m_set - expected()).celsius();
    const double wanted = gain_per_C * error_C + m_integral;
    const bool winding = (wanted > 1.0 && error_C > 0) || (wanted < 0.0 && error_C < 0);
    if (!winding)
        m_integral += gain_per_C * error_C * inSeconds(step) / integralTime_s;
    m_integral = std::clamp(m_integral, 0.0, 1.0);
    return std::clamp(wanted, 0.0, 1.0);
}

void PracticeController::enter(std::size_t leg) {
    m_leg = leg;
    m_free = true;
    m_freePower.reset();
    m_dwelt = Duration(0);
}

bool PracticeController::coneDown(std::string_view cone) {
    const auto here = m_legs.begin() + static_cast<std::ptrdiff_t>(m_leg);
    const auto wait = std::find_if(here, m_legs.end(), [&](const Leg& leg) { return leg.cone == cone; });
    if (wait == m_legs.end())
        return false;
    const auto next =
        std::find_if(wait, m_legs.end(), [&](const Leg& leg) { return leg.step != wait->step; });
    enter(static_cast<std::size_t>(next - m_legs.begin()));
    return true;
}

std::size_t PracticeController::step() const {
    return finished() ? m_stepCount : m_legs[m_leg].step;
}

} // namespace ringhold
