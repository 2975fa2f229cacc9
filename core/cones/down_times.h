// The distribution of the instant at which a cone reaches a given heat work.
#pragma once

#include "core/cones/work_ahead.h"

namespace ringhold {

/// For one cone: by what share of belief it has reached a heat work, as time goes on.
class DownTimes {
  public:
    /// Outlived by `ahead` and what that was made of.
    explicit DownTimes(const WorkAhead& ahead) : m_ahead(ahead) {}

    /// Adds the belief of one exponent node, all on the same grid, with the heat work (by its place in
    /// `ahead`) that belongs to it. The weights of all sum to 1.
    void add(const GridDistribution& shift, std::size_t work, double weight);

    /// The instants by which 5, 50 and 95 % of the belief has it reached.
    TimeInterval interval() const;
    /// The share that has it reached by then.
    double probabilityBy(Instant at) const;

  private:
    double shareBy(double t_s) const;
    /// In seconds from the last reading, `from_s` being before it.
    std::optional<double> quantile_s(double share, double from_s) const;

    /// A belief about the shift that goes with one heat work.
    struct Part {
        std::size_t work;
        double weight;
        std::vector<double> below; ///< cell by cell of the belief's grid: the share up to its begin; and 1
    };
    double shareBelow(const Part& part, double node) const;

    const WorkAhead& m_ahead;
    std::vector<Part> m_parts;
    double m_cellsANode = 1;
};

} // namespace ringhold
