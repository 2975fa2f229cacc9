// A probability distribution of a temperature difference on an even grid.
#pragma once

#include <cstddef>
#include <vector>

namespace ringhold {

/// Weights at first_C, first_C + step_C, ...; they need not sum to 1 until normalised.
class GridDistribution {
  public:
    GridDistribution(double first_C, double step_C, std::vector<double> weights)
        : m_first_C(first_C), m_step_C(step_C), m_weights(std::move(weights)) {}

    /// A normal distribution's density at each of `count` points; sd above 0.
    static GridDistribution normal(double first_C, double step_C, std::size_t count, double mean_C,
                                   double sd_C);
    /// 1 everywhere.
    static GridDistribution flat(double first_C, double step_C, std::size_t count);

    std::size_t size() const { return m_weights.size(); }
    double at_C(std::size_t i) const { return m_first_C + m_step_C * static_cast<double>(i); }
    double step_C() const { return m_step_C; }
    const std::vector<double>& weights() const { return m_weights; }
    double& operator[](std::size_t i) { return m_weights[i]; }
    double operator[](std::size_t i) const { return m_weights[i]; }

    double sum() const;
    double mean_C() const;
    double sd_C() const;
    /// The value below which that share (0 to 1) of the weight lies; each point's weight is spread over its
    /// own cell.
    double quantile_C(double share) const;

    void normalise();
    /// Point by point; both on the same grid.
    GridDistribution& operator*=(const GridDistribution& other);
    /// Adds `weight` times the other; both on the same grid.
    void add(const GridDistribution& other, double weight);
    /// Of the sum with an independent normal of mean 0. sd 0 changes nothing.
    GridDistribution blurred(double sd_C) const;

  private:
    double m_first_C;
    double m_step_C;
    std::vector<double> m_weights;
};

} // namespace ringhold
