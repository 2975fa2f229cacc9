#include "core/learn/nonlinear_fit.h"

#include "core/kiln/chance.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double smallGain = 1e-8; ///< of the squares, as a share: then it has converged
constexpr double mostDamping = 1e12;

using Vector = Eigen::VectorXd;
using Matrix = Eigen::MatrixXd;

std::vector<double> asStd(const Vector& vector) {
    return {vector.data(), vector.data() + vector.size()};
}

Vector evaluated(const Residuals& residuals, const Vector& parameters) {
    const auto values = residuals(asStd(parameters));
    return Eigen::Map<const Vector>(values.data(), static_cast<Eigen::Index>(values.size()));
}

Matrix derivatives(const Residuals& residuals, const Vector& parameters, const Vector& here, double step) {
    Matrix jacobian(here.size(), parameters.size());
    for (Eigen::Index i = 0; i < parameters.size(); ++i) {
        Vector moved = parameters;
        moved(i) += step;
        jacobian.col(i) = (evaluated(residuals, moved) - here) / step;
    }
    return jacobian;
}

/// A search that goes down; damping grows until a step does.
struct Search {
    const Residuals& residuals;
    Vector parameters;
    Vector here;
    double damping = 1e-3;

    /// False when no step leads further down.
    bool goDown(const Matrix& jacobian) {
        const Matrix normal = jacobian.transpose() * jacobian;
        const Vector gradient = jacobian.transpose() * here;
        for (; damping < mostDamping; damping *= 4) {
            Matrix damped = normal;
            damped.diagonal() += damping * (normal.diagonal().array() + 1e-12).matrix();
            const Vector next = parameters - damped.ldlt().solve(gradient);
            const Vector there = next.allFinite() ? evaluated(residuals, next) : here;
            if (there.allFinite() && there.squaredNorm() < here.squaredNorm()) {
                parameters = next;
                here = there;
                damping = std::max(damping / 8, 1e-12);
                return true;
            }
        }
        return false;
    }
};

} // namespace

double NonlinearFit::sd(std::size_t i) const {
    return std::sqrt(covariance[i * size() + i]);
}

std::vector<std::vector<double>> NonlinearFit::draws(int count, unsigned seed) const {
    const auto n = static_cast<Eigen::Index>(size());
    const Matrix matrix = Eigen::Map<const Matrix>(covariance.data(), n, n);
    const Eigen::SelfAdjointEigenSolver<Matrix> solver(matrix);
    const Matrix root = solver.eigenvectors() * solver.eigenvalues().cwiseMax(0).cwiseSqrt().asDiagonal();
    const Vector mean = Eigen::Map<const Vector>(parameters.data(), n);
    Chance chance(seed);
    std::vector<std::vector<double>> draws;
    for (int i = 0; i < count; ++i) {
        Vector normal(n);
        for (double& value : normal)
            value = chance.normal();
        draws.push_back(asStd(mean + root * normal));
    }
    return draws;
}

Result<NonlinearFit> fitNonlinear(const Residuals& residuals, std::vector<double> start, double step,
                                  int mostIterations) {
    Search search{
        residuals, Eigen::Map<const Vector>(start.data(), static_cast<Eigen::Index>(start.size())), {}};
    search.here = evaluated(residuals, search.parameters);
    if (!search.here.allFinite() || search.here.size() < search.parameters.size() || start.empty())
        return Error{ErrorKind::badInput, "nothing to fit there"};
    NonlinearFit fit;
    Matrix jacobian = derivatives(residuals, search.parameters, search.here, step);
    for (int i = 0; i < mostIterations && !fit.converged; ++i) {
        const double before = search.here.squaredNorm();
        fit.converged =
            !search.goDown(jacobian) || before - search.here.squaredNorm() <= smallGain * (1e-12 + before);
        jacobian = derivatives(residuals, search.parameters, search.here, step);
    }
    const Eigen::FullPivLU<Matrix> lu(jacobian.transpose() * jacobian);
    if (!jacobian.allFinite() || !lu.isInvertible())
        return Error{ErrorKind::failed, "the data do not fix the parameters"};
    const Matrix covariance = lu.inverse();
    fit.parameters = asStd(search.parameters);
    fit.covariance.assign(covariance.data(), covariance.data() + covariance.size()); // symmetric
    fit.squares = search.here.squaredNorm();
    return fit;
}

} // namespace ringhold
