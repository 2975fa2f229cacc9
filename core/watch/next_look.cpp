#include "core/watch/next_look.h"

#include "core/cones/bending.h"
#include "core/cones/look_likelihood.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace ringhold {

namespace {

constexpr double hoursToSee[] = {1, 3, 5};

std::optional<Instant> lastLook(const std::vector<Look>& looks) {
    std::optional<Instant> last;
    for (const auto& look : looks)
        if (!look.struck && !look.cold && (!last || look.at > *last))
            last = look.at;
    return last;
}

bool seenDown(const std::vector<Look>& looks, const std::string& cone) {
    return std::ranges::any_of(
        looks, [&](const Look& look) { return !look.struck && look.cone == cone && look.hour >= hourDown; });
}

/// What a cone has still to show after `since`, in order of time.
std::vector<NextLook> showsOf(const ConeForecast& cone, std::optional<Instant> since) {
    std::vector<NextLook> shows;
    const auto add = [&](const TimeInterval& when, double hour) {
        if (when.median && (!since || *when.median > *since))
            shows.push_back({cone.cone, *when.median, hour});
    };
    for (std::size_t i = 0; i < std::size(hoursToSee); ++i)
        add(cone.atHour[i], hoursToSee[i]);
    add(cone.down, hourDown);
    return shows;
}

} // namespace

std::optional<NextLook> nextLook(const PackForecast& pack, const std::vector<Look>& looksAtPack, Instant asOf,
                                 Duration leastApart, Duration horizon) {
    const auto last = lastLook(looksAtPack);
    std::optional<NextLook> next;
    for (const auto& cone : pack.cones) {
        if (seenDown(looksAtPack, cone.cone))
            continue;
        for (const auto& show : showsOf(cone, last))
            if (!next || show.at < next->at)
                next = show;
    }
    if (!next || next->at > asOf + horizon)
        return std::nullopt;
    if (last)
        next->at = std::max(next->at, *last + leastApart);
    next->at = std::max(next->at, asOf);
    return next;
}

namespace {

constexpr Duration farthest = std::chrono::hours(3);
constexpr Duration closest = std::chrono::minutes(2);
constexpr int instants = 30;
constexpr double nearlyBest = 0.8;
constexpr double tellsLittle = 0.05;
constexpr int hoursTellable = 13;
constexpr double hourStep = 0.05;

/// The probability of each hour told, by where the tip really points.
const std::vector<std::array<double, hoursTellable>>& toldByTrueHour() {
    static const auto table = [] {
        std::vector<std::array<double, hoursTellable>> made;
        for (double hour = 0; hour < hourDown + hourStep / 2; hour += hourStep) {
            auto& row = made.emplace_back();
            for (int told = 0; told < hoursTellable; ++told)
                row[static_cast<std::size_t>(told)] = lookProbability(told * 0.5, hour);
        }
        return made;
    }();
    return table;
}

/// What is believed of one cone, and W as the kiln goes on.
class ConeToSee {
  public:
    ConeToSee(const ConeForecaster& forecaster, std::size_t pack, std::size_t cone, const Curve& ahead)
        : m_shifts(forecaster.grid().shifts()),
          m_law(forecaster.grid().cones()[forecaster.gridCone(pack, cone)]->law),
          m_posterior(forecaster.posterior()), m_belief(m_posterior.packs[pack]), m_cone(cone),
          m_ahead(ahead), m_at(ahead.front().at) {
        for (const double lnWork : forecaster.grid().lnWork(forecaster.gridCone(pack, cone)))
            m_work.push_back(std::exp(lnWork));
        m_lnWork.resize(m_work.size());
    }

    /// Instants in order.
    void goTo(Instant at) {
        const double from_K = temperatureAt(m_ahead, m_at).kelvin();
        const double to_K = temperatureAt(m_ahead, at).kelvin();
        for (std::size_t node = 0; node < m_work.size(); ++node) {
            const double shift_C = m_shifts.at_C(node);
            m_work[node] += m_law.gained(from_K - shift_C, to_K - shift_C, inSeconds(at - m_at));
            m_lnWork[node] = std::log(std::max(m_work[node], 1e-30));
        }
        m_at = at;
    }

    /// How much of this cone's variance a look now is expected to take away, 0 to 1.
    double told() const {
        std::array<double, hoursTellable> weight{}, first{}, second{};
        double all = 0, allFirst = 0, allSecond = 0;
        eachBelief([&](double shift_C, double belief, double hour) {
            all += belief;
            allFirst += belief * shift_C;
            allSecond += belief * shift_C * shift_C;
            const auto& told = toldByTrueHour()[static_cast<std::size_t>(std::lround(hour / hourStep))];
            for (std::size_t h = 0; h < hoursTellable; ++h) {
                weight[h] += belief * told[h];
                first[h] += belief * told[h] * shift_C;
                second[h] += belief * told[h] * shift_C * shift_C;
            }
        });
        double left = 0;
        for (std::size_t h = 0; h < hoursTellable; ++h)
            if (weight[h] > 0)
                left += second[h] - first[h] * first[h] / weight[h];
        const double before = allSecond - allFirst * allFirst / all;
        return before > 0 ? std::clamp(1 - left / before, 0.0, 1.0) : 0.0;
    }

