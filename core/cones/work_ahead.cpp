#include "core/cones/work_ahead.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace ringhold {

namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr double longestPiece_K = 8;
constexpr double deadRate_per_s = 1e-11; // a day at this rate adds 1e-6
constexpr double noBelief = 1e-6;

/// A stretch in which the rate grows by the same factor each second.
struct Piece {
    double rate_per_s;   ///< at its begin
    double growth_per_s; ///< of ln rate
    double seconds;

    double gained() const { return gainedBy(seconds); }
    double gainedBy(double t_s) const {
        const double grown = growth_per_s * t_s;
        return std::abs(grown) < 1e-9 ? rate_per_s * t_s : rate_per_s * std::expm1(grown) / growth_per_s;
    }
    /// `work` at most gained().
    double secondsTo(double work) const {
        const double straight_s = work / rate_per_s;
        const double grown = growth_per_s * straight_s;
        return std::abs(grown) < 1e-9 ? straight_s : std::log1p(grown) / growth_per_s;
    }
};

/// Walks along the pieces of a curve, and notes when what is missing has been gained.
class Walk {
  public:
    Walk(const HeatWorkLaw& law, std::span<const double> missing, std::span<double> seconds)
        : m_law(law), m_deadBelow_K(deadBelow(law)), m_missing(missing), m_seconds(seconds) {}

    bool done() const { return m_reached == m_missing.size(); }

    void line(double from_K, double to_K, double seconds) {
        if (from_K == to_K || std::max(from_K, to_K) <= m_deadBelow_K) {
            piece({m_law.rate_per_s(from_K), 0, seconds});
            return;
        }
        // what is dead of it goes by at once
        const double slope_K_per_s = (to_K - from_K) / seconds;
        const double begin_K = std::max(from_K, m_deadBelow_K);
        const double end_K = std::max(to_K, m_deadBelow_K);
        m_passed_s += (begin_K - from_K) / slope_K_per_s;
        const double pieces = std::ceil(std::abs(end_K - begin_K) / longestPiece_K);
        const double step_K = (end_K - begin_K) / pieces;
        const double step_s = step_K / slope_K_per_s;
        double rate = m_law.rate_per_s(begin_K);
        for (int i = 1; i <= static_cast<int>(pieces) && !done(); ++i) {
            const double next = m_law.rate_per_s(begin_K + i * step_K);
            piece({rate, std::log(next / rate) / step_s, step_s});
            rate = next;
        }
        m_passed_s += (end_K - to_K) / -slope_K_per_s;
    }

  private:
    static double deadBelow(const HeatWorkLaw& law) {
        return law.activation_J_per_mol() / gasConstant_J_per_mol_K /
               (law.lnA_per_s() - std::log(deadRate_per_s));
    }

    void piece(const Piece& piece) {
        const double gained = piece.gained();
        for (; !done() && m_missing[m_reached] <= m_gained + gained; ++m_reached)
            m_seconds[m_reached] = m_passed_s + piece.secondsTo(m_missing[m_reached] - m_gained);
        m_gained += gained;
        m_passed_s += piece.seconds;
    }

    const HeatWorkLaw& m_law;
    double m_deadBelow_K;
    std::span<const double> m_missing;
    std::span<double> m_seconds;
    std::size_t m_reached = 0;
    double m_gained = 0;
    double m_passed_s = 0;
};

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

void secondsAlong(const HeatWorkLaw& law, const Curve& ahead, double shift_C, std::span<const double> missing,
                  std::span<double> seconds) {
    std::ranges::fill(seconds, never);
    Walk walk(law, missing, seconds);
    for (std::size_t i = 1; i < ahead.size() && !walk.done(); ++i) {
        const double length_s = inSeconds(ahead[i].at - ahead[i - 1].at);
        if (length_s > 0)
            walk.line(ahead[i - 1].temperature.kelvin() - shift_C, ahead[i].temperature.kelvin() - shift_C,
                      length_s);
    }
}

