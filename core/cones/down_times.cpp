#include "core/cones/down_times.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double enough_s = 4; ///< from there on a share is taken to grow evenly
constexpr double exact = 1e-4; ///< of a share

} // namespace

void DownTimes::add(const GridDistribution& shift, std::size_t work, double weight) {
    m_cellsANode = m_ahead.grid().shifts().step_C() / shift.step_C();
    Part part{work, weight, {0.0}};
    const double total = shift.sum();
    for (const double belief : shift.weights())
        part.below.push_back(part.below.back() + belief / total);
    m_parts.push_back(std::move(part));
}

/// Each point's weight is spread over its own cell.
double DownTimes::shareBelow(const Part& part, double node) const {
    const double cell =
        std::clamp(node * m_cellsANode + 0.5, 0.0, static_cast<double>(part.below.size() - 1));
    const auto left = std::min(static_cast<std::size_t>(cell), part.below.size() - 2);
    return std::lerp(part.below[left], part.below[left + 1], cell - static_cast<double>(left));
}

double DownTimes::shareBy(double t_s) const {
    const auto& cases = m_ahead.future().cases;
    double reached = 0;
    for (const auto& part : m_parts)
        for (std::size_t c = 0; c < cases.size(); ++c)
            reached +=
                part.weight * cases[c].weight * shareBelow(part, m_ahead.reachedUpTo(c, part.work, t_s));
    return reached;
}

std::optional<double> DownTimes::quantile_s(double share, double from_s) const {
    double high_s = inSeconds(forecastHorizon);
    double atHigh = shareBy(high_s) - share;
    if (m_parts.empty() || atHigh < 0)
        return std::nullopt;
    double low_s = from_s;
    double atLow = -share;
    // false position, with a bisection every third time where that is slow
    for (int round = 0; high_s - low_s > enough_s && atHigh > exact && atLow < -exact; ++round) {
        const double part = round % 3 == 2 ? 0.5 : std::clamp(atLow / (atLow - atHigh), 0.02, 0.98);
        const double middle_s = std::lerp(low_s, high_s, part);
        const double at = shareBy(middle_s) - share;
        (at < 0 ? low_s : high_s) = middle_s;
        (at < 0 ? atLow : atHigh) = at;
    }
    return std::lerp(low_s, high_s, atHigh > atLow ? atLow / (atLow - atHigh) : 1.0);
}

TimeInterval DownTimes::interval() const {
    double from_s = 0;
    for (const auto& part : m_parts)
        for (std::size_t c = 0; c < m_ahead.future().cases.size(); ++c)
            from_s = std::min(from_s, m_ahead.earliest_s(c, part.work) - 1);
    const auto next = [&](double share) -> std::optional<Instant> {
        const auto second = quantile_s(share, from_s);
        if (!second)
            return std::nullopt;
        from_s = *second - 1;
        return m_ahead.grid().last()->at + durationFromSeconds(std::round(*second));
    };
    const auto p05 = next(0.05);
    const auto median = next(0.5);
    return {p05, median, next(0.95)};
}

double DownTimes::probabilityBy(Instant at) const {
    return shareBy(inSeconds(at - m_ahead.grid().last()->at));
}

} // namespace ringhold
