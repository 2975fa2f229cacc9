// The distribution of the instant at which a cone reaches a given heat work.
#pragma once

#include "core/cones/forecast.h"

namespace ringhold {

/// For one cone: by what share of belief it has reached W = `work` (above 0), as time goes on. Past instants
/// come from the grid, future ones from the future's cases; `shift` is the belief about the cone's shift, on
/// a grid that the nodes' span covers.
///
/// With a `drop` the instants are those from which a drop at that rate (above 0) brings the cone there while
/// the kiln cools; none is before the last reading then.
class DownTimes {
  public:
    DownTimes(const HeatWorkGrid& grid, std::size_t cone, const FutureTemperature& future,
              std::optional<Rate> drop = std::nullopt);

    /// Adds the belief of one exponent node with the target that belongs to it.
    void add(const GridDistribution& shift, double work, double weight);

    /// The instants by which 5, 50 and 95 % of the belief has it reached.
    TimeInterval interval() const;
    /// The share that has it reached by then.
    double probabilityBy(Instant at) const;

  private:
    double reached_s(std::size_t node, const Curve& ahead, double work) const;
    /// When each node reaches the target, in seconds from the last reading; infinite if never.
    std::vector<double> reachedAt_s(const Curve& ahead, double work) const;
    double shareBy(double t_s) const;
    std::optional<Instant> quantile(double share) const;

    struct Span {
        double from_s;
        double to_s;
        double weight;
    };
    const HeatWorkGrid& m_grid;
    std::size_t m_cone;
    const FutureTemperature& m_future;
    std::optional<Rate> m_drop;
    std::vector<Span> m_spans; ///< belief, spread evenly over each span; infinite ends are kept as such
};

/// W that a cone still gains while it cools from a temperature (that it feels) at that rate (above 0).
double workInCooling(const HeatWorkLaw& law, double from_K, Rate drop);

} // namespace ringhold
