#include "core/cones/heat_work_grid.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace ringhold {

namespace {

constexpr Duration checkpointSpacing = std::chrono::seconds(30);
constexpr double deadRate_per_s = 1e-11; // a week at this rate adds 6e-6
constexpr double gapRateChange_C_per_h = 20;

double logOf(double work) {
    return work > 0 ? std::max(std::log(work), HeatWorkGrid::lnNone) : HeatWorkGrid::lnNone;
}

Instant between(Instant from, Instant to, double share) {
    return from + durationFromSeconds(share * inSeconds(to - from));
}

} // namespace

ShiftGrid::ShiftGrid(double low_C, double high_C, double step_C)
    : m_step_C(step_C), m_first(std::min(0.0, std::floor(low_C / step_C))),
      m_count(static_cast<std::size_t>(std::max(0.0, std::ceil(high_C / step_C)) - m_first) + 1) {}

double ShiftGrid::interpolated(std::span<const double> values, double shift_C) const {
    const double node = std::clamp(shift_C / m_step_C - m_first, 0.0, static_cast<double>(m_count - 1));
    const auto left = std::min(static_cast<std::size_t>(node), m_count - 2);
    return std::lerp(values[left], values[left + 1], node - static_cast<double>(left));
}

HeatWorkGrid::HeatWorkGrid(std::vector<const Cone*> cones, const ShiftGrid& shifts)
    : m_cones(std::move(cones)), m_shifts(shifts), m_work(m_cones.size() * shifts.size()),
      m_gapSquares(m_cones.size()), m_lnWork(m_work.size(), lnNone) {
    for (const Cone* cone : m_cones) {
        const double theta_K = cone->law.activation_J_per_mol() / gasConstant_J_per_mol_K;
        m_deadBelow_K.push_back(theta_K / (cone->law.lnA_per_s() - std::log(deadRate_per_s)));
    }
    for (std::size_t node = 0; node < shifts.size(); ++node)
        m_shift_C.push_back(shifts.at_C(node));
}

void HeatWorkGrid::add(const CurvePoint& point) {
    if (m_last && point.at <= m_last->at)
        return;
    if (m_last)
        integrateTo(point);
    m_last = point;
    if (m_checkpoints.empty() || point.at - m_checkpoints.back().point.at >= checkpointSpacing)
        checkpoint();
}

void HeatWorkGrid::integrateTo(const CurvePoint& point) {
    const double from_K = m_last->temperature.kelvin();
    const double to_K = point.temperature.kelvin();
    const double seconds = inSeconds(point.at - m_last->at);
    const double gapSd_C = gapRateChange_C_per_h * (seconds / 3600) / 12;
    const double hottest_K = std::max(from_K, to_K) - m_shift_C.front();
    for (std::size_t cone = 0; cone < m_cones.size(); ++cone) {
        if (hottest_K < m_deadBelow_K[cone])
            continue;
        const HeatWorkLaw& law = m_cones[cone]->law;
        double* const work = m_work.data() + index(cone, 0);
        for (std::size_t node = 0; node < m_shift_C.size(); ++node)
            work[node] += law.gained(from_K - m_shift_C[node], to_K - m_shift_C[node], seconds);
        const double gapped = law.gained(from_K, to_K, seconds) * gapSd_C;
        m_gapSquares[cone] += gapped * gapped;
        m_lnWorkFresh = false;
    }
}

void HeatWorkGrid::refreshLogs() const {
    if (!std::exchange(m_lnWorkFresh, true))
        std::ranges::transform(m_work, m_lnWork.begin(), logOf);
}

std::span<const double> HeatWorkGrid::lnWork(std::size_t cone) const {
    refreshLogs();
    return std::span(m_lnWork).subspan(index(cone, 0), m_shifts.size());
}

void HeatWorkGrid::checkpoint() {
    refreshLogs();
    m_checkpoints.push_back({*m_last, m_work, m_lnWork, m_gapSquares});
}

std::optional<Instant> HeatWorkGrid::rewind(Instant at) {
    while (!m_checkpoints.empty() && m_checkpoints.back().point.at > at)
        m_checkpoints.pop_back();
    m_lnWorkFresh = false;
    if (m_checkpoints.empty()) {
        std::ranges::fill(m_work, 0.0);
        std::ranges::fill(m_gapSquares, 0.0);
        m_last.reset();
        return std::nullopt;
    }
    m_work = m_checkpoints.back().work;
    m_gapSquares = m_checkpoints.back().gapSquares;
    m_last = m_checkpoints.back().point;
    return m_last->at;
}

std::vector<double> HeatWorkGrid::lnWorkAt(std::size_t cone, Instant at) const {
    const auto now = lnWork(cone);
    const auto next =
        std::ranges::upper_bound(m_checkpoints, at, {}, [](const Checkpoint& c) { return c.point.at; });
    if (next == m_checkpoints.begin())
        return std::vector<double>(m_shifts.size(), lnNone);
    const Checkpoint& before = *std::prev(next);
    const auto early = std::span(before.lnWork).subspan(index(cone, 0), m_shifts.size());
    const auto late =
        next == m_checkpoints.end() ? now : std::span(next->lnWork).subspan(index(cone, 0), m_shifts.size());
    const Instant end = next == m_checkpoints.end() ? m_last->at : next->point.at;
    if (end <= before.point.at)
        return {early.begin(), early.end()};
    const double share = std::min(1.0, inSeconds(at - before.point.at) / inSeconds(end - before.point.at));
    std::vector<double> values(m_shifts.size());
    for (std::size_t node = 0; node < values.size(); ++node)
        values[node] = std::lerp(early[node], late[node], share);
    return values;
}

std::optional<Instant> HeatWorkGrid::passed(std::size_t cone, std::size_t node, double lnTarget) const {
    const double now = lnWork(cone)[node];
    if (now < lnTarget)
        return std::nullopt;
    const std::size_t at = index(cone, node);
    const auto next = std::ranges::lower_bound(m_checkpoints, lnTarget, {},
                                               [&](const Checkpoint& c) { return c.lnWork[at]; });
    if (next == m_checkpoints.begin())
        return next->point.at;
    const Checkpoint& before = *std::prev(next);
    const double early = before.lnWork[at];
    const double late = next == m_checkpoints.end() ? now : next->lnWork[at];
    const Instant end = next == m_checkpoints.end() ? m_last->at : next->point.at;
    return between(before.point.at, end, late > early ? (lnTarget - early) / (late - early) : 1.0);
}

double HeatWorkGrid::gapVariance_C2(std::size_t cone) const {
    const double work = m_work[index(cone, m_shifts.zeroNode())];
    return work > 0 ? m_gapSquares[cone] / (work * work) : 0.0;
}

} // namespace ringhold
