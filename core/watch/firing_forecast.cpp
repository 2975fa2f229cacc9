#include "core/watch/firing_forecast.h"

#include "core/plan/cone_down_estimate.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double conesAt_C = 1260; ///< where a thermocouple's tolerance is asked for
constexpr Duration climbWindow = std::chrono::minutes(20);
constexpr Duration enoughOfStep = std::chrono::minutes(8);
constexpr Duration whereDropCounts = std::chrono::minutes(3);

/// Of one case: the climb at this rate to where the present leg goes, then the plan's own steps up to the
/// cone wait's soak.
Curve climbingCase(const StepFollower& follower, const ClimbShown& shown, double rate_C_per_h,
                   double usual_C_per_h) {
    const auto& plan = follower.plan();
    Curve curve{{shown.at, shown.temperature}};
    const auto goTo = [&](Temperature to, double rate) {
        const double hours = (to - curve.back().temperature).celsius() / rate;
        if (hours > 1e-6)
            curve.push_back({curve.back().at + durationFromHours(hours), to});
    };
    const double pace = usual_C_per_h > 0 ? rate_C_per_h / usual_C_per_h : 1.0;
    bool present = true;
    for (std::size_t i = follower.position()->step; i < plan.steps.size(); ++i, present = false) {
        if (const auto* climb = std::get_if<Climb>(&plan.steps[i])) {
            goTo(climb->to, present ? rate_C_per_h : climb->rate.celsiusPerHour() * pace);
        } else if (const auto* hold = std::get_if<Hold>(&plan.steps[i])) {
            const Instant end = present ? follower.position()->expectedEnd : curve.back().at + hold->length;
            if (end > curve.back().at)
                curve.push_back({end, curve.back().temperature});
        } else if (const auto* wait = std::get_if<ConeWait>(&plan.steps[i])) {
            goTo(wait->set, present ? rate_C_per_h : wait->rate.celsiusPerHour() * pace);
            curve.push_back(
                {std::max(curve.back().at, shown.at) + forecastHorizon, curve.back().temperature});
            break;
        } else {
            break;
        }
    }
    if (curve.back().at < shown.at + forecastHorizon)
        curve.push_back({shown.at + forecastHorizon, curve.back().temperature});
    return curve;
}

std::optional<Rate> plannedRate(const Step& step) {
    if (const auto* climb = std::get_if<Climb>(&step))
        return climb->rate;
    if (const auto* wait = std::get_if<ConeWait>(&step))
        return wait->rate;
    return std::nullopt;
}

/// The climb of the present step alone: what the kiln did in the one before says nothing of it. Until the
/// step has shown enough of itself the plan's rate counts, give or take a tenth.
ClimbShown climbInStep(const Curve& curve, ClimbShown shown, const StepFollower& follower) {
    const auto position = *follower.position();
    const Duration inStep = shown.at - position.since;
    if (inStep >= climbWindow)
        return shown;
    const auto recent = climbShownAtEnd(curve, inStep);
    if (inStep >= enoughOfStep && recent && recent->readings >= 5)
        return *recent;
    if (const auto rate = plannedRate(follower.plan().steps[position.step])) {
        shown.rate = *rate;
        shown.rateSd = Rate::fromCelsiusPerHour(0.1 * rate->celsiusPerHour());
    }
    return shown;
}

/// Whether a cone wait is under way or still to come.
bool waitAhead(const StepFollower& follower) {
    const auto position = follower.position();
    if (!position)
        return false;
    const auto& steps = follower.plan().steps;
    return std::any_of(steps.begin() + static_cast<std::ptrdiff_t>(position->step), steps.end(),
                       [](const Step& step) { return std::holds_alternative<ConeWait>(step); });
}

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

FutureTemperature futureOnPlan(const ClimbShown& shown, const StepFollower& follower) {
    const Rate sd = aheadSd(shown);
    if (!waitAhead(follower)) {
        Curve curve{{shown.at, shown.temperature}};
        for (const auto& point : follower.ahead().curve)
            if (point.at > shown.at)
                curve.push_back(point);
        curve.push_back({curve.back().at + forecastHorizon, curve.back().temperature});
        return {{{1.0, curve}}};
    }
    FutureTemperature future;
    const double usual = shown.rate.celsiusPerHour();
    for (const auto& node : rateNodes()) {
        const double rate = std::max(1.0, usual + node.z * sd.celsiusPerHour());
        future.cases.push_back({node.weight, climbingCase(follower, shown, rate, usual)});
    }
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
        return m_forecaster.usualFuture();
    return futureOnPlan(climbInStep(m_forecaster.curve(), *shown, *follower), *follower);
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
