// Least squares with models that are not linear, and priors among the data.
#pragma once

#include "core/base/result.h"

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

namespace ringhold {

/// Data minus model at these parameters, each over its own standard deviation. A normal prior is one more
/// residual: (parameter - mean) / sd. As many as parameters at least, and always as many.
using Residuals = std::function<std::vector<double>(std::span<const double> parameters)>;

struct NonlinearFit {
    std::vector<double> parameters;
    std::vector<double> covariance; ///< row by row: the inverse of J'J, J the derivatives of the residuals
    double squares = 0;             ///< of the residuals
    bool converged = false;

    std::size_t size() const { return parameters.size(); }
    double sd(std::size_t i) const;
    /// Sets of parameters drawn from the normal distribution about the fit; the same for the same seed.
    std::vector<std::vector<double>> draws(int count, unsigned seed = 1) const;
};

/// Levenberg (Quart. Appl. Math. 2, 1944, 164) and Marquardt (J. SIAM 11, 1963, 431), derivatives by forward
/// differences of `step` each. Parameters are best scaled so that 1 is a large change. badInput when the
/// start gives residuals that are not finite, or fewer than parameters; failed when the data do not fix the
/// parameters.
Result<NonlinearFit> fitNonlinear(const Residuals& residuals, std::vector<double> start, double step = 1e-4,
                                  int mostIterations = 60);

} // namespace ringhold
