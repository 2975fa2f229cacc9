// When a cone reaches given heat works along what is to come.
#pragma once

#include "core/cones/forecast.h"

#include <span>
#include <vector>

namespace ringhold {

/// W that a cone still gains while it cools from a temperature (that it feels) at that rate (above 0).
double workInCooling(const HeatWorkLaw& law, double from_K, Rate drop);

/// Seconds from the curve's start until W has grown by each of `missing` (ascending, above 0) along it, the
/// felt temperature being `shift_C` below the curve's; infinite for what is never reached. One pass for all.
/// Lines are taken in pieces of at most 8 °C, in which ln of the rate is taken as straight: 0.01 °C off.
void secondsAlong(const HeatWorkLaw& law, const Curve& ahead, double shift_C, std::span<const double> missing,
                  std::span<double> seconds);

/// For one cone: when it reaches each of a few heat works, for each shift of the grid that is believed in at
/// all and each case of the future. Past instants come from the grid.
class WorkAhead {
  public:
    /// `works` ascending, above 0. `belief` is of the cone's shift, on a grid that the nodes' span covers.
    WorkAhead(const HeatWorkGrid& grid, std::size_t cone, const FutureTemperature& future,
              std::vector<double> works, const GridDistribution& belief);
    /// The instants from which a drop at that rate (above 0) brings the cone there while the kiln cools; none
    /// is before the last reading.
    static WorkAhead dropping(const HeatWorkGrid& grid, std::size_t cone, const FutureTemperature& future,
                              double work, const GridDistribution& belief, Rate drop);

    const HeatWorkGrid& grid() const { return *m_grid; }
    const FutureTemperature& future() const { return *m_future; }
    /// How far on the grid of shifts (in its steps from its first, between nodes by straight line) the work
    /// is reached by that second after the last reading. Infinite where it is for all that is believed in,
    /// minus infinite where for none.
    double reachedUpTo(std::size_t futureCase, std::size_t work, double second) const;
    /// When the first of the believed shifts reaches it, in seconds from the last reading; infinite if never.
    double earliest_s(std::size_t futureCase, std::size_t work) const {
        return m_times_s[(futureCase * m_works + work) * m_nodes];
    }

  private:
    WorkAhead(const HeatWorkGrid& grid, const FutureTemperature& future, std::size_t works,
              const GridDistribution& belief);
    /// `node` counted from the first that is believed in.
    double& time(std::size_t futureCase, std::size_t work, std::size_t node) {
        return m_times_s[(futureCase * m_works + work) * m_nodes + node];
    }

    const HeatWorkGrid* m_grid;
    const FutureTemperature* m_future;
    std::size_t m_works;
    std::size_t m_firstNode = 0; ///< of those that are believed in
    std::size_t m_nodes = 0;     ///< two or more
    std::vector<double> m_times_s;
};

} // namespace ringhold
