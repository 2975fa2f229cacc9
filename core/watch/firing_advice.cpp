#include "core/watch/firing_advice.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr Rate usualFall = Rate::fromCelsiusPerHour(300); ///< of a kiln without power near its top

template <class T>
std::optional<T> unlessBad(Result<T> result) {
    return result ? std::optional<T>(std::move(*result)) : std::nullopt;
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

Rate FiringAdvice::drop() const {
    return m_follower ? nextDropRate(*m_follower).value_or(usualFall) : usualFall;
}

std::optional<TimeInterval> FiringAdvice::downHolding(Temperature at, const std::string& cone) const {
    return unlessBad(downWhenHeldAt(m_forecaster.forecaster(), {m_pack, cone}, at));
}

std::optional<Interval<Rate>> FiringAdvice::climbToBeDownBy(Instant by, const std::string& cone) const {
    if (!can() || by <= now())
        return std::nullopt;
    const auto rate = rateToBeDownBy(m_forecaster.forecaster(), {m_pack, cone}, by);
    if (!rate || !rate->median)
        return std::nullopt;
    return Interval<Rate>{rate->p05.value_or(*rate->median), *rate->median,
                          rate->p95.value_or(fastestRate())};
}

Curve FiringAdvice::upToTheTop(const std::string& firingCone) const {
    Curve curve{{now(), temperature()}};
    const auto planned = m_forecaster.forecast(m_follower);
    const auto future = m_forecaster.future(m_follower);
    const auto* cone = planned ? find(*planned, firingCone) : nullptr;
    if (!future || !cone || cone->isDown || !cone->down.median || *cone->down.median <= now())
        return curve;
    const auto& middle = std::ranges::max_element(future->cases, {}, &FutureTemperature::Case::weight)->curve;
    for (const auto& point : middle)
        if (point.at > now() && point.at < *cone->down.median)
            curve.push_back(point);
    curve.push_back({*cone->down.median, temperatureAt(middle, *cone->down.median)});
    return curve;
}

std::optional<Interval<double>> FiringAdvice::hourAfterMore(Duration more, const std::string& cone,
                                                            const std::string& firingCone) const {
    if (!can())
        return std::nullopt;
    Curve curve = upToTheTop(firingCone);
    const Instant end = curve.back().at + more;
    if (more > Duration(0))
        curve.push_back({end, curve.back().temperature});
    const auto hours = hoursAfter(m_forecaster.forecaster(), {m_pack, cone}, {{{1.0, curve}}}, end, drop());
    return hours ? std::optional(hours->cooled) : std::nullopt;
}

std::vector<ConeAfterDrop> FiringAdvice::afterDropNow() const {
    std::vector<ConeAfterDrop> told;
    const auto before = can() ? unlessBad(m_forecaster.forecast(m_follower)) : std::nullopt;
    const auto after = hoursAfterDrop(m_forecaster.forecaster(), m_pack, drop());
    if (!before || !after)
        return told;
    const auto& cones = before->packs[m_pack].cones;
    for (std::size_t i = 0; i < cones.size(); ++i)
        if (!cones[i].isDown)
            told.push_back({cones[i].cone, (*after)[i].atEnd, (*after)[i].cooled});
    return told;
}

std::optional<DropAdvice> FiringAdvice::earliestDrop(const std::string& cone) const {
    const auto future = m_forecaster.future(m_follower);
    const auto told = m_forecaster.forecast(m_follower);
    const auto* forecast = told ? find(*told, cone) : nullptr;
    if (!future || !forecast || forecast->isDown)
        return std::nullopt;
    const auto from = ringhold::earliestDrop(m_forecaster.forecaster(), {m_pack, cone}, *future, drop());
    return from ? std::optional(DropAdvice{*from, forecast->down}) : std::nullopt;
}

} // namespace ringhold