WorkAhead::WorkAhead(const HeatWorkGrid& grid, const FutureTemperature& future, std::size_t works,
                     const GridDistribution& belief)
    : m_grid(&grid), m_future(&future), m_works(works) {
    const auto& weights = belief.weights();
    const auto counts = [](double weight) { return weight > noBelief; };
    const auto first = std::ranges::find_if(weights, counts) - weights.begin();
    const auto last = weights.rend() - std::find_if(weights.rbegin(), weights.rend(), counts);
    const double fine = belief.step_C() / grid.shifts().step_C();
    const auto nodes = static_cast<double>(grid.shifts().size());
    const double from = std::clamp(std::floor(static_cast<double>(first) * fine - 1), 0.0, nodes - 2);
    const double to = std::clamp(std::ceil(static_cast<double>(last) * fine + 1), from + 1, nodes - 1);
    m_firstNode = static_cast<std::size_t>(from);
    m_nodes = static_cast<std::size_t>(to) - m_firstNode + 1;
    m_times_s.resize(future.cases.size() * m_nodes * works);
}

WorkAhead::WorkAhead(const HeatWorkGrid& grid, std::size_t cone, const FutureTemperature& future,
                     std::vector<double> works, const GridDistribution& belief)
    : WorkAhead(grid, future, works.size(), belief) {
    const HeatWorkLaw& law = grid.cones()[cone]->law;
    std::vector<double> missing;
    std::vector<double> seconds(works.size());
    for (std::size_t i = 0; i < m_nodes; ++i) {
        const std::size_t node = m_firstNode + i;
        const double already = std::exp(grid.lnWork(cone)[node]);
        const auto past = static_cast<std::size_t>(std::ranges::upper_bound(works, already) - works.begin());
        for (std::size_t w = 0; w < past; ++w) {
            const Instant at = grid.passed(cone, node, std::log(works[w])).value_or(grid.last()->at);
            seconds[w] = inSeconds(at - grid.last()->at);
        }
        missing.clear();
        for (std::size_t w = past; w < works.size(); ++w)
            missing.push_back(works[w] - already);
        for (std::size_t c = 0; c < future.cases.size(); ++c) {
            secondsAlong(law, future.cases[c].curve, grid.shifts().at_C(node), missing,
                         std::span(seconds).subspan(past));
            for (std::size_t w = 0; w < works.size(); ++w)
                time(c, w, i) = seconds[w];
        }
    }
}

WorkAhead WorkAhead::dropping(const HeatWorkGrid& grid, std::size_t cone, const FutureTemperature& future,
                              double work, const GridDistribution& belief, Rate drop) {
    WorkAhead ahead(grid, future, 1, belief);
    const HeatWorkLaw& law = grid.cones()[cone]->law;
    for (std::size_t i = 0; i < ahead.m_nodes; ++i) {
        const std::size_t node = ahead.m_firstNode + i;
        const double missing = work - std::exp(grid.lnWork(cone)[node]);
        for (std::size_t c = 0; c < future.cases.size(); ++c)
            ahead.time(c, 0, i) =
                secondsToDrop(law, future.cases[c].curve, grid.shifts().at_C(node), missing, drop);
    }
    return ahead;
}

double WorkAhead::reachedUpTo(std::size_t futureCase, std::size_t work, double second) const {
    const std::span times(m_times_s.data() + (futureCase * m_works + work) * m_nodes, m_nodes);
    const auto later = static_cast<std::size_t>(std::ranges::upper_bound(times, second) - times.begin());
    if (later == 0)
        return -never;
    if (later == m_nodes)
        return never;
    const double before = times[later - 1];
    const double share = std::isinf(times[later]) ? 0.0 : (second - before) / (times[later] - before);
    return static_cast<double>(m_firstNode + later - 1) + share;
}

} // namespace ringhold
