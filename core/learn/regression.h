// Least squares: how a value depends on others, and how sure that is.
#pragma once

#include "core/base/result.h"

#include <cstddef>
#include <span>
#include <vector>

namespace ringhold {

/// A value with its standard deviation.
struct Estimate {
    double value = 0;
    double sd = 0;
};

/// The values of one observation, in the order of the coefficients; a constant is a column of ones.
using RegressionRow = std::vector<double>;

/// y = sum of coefficient times column, fitted by least squares.
class LinearFit {
  public:
    std::size_t size() const { return m_coefficients.size(); }
    const std::vector<double>& coefficients() const { return m_coefficients; }
    Estimate coefficient(std::size_t i) const;
    double covariance(std::size_t i, std::size_t j) const { return m_covariance[i * size() + j]; }

    int observations() const { return m_observations; }
    int freedom() const { return m_freedom; } ///< observations less coefficients, above 0
    double residualSd() const { return m_residualSd; }
    double residualSquares() const; ///< sum of squares
    /// 1 less the share of the squares about the (weighted) mean that is left. Meant for fits with a
    /// constant.
    double rSquared() const { return m_rSquared; }
    const std::vector<double>& residuals() const { return m_residuals; }

    /// The fitted curve there, with the standard deviation of the curve itself.
    Estimate at(const RegressionRow& row) const;
    /// What one more observation of weight 1 would be: its own scatter is in the standard deviation.
    Estimate nextAt(const RegressionRow& row) const;
    /// Student's factor by which a standard deviation becomes half the width of an interval, 0.9 for 90 %.
    double halfWidthFactor(double coverage = 0.9) const;

  private:
    friend Result<LinearFit> fitLinear(std::span<const RegressionRow>, std::span<const double>,
                                       std::span<const double>);
    std::vector<double> m_coefficients;
    std::vector<double> m_covariance; ///< row by row
    std::vector<double> m_residuals;
    int m_observations = 0;
    int m_freedom = 0;
    double m_residualSd = 0;
    double m_rSquared = 0;
};

/// By a column-pivoted Householder QR of the columns scaled to unit length, so that nearly collinear columns
/// keep their digits. `weights` are one over relative variances, above 0, or empty. badInput when lengths
/// differ, values are not finite, there are no more observations than coefficients, or a column is a
/// combination of others.
Result<LinearFit> fitLinear(std::span<const RegressionRow> rows, std::span<const double> y,
                            std::span<const double> weights = {});

/// A polynomial in one variable; coefficients rise with the power.
Result<LinearFit> fitPolynomial(std::span<const double> x, std::span<const double> y, int degree,
                                std::span<const double> weights = {});

/// 1, x, x² ...
RegressionRow powers(double x, int degree);

} // namespace ringhold
