#include "core/cones/forecast.h"

#include "core/cones/bending.h"
#include "core/cones/down_times.h"
#include "core/cones/hour_belief.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr Duration longestAfterReading = std::chrono::minutes(20);
constexpr Duration noticeableGap = std::chrono::minutes(3);
constexpr Duration heedGapsEvery = std::chrono::minutes(10);
constexpr double hoursTold[] = {1, 3, 5};
constexpr double surely = 0.95;
constexpr double contradicts = 0.5;
constexpr Rate coolsBy = Rate::fromCelsiusPerHour(300);

Error bad(std::string what) {
    return {ErrorKind::badInput, std::move(what)};
}

/// Shifts that the prior and the cones' deviations make thinkable.
ShiftGrid shiftsFor(const std::vector<WatchedPack>& packs, const InferenceSettings& settings) {
    double low_C = 0;
    double high_C = 0;
    for (const auto& pack : packs) {
        const double reach_C = 4.5 * std::hypot(pack.prior.sd.celsius(), settings.coneSd.celsius() + 2);
        low_C = std::min(low_C, pack.prior.mean.celsius() - reach_C);
        high_C = std::max(high_C, pack.prior.mean.celsius() + reach_C);
    }
    return {low_C, high_C};
}

Interval<TemperatureDifference> intervalOf(const GridDistribution& belief) {
    const auto at = [&](double share) {
        return TemperatureDifference::fromCelsius(belief.quantile_C(share));
    };
    return {at(0.05), at(0.5), at(0.95)};
}

/// The heat works that are asked for: an hour's for each bending exponent, and the end.
class WorksAsked {
  public:
    explicit WorksAsked(const OffsetPosterior& posterior) {
        for (const double hour : hoursTold)
            for (const auto& node : posterior.exponents)
                m_asked.push_back(BendingLaw(node.exponent).workAt(hour));
        m_asked.push_back(1.0);
        m_ascending = m_asked;
        std::ranges::sort(m_ascending);
    }

    const std::vector<double>& ascending() const { return m_ascending; }
    std::size_t placeOf(std::size_t hour, std::size_t exponent) const {
        return place(m_asked[hour * (m_asked.size() / std::size(hoursTold)) + exponent]);
    }
    std::size_t placeOfDown() const { return place(m_asked.back()); }

  private:
    std::size_t place(double work) const {
        return static_cast<std::size_t>(std::ranges::lower_bound(m_ascending, work) - m_ascending.begin());
    }
    std::vector<double> m_asked;
    std::vector<double> m_ascending;
};

TimeInterval timesOf(const WorkAhead& ahead, const WorksAsked& works, const OffsetPosterior& posterior,
                     const std::vector<GridDistribution>& shiftByExponent, std::size_t hour) {
    DownTimes times(ahead);
    for (std::size_t e = 0; e < posterior.exponents.size(); ++e)
        times.add(shiftByExponent[e], works.placeOf(hour, e), posterior.exponents[e].weight);
    return times.interval();
}

} // namespace

bool isTellableHour(double hour) {
    return hour >= hourStanding && hour <= hourDown && std::round(hour * 2) == hour * 2;
}

ConeForecaster::ConeForecaster(std::vector<WatchedPack> packs, InferenceSettings settings, HeatWorkGrid grid,
                               std::vector<PackEvidence> evidence)
    : m_packs(std::move(packs)), m_settings(settings), m_grid(std::move(grid)),
      m_evidence(std::move(evidence)) {}

Result<ConeForecaster> ConeForecaster::make(std::vector<WatchedPack> packs, InferenceSettings settings) {
    std::vector<const Cone*> cones;
    std::vector<PackEvidence> evidence;
    for (const auto& pack : packs) {
        if (pack.cones.empty())
            return bad("a pack has no cone");
        auto& added = evidence.emplace_back(PackEvidence{pack.prior, {}, {}});
        for (const auto& coneName : pack.cones) {
            const Cone* cone = ConeTable::builtIn().find(coneName, pack.type);
            if (!cone)
                return bad("there is no " + std::string(name(pack.type)) + " cone \"" + coneName +
                           "\" in the table");
            const auto known = std::ranges::find(cones, cone);
            added.cones.push_back(static_cast<std::size_t>(known - cones.begin()));
            if (known == cones.end())
                cones.push_back(cone);
        }
    }
    if (packs.empty())
        return bad("no cone is named");
    HeatWorkGrid grid(std::move(cones), shiftsFor(packs, settings));
    return ConeForecaster(std::move(packs), settings, std::move(grid), std::move(evidence));
}

