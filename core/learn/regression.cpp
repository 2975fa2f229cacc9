#include "core/learn/regression.h"

#include "core/learn/distributions.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double collinear = 1e-12; ///< pivots below this share of the largest count as none

struct Problem {
    Eigen::MatrixXd x;
    Eigen::VectorXd y;
    Eigen::VectorXd roots; ///< of the weights
};

Error badData(const char* what) {
    return {ErrorKind::badInput, what};
}

Result<Problem> problemOf(std::span<const RegressionRow> rows, std::span<const double> y,
                          std::span<const double> weights) {
    if (rows.empty() || rows.size() != y.size() || (!weights.empty() && weights.size() != y.size()))
        return badData("a regression wants as many values as rows");
    const auto columns = rows.front().size();
    if (columns == 0 || rows.size() <= columns)
        return badData("a regression wants more observations than coefficients");
    Problem problem{Eigen::MatrixXd(rows.size(), columns), Eigen::VectorXd(rows.size()),
                    Eigen::VectorXd(rows.size())};
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i].size() != columns)
            return badData("a regression wants rows of one length");
        const auto at = static_cast<Eigen::Index>(i);
        problem.x.row(at) = Eigen::Map<const Eigen::RowVectorXd>(rows[i].data(), problem.x.cols());
        problem.y(at) = y[i];
        problem.roots(at) = weights.empty() ? 1.0 : std::sqrt(weights[i]);
    }
    if (!problem.x.allFinite() || !problem.y.allFinite() || !problem.roots.allFinite() ||
        problem.roots.minCoeff() <= 0)
        return badData("a regression wants finite values and weights above 0");
    return problem;
}

double squaresAboutMean(const Problem& problem) {
    const Eigen::ArrayXd weights = problem.roots.array().square();
    const double mean = (weights * problem.y.array()).sum() / weights.sum();
    return (weights * (problem.y.array() - mean).square()).sum();
}

} // namespace

Estimate LinearFit::coefficient(std::size_t i) const {
    return {m_coefficients[i], std::sqrt(covariance(i, i))};
}

double LinearFit::residualSquares() const {
    return m_residualSd * m_residualSd * m_freedom;
}

Estimate LinearFit::at(const RegressionRow& row) const {
    Estimate estimate;
    double variance = 0;
    for (std::size_t i = 0; i < size(); ++i) {
        estimate.value += m_coefficients[i] * row[i];
        for (std::size_t j = 0; j < size(); ++j)
            variance += row[i] * covariance(i, j) * row[j];
    }
    estimate.sd = std::sqrt(std::max(variance, 0.0));
    return estimate;
}

Estimate LinearFit::nextAt(const RegressionRow& row) const {
    const Estimate curve = at(row);
    return {curve.value, std::hypot(curve.sd, m_residualSd)};
}

double LinearFit::halfWidthFactor(double coverage) const {
    return studentQuantile(0.5 + 0.5 * coverage, m_freedom);
}

Result<LinearFit> fitLinear(std::span<const RegressionRow> rows, std::span<const double> y,
                            std::span<const double> weights) {
    const auto made = problemOf(rows, y, weights);
    if (!made)
        return made.error();
    const Problem& problem = made.value();
    Eigen::MatrixXd scaled = problem.roots.asDiagonal() * problem.x;
    const Eigen::VectorXd lengths = scaled.colwise().norm().transpose();
    if (lengths.minCoeff() <= 0)
        return badData("a column of the regression is all zero");
    scaled = scaled * lengths.cwiseInverse().asDiagonal();

    Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr(scaled);
    qr.setThreshold(collinear);
    const auto columns = scaled.cols();
    if (qr.rank() < columns)
        return badData("a column of the regression is a combination of others");
    const Eigen::VectorXd target = problem.roots.cwiseProduct(problem.y);
    const Eigen::VectorXd solved = qr.solve(target);
    const Eigen::VectorXd left = target - scaled * solved;

    // (X'X)^-1 = P R^-1 R^-T P'
    const Eigen::MatrixXd inverseR = qr.matrixR().topRows(columns).triangularView<Eigen::Upper>().solve(
        Eigen::MatrixXd::Identity(columns, columns));
    const Eigen::MatrixXd half =
        lengths.cwiseInverse().asDiagonal() * (qr.colsPermutation() * inverseR).eval();

    LinearFit fit;
    fit.m_observations = static_cast<int>(rows.size());
    fit.m_freedom = static_cast<int>(scaled.rows() - columns);
    fit.m_residualSd = std::sqrt(left.squaredNorm() / fit.m_freedom);
    const double about = squaresAboutMean(problem);
    fit.m_rSquared = about > 0 ? 1 - left.squaredNorm() / about : 0;
    const Eigen::VectorXd coefficients = solved.cwiseQuotient(lengths);
    fit.m_coefficients.assign(coefficients.begin(), coefficients.end());
    const Eigen::MatrixXd covariance = half * half.transpose() * (fit.m_residualSd * fit.m_residualSd);
    fit.m_covariance.assign(covariance.data(), covariance.data() + covariance.size()); // symmetric
    const Eigen::VectorXd plain = left.cwiseQuotient(problem.roots);
    fit.m_residuals.assign(plain.begin(), plain.end());
    return fit;
}

Result<LinearFit> fitPolynomial(std::span<const double> x, std::span<const double> y, int degree,
                                std::span<const double> weights) {
    std::vector<RegressionRow> rows;
    for (const double value : x)
        rows.push_back(powers(value, degree));
    return fitLinear(rows, y, weights);
}

RegressionRow powers(double x, int degree) {
    RegressionRow row{1.0};
    for (int i = 0; i < degree; ++i)
        row.push_back(row.back() * x);
    return row;
}

} // namespace ringhold
