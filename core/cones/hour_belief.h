// The distribution of the hour to which a cone's tip points.
#pragma once

#include "core/cones/interval.h"
#include "core/cones/offset_posterior.h"

#include <span>
#include <utility>
#include <vector>

namespace ringhold {

/// Gathered from what is believed of the cone's shift and of the bending exponent, and how much heat work
/// each shift means.
class HourBelief {
  public:
    /// `cone` by its index in the pack; `lnWork` node by node of `shifts`, for the case of that weight.
    void add(const OffsetPosterior& posterior, std::size_t pack, std::size_t cone, const ShiftGrid& shifts,
             std::span<const double> lnWork, double weight = 1);

    /// 0 to 6; add() must have been called.
    Interval<double> interval() const;
    /// The share that has the cone down.
    double probabilityDown() const { return m_down / m_total; }

  private:
    std::vector<std::pair<double, double>> m_hours; ///< with their weights
    double m_down = 0;
    double m_total = 0;
};

} // namespace ringhold