void ConeForecaster::add(const CurvePoint& point) {
    if (!m_curve.empty() && point.at <= m_curve.back().at)
        return;
    const bool lookWaits = !m_looks.empty() && (m_curve.empty() || m_looks.back().at > m_curve.back().at);
    const bool afterGap = !m_curve.empty() && point.at - m_curve.back().at >= noticeableGap;
    m_curve.push_back(point);
    m_grid.add(point);
    if (afterGap || point.at - m_gapsHeeded >= heedGapsEvery) {
        m_gapsHeeded = point.at;
        m_posterior.reset();
    }
    if (lookWaits)
        judgeLooks();
}

void ConeForecaster::forgetFrom(Instant at) {
    const auto keptUntil = m_grid.rewind(at - Duration(1));
    std::erase_if(m_curve, [&](const CurvePoint& p) { return p.at >= at; });
    for (const auto& point : m_curve)
        if (!keptUntil || point.at > *keptUntil)
            m_grid.add(point);
    judgeLooks();
}

Status ConeForecaster::setLooks(std::vector<WatchedLook> looks) {
    for (const auto& look : looks) {
        if (look.pack >= m_packs.size() || std::ranges::count(m_packs[look.pack].cones, look.cone) == 0)
            return bad("a look names cone \"" + look.cone + "\", which is not in the pack");
        if (!isTellableHour(look.hour))
            return bad("a cone's hour is 0 (standing) to 6 (down), in halves");
        if (look.cold && !m_curve.empty())
            continue;
        if (m_curve.empty() || look.at < m_curve.front().at)
            return bad("the look at " + formatIso8601(look.at) + " is before the first reading");
        if (look.at > m_curve.back().at + longestAfterReading)
            return bad("the look at " + formatIso8601(look.at) +
                       " is more than 20 min after the last reading");
    }
    std::ranges::stable_sort(looks, {}, &WatchedLook::at);
    m_looks = std::move(looks);
    judgeLooks();
    return {};
}

std::vector<double> ConeForecaster::lnWorkAt(std::size_t cone, Instant at) const {
    const auto shown = climbShown();
    if (at <= m_curve.back().at || !shown)
        return m_grid.lnWorkAt(cone, at);
    // beyond the last reading: along the climb shown
    const auto now = m_grid.lnWork(cone);
    const double seconds = inSeconds(at - m_curve.back().at);
    const double from_K = m_curve.back().temperature.kelvin();
    const double to_K = from_K + shown->rate.celsiusPerHour() * seconds / 3600;
    std::vector<double> lnWork;
    for (std::size_t node = 0; node < now.size(); ++node) {
        const double shift_C = m_grid.shifts().at_C(node);
        const double gained = m_grid.cones()[cone]->law.gained(from_K - shift_C, to_K - shift_C, seconds);
        lnWork.push_back(std::max(HeatWorkGrid::lnNone, std::log(std::exp(now[node]) + gained)));
    }
    return lnWork;
}

std::vector<double> ConeForecaster::lnWorkWhenCold(std::size_t cone) const {
    const auto now = m_grid.lnWork(cone);
    std::vector<double> lnWork;
    for (std::size_t node = 0; node < now.size(); ++node) {
        const double felt_K = m_curve.back().temperature.kelvin() - m_grid.shifts().at_C(node);
        const double more = workInCooling(m_grid.cones()[cone]->law, felt_K, coolsBy);
        lnWork.push_back(std::max(HeatWorkGrid::lnNone, std::log(std::exp(now[node]) + more)));
    }
    return lnWork;
}

void ConeForecaster::judgeLooks() {
    for (auto& pack : m_evidence)
        pack.looks.clear();
    m_posterior.reset();
    if (m_curve.empty())
        return; // they wait until the readings have come again
    for (const auto& look : m_looks) {
        auto& pack = m_evidence[look.pack];
        const auto& names = m_packs[look.pack].cones;
        const auto cone = static_cast<std::size_t>(std::ranges::find(names, look.cone) - names.begin());
        pack.looks.push_back(
            {cone, look.hour,
             look.cold ? lnWorkWhenCold(pack.cones[cone]) : lnWorkAt(pack.cones[cone], look.at)});
    }
}

