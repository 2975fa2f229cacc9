#include "core/watch/firing_forecast.h"

#include "core/plan/cone_down_estimate.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double conesAt_C = 1260; ///< where a thermocouple's tolerance is asked for

} // namespace

OffsetPrior offsetPriorFor(const Probe* probe, const std::string& place,
                           const std::vector<FiledOffset>& filed) {
    const auto type = probe ? probe->type : ThermocoupleType::K;
    const OffsetPrior fresh = newProbePrior(type, Temperature::fromCelsius(conesAt_C));
    if (!probe)
        return fresh;
    std::vector<FiledOffset> series;
    std::ranges::copy_if(filed, std::back_inserter(series), [&](const FiledOffset& f) {
        return f.kiln == probe->kiln && f.probe == probe->id && f.place == place;
    });
    std::ranges::sort(series, {}, &FiledOffset::at);
    std::vector<OffsetFound> found;
    for (const auto& f : series)
        found.push_back({f.mean, f.sd});
    return priorFromHistory(found, fresh);
}

Result<FiringForecast> FiringForecast::make(const std::vector<Pack>& packs,
                                            const std::vector<OffsetPrior>& priors) {
    std::vector<WatchedPack> watchedPacks;
    for (std::size_t i = 0; i < packs.size(); ++i)
        watchedPacks.push_back({packs[i].type, packs[i].cones, priors[i]});
    auto forecaster = ConeForecaster::make(std::move(watchedPacks));
    if (!forecaster)
        return forecaster.error();
    return FiringForecast(packs, std::move(*forecaster));
}

std::vector<WatchedLook> FiringForecast::watched(const std::vector<Look>& looks) const {
    std::vector<WatchedLook> result;
    for (const auto& look : looks) {
        const auto pack = std::ranges::find(m_packs, look.pack, &Pack::id);
        if (pack != m_packs.end() && !look.struck)
            result.push_back(
                {static_cast<std::size_t>(pack - m_packs.begin()), look.cone, look.at, look.hour, look.cold});
    }
    return result;
}

Status FiringForecast::restart(const Curve& curve, Instant from, const std::vector<Look>& looks) {
    m_forecaster.forgetFrom(from);
    for (const auto& point : curve)
        m_forecaster.add(point);
    m_looks = looks;
    return m_forecaster.setLooks(watched(looks));
}

std::optional<FutureTemperature> FiringForecast::future(const StepFollower* follower) const {
    const auto shown = climbShown();
    if (!shown)
        return std::nullopt;
    if (!follower || !follower->position())
        return futureWithoutPlan(*shown, levellingShown(curve()));
    return futureOnPlan(climbInStep(curve(), *shown, *follower), *follower,
                        levellingShown(curve(), follower->position()->since));
}

Result<Forecast> FiringForecast::forecast(const StepFollower* follower) const {
    const auto ahead = future(follower);
    return ahead ? m_forecaster.forecast(*ahead) : m_forecaster.forecast();
}

Result<Forecast> FiringForecast::forecastWith(const std::vector<Look>& looks,
                                              const StepFollower* follower) const {
    std::vector<Look> all = m_looks;
    all.insert(all.end(), looks.begin(), looks.end());
    return forecastBy(all, follower);
}

Result<Forecast> FiringForecast::forecastBy(const std::vector<Look>& looks,
                                            const StepFollower* follower) const {
    FiringForecast tried = *this;
    tried.m_looks = looks;
    if (const auto taken = tried.m_forecaster.setLooks(tried.watched(looks)); !taken)
        return taken.error();
    return tried.forecast(follower);
}

Result<Forecast> FiringForecast::forecastAfter(const Curve& ahead) const {
    FiringForecast gone = *this;
    for (const auto& point : ahead)
        gone.add(point);
    return gone.m_forecaster.forecast();
}

std::optional<Instant> FiringForecast::coneDownOn(const Curve& whole, const std::string& cone) const {
    const auto now = m_forecaster.forecast();
    if (!now || m_packs.empty())
        return std::nullopt;
    return coneDownByHeatWork(ConeTable::builtIn(), m_packs.front().type,
                              now->packs.front().offsetMean)(whole, cone);
}

} // namespace ringhold