    double meanHour() const {
        double all = 0, sum = 0;
        eachBelief([&](double, double belief, double hour) {
            all += belief;
            sum += belief * hour;
        });
        return sum / all;
    }
    double shiftVariance() const {
        const double sd_C = m_belief.shift[m_cone].sd_C();
        return sd_C * sd_C;
    }

  private:
    /// Calls with each shift, what is believed of it, and the hour then; a degree at a time.
    template <class Use>
    void eachBelief(const Use& use) const {
        for (std::size_t e = 0; e < m_posterior.exponents.size(); ++e) {
            const BendingLaw bending(m_posterior.exponents[e].exponent);
            const auto& shift = m_belief.shiftByExponent[m_cone][e];
            const auto cells = static_cast<std::size_t>(std::max(1.0, std::round(1 / shift.step_C())));
            for (std::size_t i = 0; i + cells <= shift.size(); i += cells) {
                double belief = 0;
                for (std::size_t k = 0; k < cells; ++k)
                    belief += shift[i + k] * m_posterior.exponents[e].weight;
                if (belief < 1e-5)
                    continue;
                const double shift_C = (shift.at_C(i) + shift.at_C(i + cells - 1)) / 2;
                const double lnWork = m_shifts.interpolated(m_lnWork, shift_C);
                use(shift_C, belief, bending.hourAt(std::exp(std::min(lnWork, 1.0))));
            }
        }
    }

    const ShiftGrid& m_shifts;
    const HeatWorkLaw& m_law;
    const OffsetPosterior& m_posterior;
    const OffsetPosterior::PackPosterior& m_belief;
    std::size_t m_cone;
    const Curve& m_ahead;
    Instant m_at;
    std::vector<double> m_work;
    std::vector<double> m_lnWork;
};

/// The looks that could be, each with how far it narrows; instants in order.
std::vector<NextLook> looksThatCouldBe(const ConeForecaster& forecaster, std::size_t pack, std::size_t firing,
                                       const std::vector<std::size_t>& cones, const Curve& ahead,
                                       Instant from, Instant until) {
    const double offsetSd_C = forecaster.posterior().packs[pack].offset.sd_C();
    const double shared = offsetSd_C * offsetSd_C;
    const double wanted = ConeToSee(forecaster, pack, firing, ahead).shiftVariance();
    std::vector<ConeToSee> seen;
    for (const auto cone : cones)
        seen.emplace_back(forecaster, pack, cone, ahead);
    const Duration step = std::max<Duration>(closest, (until - from) / instants);
    std::vector<NextLook> looks;
    for (Instant at = from; at <= until; at += step)
        for (std::size_t i = 0; i < cones.size(); ++i) {
            seen[i].goTo(at);
            const double together = cones[i] == firing ? wanted : std::min(shared, wanted);
            const double part = together * together / (wanted * seen[i].shiftVariance());
            looks.push_back({forecaster.packs()[pack].cones[cones[i]], at, seen[i].meanHour(),
                             std::sqrt(std::max(0.0, 1 - std::min(1.0, part) * seen[i].told()))});
        }
    return looks;
}

} // namespace

std::optional<NextLook> mostTellingLook(const FiringForecast& forecaster, const Forecast& told,
                                        const StepFollower* follower, std::size_t pack,
                                        const std::string& firingCone, const std::vector<Look>& looksAtPack,
                                        Duration leastApart) {
    const auto future = forecaster.future(follower);
    if (!future || pack >= told.packs.size())
        return std::nullopt;
    const auto simple = [&] { return nextLook(told.packs[pack], looksAtPack, told.asOf, leastApart); };
    const auto& cones = told.packs[pack].cones;
    const auto firing = std::ranges::find(cones, firingCone, &ConeForecast::cone);
    if (firing == cones.end() || seenDown(looksAtPack, firingCone) || !firing->down.p05)
        return simple();
    std::vector<std::size_t> open;
    for (std::size_t i = 0; i < cones.size(); ++i)
        if (!seenDown(looksAtPack, cones[i].cone))
            open.push_back(i);
    Instant from = told.asOf;
    if (const auto last = lastLook(looksAtPack))
        from = std::max(from, *last + leastApart);
    const Instant until = std::min(firing->down.p95.value_or(told.asOf + farthest), told.asOf + farthest);
    const auto& ahead = std::ranges::max_element(future->cases, {}, &FutureTemperature::Case::weight)->curve;
    const auto looks =
        looksThatCouldBe(forecaster.forecaster(), pack, static_cast<std::size_t>(firing - cones.begin()),
                         open, ahead, from, until);
    const auto best = std::ranges::min_element(looks, {}, &NextLook::narrowsTo);
    if (best == looks.end() || best->narrowsTo > 1 - tellsLittle)
        return simple();
    const double enough = 1 - nearlyBest * (1 - best->narrowsTo);
    const auto first = std::ranges::find_if(looks, [&](const auto& l) { return l.narrowsTo <= enough; });
    const auto sameTime = std::ranges::find_if(looks, [&](const auto& l) { return l.at > first->at; });
    return *std::min_element(first, sameTime,
                             [](const auto& a, const auto& b) { return a.narrowsTo < b.narrowsTo; });
}

} // namespace ringhold
