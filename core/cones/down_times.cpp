#include "core/cones/down_times.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace ringhold {

namespace {

constexpr double never = std::numeric_limits<double>::infinity();

/// Seconds from the curve's start until the law has gained `work` along it, the felt temperature being
/// `shift_C` below the curve's.
double secondsAlong(const HeatWorkLaw& law, const Curve& ahead, double shift_C, double work) {
    double before_s = 0;
    for (std::size_t i = 1; i < ahead.size(); ++i) {
        const double from_K = ahead[i - 1].temperature.kelvin() - shift_C;
        const double to_K = ahead[i].temperature.kelvin() - shift_C;
        const double seconds = inSeconds(ahead[i].at - ahead[i - 1].at);
        const double gained = law.gained(from_K, to_K, seconds);
        if (gained >= work)
            return before_s + law.secondsToGain(work, from_K, to_K, seconds).value_or(seconds);
        work -= gained;
        before_s += seconds;
    }
    return never;
}

/// Seconds from the curve's start until what has been gained and what a drop from there would add come to
/// `work`. Their sum never falls, whatever the curve does (unless it falls faster than the drop).
double secondsToDrop(const HeatWorkLaw& law, const Curve& ahead, double shift_C, double work, Rate drop) {
    const auto fromKelvin = [&](std::size_t i) { return ahead[i].temperature.kelvin() - shift_C; };
    if (workInCooling(law, fromKelvin(0), drop) >= work)
        return 0;
    double before_s = 0;
    for (std::size_t i = 1; i < ahead.size(); ++i) {
        const double seconds = inSeconds(ahead[i].at - ahead[i - 1].at);
        const auto enoughAfter = [&](double t_s) {
            const double at_K = std::lerp(fromKelvin(i - 1), fromKelvin(i), t_s / seconds);
            return law.gained(fromKelvin(i - 1), at_K, t_s) + workInCooling(law, at_K, drop) >= work;
        };
        if (enoughAfter(seconds)) {
            double low_s = 0;
            double high_s = seconds;
            while (high_s - low_s > 1) {
                const double middle_s = (low_s + high_s) / 2;
                (enoughAfter(middle_s) ? high_s : low_s) = middle_s;
            }
            return before_s + high_s;
        }
        work -= law.gained(fromKelvin(i - 1), fromKelvin(i), seconds);
        before_s += seconds;
    }
    return never;
}

} // namespace

double workInCooling(const HeatWorkLaw& law, double from_K, Rate drop) {
    constexpr double allThatCounts_K = 300;
    return law.gained(from_K, from_K - allThatCounts_K, allThatCounts_K / drop.celsiusPerHour() * 3600);
}

DownTimes::DownTimes(const HeatWorkGrid& grid, std::size_t cone, const FutureTemperature& future,
                     std::optional<Rate> drop)
    : m_grid(grid), m_cone(cone), m_future(future), m_drop(drop) {}

double DownTimes::reached_s(std::size_t node, const Curve& ahead, double work) const {
    const HeatWorkLaw& law = m_grid.cones()[m_cone]->law;
    const double shift_C = m_grid.shifts().at_C(node);
    const double missing = work - std::exp(m_grid.lnWork(m_cone)[node]);
    if (m_drop)
        return secondsToDrop(law, ahead, shift_C, missing, *m_drop);
    if (const auto past = m_grid.passed(m_cone, node, std::log(work)))
        return inSeconds(*past - m_grid.last()->at);
    return secondsAlong(law, ahead, shift_C, missing);
}

std::vector<double> DownTimes::reachedAt_s(const Curve& ahead, double work) const {
    std::vector<double> times;
    for (std::size_t node = 0; node < m_grid.shifts().size(); ++node)
        times.push_back(reached_s(node, ahead, work));
    return times;
}

void DownTimes::add(const GridDistribution& shift, double work, double weight) {
    const double coarse = shift.step_C() / m_grid.shifts().step_C();
    for (const auto& future : m_future.cases) {
        const auto times = reachedAt_s(future.curve, work);
        const auto timeAt = [&](double node) {
            const auto left = std::min(static_cast<std::size_t>(std::max(node, 0.0)), times.size() - 2);
            const double share = std::clamp(node - static_cast<double>(left), 0.0, 1.0);
            if (share == 0)
                return times[left];
            return std::isinf(times[left + 1]) ? never : std::lerp(times[left], times[left + 1], share);
        };
        for (std::size_t i = 0; i < shift.size(); ++i) {
            const double belief = shift[i] * weight * future.weight;
            if (belief < 1e-9)
                continue;
            const double node = static_cast<double>(i) * coarse;
            m_spans.push_back({timeAt(node - coarse / 2), timeAt(node + coarse / 2), belief});
        }
    }
}

double DownTimes::shareBy(double t_s) const {
    double total = 0;
    double reached = 0;
    for (const auto& span : m_spans) {
        total += span.weight;
        if (span.to_s <= t_s)
            reached += span.weight;
        else if (span.from_s < t_s && !std::isinf(span.to_s))
            reached += span.weight * (t_s - span.from_s) / (span.to_s - span.from_s);
    }
    return total > 0 ? reached / total : 0.0;
}

std::optional<Instant> DownTimes::quantile(double share) const {
    const double horizon_s = inSeconds(forecastHorizon);
    if (m_spans.empty() || shareBy(horizon_s) < share)
        return std::nullopt;
    double low_s = -30 * 86400.0;
    double high_s = horizon_s;
    while (high_s - low_s > 0.5) {
        const double middle_s = (low_s + high_s) / 2;
        (shareBy(middle_s) < share ? low_s : high_s) = middle_s;
    }
    return m_grid.last()->at + durationFromSeconds(std::round(high_s));
}

TimeInterval DownTimes::interval() const {
    return {quantile(0.05), quantile(0.5), quantile(0.95)};
}

double DownTimes::probabilityBy(Instant at) const {
    return shareBy(inSeconds(at - m_grid.last()->at));
}

} // namespace ringhold