const OffsetPosterior& ConeForecaster::posterior() const {
    if (!m_posterior)
        m_posterior = inferOffset(m_grid, m_evidence, m_settings);
    return *m_posterior;
}

std::optional<FutureTemperature> ConeForecaster::usualFuture() const {
    const auto shown = climbShown();
    if (!shown)
        return std::nullopt;
    return climbOnAsShown(*shown, std::nullopt);
}

Result<Forecast> ConeForecaster::forecast() const {
    const auto future = usualFuture();
    if (!future)
        return bad("a forecast needs two readings");
    return forecast(*future);
}

void ConeForecaster::tellIfDown(std::size_t pack, const DownTimes& down, ConeForecast& told) const {
    const WatchedLook* newest = nullptr;
    bool everSeenDown = false;
    for (const auto& look : m_looks) // in order of time
        if (look.pack == pack && look.cone == told.cone) {
            newest = &look;
            everSeenDown = everSeenDown || look.hour >= hourDown;
        }
    told.probabilityDown = down.probabilityBy(m_curve.back().at);
    told.isDown = told.probabilityDown >= surely;
    if (!newest)
        return;
    const bool seenDown = newest->hour >= hourDown;
    told.contradicted = !seenDown && (everSeenDown || down.probabilityBy(newest->at) >= contradicts);
    told.isDown = seenDown || (told.isDown && !told.contradicted);
}

GridDistribution ConeForecaster::beliefOf(std::size_t gridCone) const {
    std::optional<GridDistribution> all;
    for (std::size_t p = 0; p < m_packs.size(); ++p)
        for (std::size_t c = 0; c < m_packs[p].cones.size(); ++c) {
            if (m_evidence[p].cones[c] != gridCone)
                continue;
            const auto& shift = posterior().packs[p].shift[c];
            if (all)
                all->add(shift, 1);
            else
                all = shift;
        }
    return *all;
}

Result<Forecast> ConeForecaster::forecast(const FutureTemperature& future) const {
    if (m_curve.empty())
        return bad("a forecast needs a reading");
    Forecast result{m_curve.back().at, {}, future.levelsOff};
    const WorksAsked works(posterior());
    // a cone that stands in several packs is walked ahead once, for all that is believed of it in any
    std::vector<std::optional<WorkAhead>> walked(m_grid.cones().size());
    const auto aheadOf = [&](std::size_t cone) -> const WorkAhead& {
        if (!walked[cone])
            walked[cone].emplace(m_grid, cone, future, works.ascending(), beliefOf(cone));
        return *walked[cone];
    };
    for (std::size_t p = 0; p < m_packs.size(); ++p) {
        const auto& belief = posterior().packs[p];
        auto& pack = result.packs.emplace_back();
        pack.offset = intervalOf(belief.offset);
        pack.offsetMean = TemperatureDifference::fromCelsius(belief.offset.mean_C());
        pack.offsetSd = TemperatureDifference::fromCelsius(belief.offset.sd_C());
        pack.wrongLook = belief.wrongLook;
        for (std::size_t c = 0; c < m_packs[p].cones.size(); ++c) {
            const std::size_t cone = m_evidence[p].cones[c];
            ConeForecast told;
            told.cone = m_packs[p].cones[c];
            told.work = std::exp(m_grid.lnWork(cone)[m_grid.shifts().zeroNode()]);
            told.hour = BendingLaw().hourAt(told.work);
            HourBelief hourNow;
            hourNow.add(posterior(), p, c, m_grid.shifts(), m_grid.lnWork(cone));
            told.hourNow = hourNow.interval();
            const auto& ahead = aheadOf(cone);
            DownTimes down(ahead);
            down.add(belief.shift[c], works.placeOfDown(), 1.0);
            told.down = down.interval();
            for (std::size_t h = 0; h < std::size(hoursTold); ++h)
                told.atHour[h] = timesOf(ahead, works, posterior(), belief.shiftByExponent[c], h);
            tellIfDown(p, down, told);
            pack.cones.push_back(std::move(told));
        }
    }
    return result;
}

} // namespace ringhold
