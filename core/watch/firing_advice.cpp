#include "core/watch/firing_advice.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double slowestWay_C_per_h = 30; ///< to a hold above
constexpr double usualFall_C_per_h =
    300;                             ///< of a kiln without power near its top, where nothing else is known
constexpr double coldEnough_C = 250; ///< below the top: no cone takes notice of it any more
constexpr double rateFine_C_per_h = 0.25;
constexpr Duration readingsApart = std::chrono::minutes(1); ///< of readings made up for what is to come

void stayTo(Curve& curve, Instant end) {
    if (end > curve.back().at)
        curve.push_back({end, curve.back().temperature});
}

void goTo(Curve& curve, Temperature to, double rate_C_per_h) {
    const double hours = std::abs((to - curve.back().temperature).celsius()) / rate_C_per_h;
    if (hours > 1e-6)
        curve.push_back({curve.back().at + durationFromHours(hours), to});
}

/// As an instrument would read it: a gap of hours would be taken for one.
Curve asReadings(const Curve& corners) {
    Curve readings;
    for (Instant at = corners.front().at + readingsApart; at < corners.back().at; at += readingsApart)
        readings.push_back({at, temperatureAt(corners, at)});
    readings.push_back(corners.back());
    return readings;
}

} // namespace

FiringAdvice::FiringAdvice(const FiringForecast& forecaster, const StepFollower* follower, std::size_t pack)
    : m_forecaster(forecaster), m_follower(follower), m_pack(pack), m_shown(forecaster.climbShown()) {}

const ConeForecast* FiringAdvice::find(const Forecast& forecast, const std::string& cone) const {
    if (m_pack >= forecast.packs.size())
        return nullptr;
    const auto& cones = forecast.packs[m_pack].cones;
    const auto found = std::ranges::find(cones, cone, &ConeForecast::cone);
    return found == cones.end() ? nullptr : &*found;
}

std::optional<TimeInterval> FiringAdvice::downOn(const Curve& curve, const std::string& cone) const {
    const auto told = m_forecaster.forecastOn({{{1.0, curve}}});
    const auto* found = told ? find(*told, cone) : nullptr;
    return found ? std::optional(found->down) : std::nullopt;
}

std::optional<TimeInterval> FiringAdvice::downHolding(Temperature at, const std::string& cone) const {
    if (!can())
        return std::nullopt;
    Curve curve{{now(), temperature()}};
    goTo(curve, at,
         at > temperature() ? std::max(slowestWay_C_per_h, m_shown->rate.celsiusPerHour())
                            : usualFall_C_per_h);
    stayTo(curve, now() + forecastHorizon);
    return downOn(curve, cone);
}

std::optional<Interval<Rate>> FiringAdvice::climbToBeDownBy(Instant by, const std::string& cone) const {
    if (!can() || by <= now())
        return std::nullopt;
    const auto climbing = [&](double rate_C_per_h) {
        Curve curve{{now(), temperature()}};
        if (rate_C_per_h > 0)
            curve.push_back({now() + forecastHorizon,
                             temperature() + TemperatureDifference::fromCelsius(rate_C_per_h *
                                                                                inHours(forecastHorizon))});
        else
            stayTo(curve, now() + forecastHorizon);
        return downOn(curve, cone);
    };
    // the slowest rate by which that point of the interval comes in time
    const auto slowest = [&](std::optional<Instant> TimeInterval::*point) -> std::optional<double> {
        const auto inTime = [&](double rate) {
            const auto down = climbing(rate);
            const auto at = down ? (*down).*point : std::nullopt;
            return at && *at <= by;
        };
        if (inTime(0))
            return 0.0;
        double low = 0, high = fastestClimb_C_per_h;
        if (!inTime(high))
            return std::nullopt;
        while (high - low > rateFine_C_per_h)
            (inTime((low + high) / 2) ? high : low) = (low + high) / 2;
        return high;
    };
    const auto median = slowest(&TimeInterval::median);
    if (!median)
        return std::nullopt;
    const auto rate = [](double value) { return Rate::fromCelsiusPerHour(value); };
    return Interval<Rate>{rate(slowest(&TimeInterval::p05).value_or(*median)), rate(*median),
                          rate(slowest(&TimeInterval::p95).value_or(fastestClimb_C_per_h))};
}

Curve FiringAdvice::upToTheTop(const std::string& firingCone) const {
    Curve curve{{now(), temperature()}};
    const auto planned = m_forecaster.forecast(m_follower);
    const auto* cone = planned ? find(*planned, firingCone) : nullptr;
    if (!cone || cone->isDown || !cone->down.median || *cone->down.median <= now())
        return curve;
    const auto future = m_follower && m_follower->position()
                            ? futureOnPlan(*m_shown, *m_follower)
                            : climbOn(now(), temperature(), m_shown->rate, {}, {});
    const auto& middle = std::ranges::max_element(future.cases, {}, &FutureTemperature::Case::weight)->curve;
    for (const auto& point : middle)
        if (point.at > now() && point.at < *cone->down.median)
            curve.push_back(point);
    curve.push_back({*cone->down.median, temperatureAt(middle, *cone->down.median)});
    return curve;
}

/// As the plan's drop falls, if there is one ahead, and straight on from there.
void FiringAdvice::addDrop(Curve& curve) const {
    const CurvePoint top = curve.back();
    if (m_follower) {
        const auto& ahead = m_follower->ahead();
        const auto drop = std::ranges::find(ahead.legs, Motion::down, &PlannedLeg::motion);
        if (drop != ahead.legs.end())
            for (const auto& point : ahead.curve)
                if (point.at > drop->start && point.at <= drop->end)
                    curve.push_back({top.at + (point.at - drop->start),
                                     point.temperature - (drop->from - top.temperature)});
    }
    goTo(curve, top.temperature - TemperatureDifference::fromCelsius(coldEnough_C), usualFall_C_per_h);
}

std::optional<Interval<double>> FiringAdvice::hourAfterMore(Duration more, const std::string& cone,
                                                            const std::string& firingCone) const {
    if (!can())
        return std::nullopt;
    Curve curve = upToTheTop(firingCone);
    stayTo(curve, curve.back().at + more);
    addDrop(curve);
    const auto told = m_forecaster.forecastAfter(asReadings(curve));
    const auto* found = told ? find(*told, cone) : nullptr;
    return found ? std::optional(found->hourNow) : std::nullopt;
}

std::vector<ConeAfterDrop> FiringAdvice::afterDropNow() const {
    std::vector<ConeAfterDrop> cones;
    if (!can())
        return cones;
    Curve curve{{now(), temperature()}};
    addDrop(curve);
    const auto before = m_forecaster.forecast(m_follower);
    const auto after = m_forecaster.forecastAfter(asReadings(curve));
    if (!before || !after || m_pack >= before->packs.size())
        return cones;
    for (const auto& cone : before->packs[m_pack].cones)
        if (const auto* cooled = find(*after, cone.cone); cooled && !cone.isDown)
            cones.push_back({cone.cone, cone.hourNow, cooled->hourNow});
    return cones;
}

} // namespace ringhold
