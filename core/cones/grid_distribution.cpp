#include "core/cones/grid_distribution.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace ringhold {

GridDistribution GridDistribution::normal(double first_C, double step_C, std::size_t count, double mean_C,
                                          double sd_C) {
    GridDistribution made = flat(first_C, step_C, count);
    for (std::size_t i = 0; i < count; ++i) {
        const double z = (made.at_C(i) - mean_C) / sd_C;
        made[i] = std::exp(-z * z / 2);
    }
    made.normalise();
    return made;
}

GridDistribution GridDistribution::flat(double first_C, double step_C, std::size_t count) {
    return {first_C, step_C, std::vector<double>(count, 1.0)};
}

double GridDistribution::sum() const {
    return std::accumulate(m_weights.begin(), m_weights.end(), 0.0);
}

double GridDistribution::mean_C() const {
    double moment = 0;
    for (std::size_t i = 0; i < size(); ++i)
        moment += m_weights[i] * at_C(i);
    return moment / sum();
}

double GridDistribution::sd_C() const {
    const double mean = mean_C();
    double moment = 0;
    for (std::size_t i = 0; i < size(); ++i)
        moment += m_weights[i] * (at_C(i) - mean) * (at_C(i) - mean);
    return std::sqrt(moment / sum());
}

double GridDistribution::quantile_C(double share) const {
    const double wanted = share * sum();
    double below = 0;
    for (std::size_t i = 0; i < size(); ++i) {
        if (below + m_weights[i] >= wanted && m_weights[i] > 0)
            return at_C(i) + m_step_C * ((wanted - below) / m_weights[i] - 0.5);
        below += m_weights[i];
    }
    return at_C(size() - 1);
}

void GridDistribution::normalise() {
    const double total = sum();
    if (total > 0)
        for (double& weight : m_weights)
            weight /= total;
}

GridDistribution& GridDistribution::operator*=(const GridDistribution& other) {
    std::ranges::transform(m_weights, other.m_weights, m_weights.begin(), std::multiplies<>());
    return *this;
}

void GridDistribution::add(const GridDistribution& other, double weight) {
    for (std::size_t i = 0; i < size(); ++i)
        m_weights[i] += weight * other[i];
}

GridDistribution GridDistribution::blurred(double sd_C) const {
    if (sd_C <= 0)
        return *this;
    const auto reach = static_cast<std::ptrdiff_t>(std::ceil(4.5 * sd_C / m_step_C));
    std::vector<double> kernel;
    for (std::ptrdiff_t k = -reach; k <= reach; ++k) {
        const double z = static_cast<double>(k) * m_step_C / sd_C;
        kernel.push_back(std::exp(-z * z / 2));
    }
    const double total = std::accumulate(kernel.begin(), kernel.end(), 0.0);
    // Beyond its ends the distribution goes on as it ends, so that a flat one stays flat.
    const auto last = static_cast<std::ptrdiff_t>(size()) - 1;
    std::vector<double> padded;
    padded.reserve(size() + 2 * static_cast<std::size_t>(reach));
    for (std::ptrdiff_t i = -reach; i <= last + reach; ++i)
        padded.push_back(m_weights[static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(i, 0, last))]);
    GridDistribution result = *this;
    for (std::size_t i = 0; i < size(); ++i)
        result[i] = std::inner_product(kernel.begin(), kernel.end(),
                                       padded.begin() + static_cast<std::ptrdiff_t>(i), 0.0) /
                    total;
    return result;
}

} // namespace ringhold
