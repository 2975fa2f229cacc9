#include "app/practice/cone_watch.h"

#include <algorithm>
#include <utility>

namespace ringhold {

namespace {

constexpr std::chrono::minutes reckonEvery{5};
constexpr std::chrono::minutes tellEvery{30};
constexpr std::chrono::minutes worthTelling{5};

std::string firstConeWaitedFor(const Plan& plan) {
    for (const auto& step : plan.steps)
        if (const auto* wait = std::get_if<ConeWait>(&step))
            return wait->cone;
    return {};
}

} // namespace

Result<ConeWatch> ConeWatch::make(const Plan& plan, Instant begin, const Pack& pack,
                                  const OffsetPrior& prior) {
    const auto cone = std::find(pack.cones.begin(), pack.cones.end(), firstConeWaitedFor(plan));
    if (cone == pack.cones.end())
        return Error{ErrorKind::badInput, "the plan waits for no cone of the pack"};
    auto forecast = FiringForecast::make({pack}, {prior});
    if (!forecast)
        return forecast.error();
    StepFollower follower(plan,
                          PlanContext{.start = begin, .kiln = {}, .line = {}, .soFar = {}, .coneDown = {}});
    return ConeWatch(std::move(*forecast), std::move(follower), pack,
                     static_cast<std::size_t>(cone - pack.cones.begin()));
}

const ConeForecast& ConeWatch::firingConeIn(const Forecast& forecast) const {
    return forecast.packs.front().cones[m_index];
}

std::size_t ConeWatch::step() const {
    if (const auto position = m_follower.position())
        return position->step;
    return m_follower.finished() ? m_follower.plan().steps.size() : 0;
}

void ConeWatch::add(const CurvePoint& point) {
    m_curve.push_back(point);
    m_forecast.add(point);
    m_follower.add(point);
}

Status ConeWatch::look(const std::vector<PracticeLook>& looks) {
    for (const auto& look : looks)
        m_looks.push_back({.id = {}, .pack = m_pack.id, .at = look.at, .cone = look.cone, .hour = look.hour});
    m_justLooked = true;
    m_follower.restart(m_curve, m_looks);
    return m_forecast.restart(m_curve, m_curve.back().at, m_looks);
}

bool ConeWatch::due() const {
    return m_curve.size() >= 2 &&
           (m_justLooked || !m_reckoned || m_curve.back().at - *m_reckoned >= reckonEvery);
}

Result<std::optional<Forecast>> ConeWatch::news() {
    if (!due())
        return std::optional<Forecast>();
    m_reckoned = m_curve.back().at;
    auto forecast = m_forecast.forecast(&m_follower);
    if (!forecast)
        return forecast.error();
    const auto& down = firingConeIn(*forecast).down;
    if (!std::exchange(m_justLooked, false) && !moved(down))
        return std::optional<Forecast>();
    m_told.push_back({forecast->asOf, down});
    return std::optional(std::move(*forecast));
}

bool ConeWatch::moved(const TimeInterval& down) const {
    if (m_told.empty())
        return true;
    const auto& last = m_told.back();
    if (m_curve.back().at - last.at < tellEvery)
        return false;
    if (!last.down.median || !down.median)
        return last.down.median.has_value() != down.median.has_value();
    return std::chrono::abs(*down.median - *last.down.median) > worthTelling;
}

} // namespace ringhold
