#include "core/cones/cone_fit.h"

#include <Eigen/Dense>
#include <cmath>

namespace ringhold {

namespace {

/// The law with that E which ends a climb of 60 °C/h at the given temperature: two numbers that hardly depend
/// on each other, where E and A by themselves are all but one.
HeatWorkLaw pivoted(double activation_J_per_mol, double end60_C) {
    const double theta_K = activation_J_per_mol / gasConstant_J_per_mol_K;
    const double ln = lnTemperatureIntegral(theta_K, Temperature::fromCelsius(end60_C).kelvin());
    return {activation_J_per_mol, std::log(60.0 / 3600.0) - ln};
}

Eigen::VectorXd misfit(const HeatWorkLaw& law, std::span<const EndPoint> points) {
    Eigen::VectorXd residuals(static_cast<Eigen::Index>(points.size()));
    for (std::size_t i = 0; i < points.size(); ++i)
        residuals[static_cast<Eigen::Index>(i)] = (law.endPoint(points[i].climb) - points[i].end).celsius();
    return residuals;
}

ConeFit withResiduals(const HeatWorkLaw& law, std::span<const EndPoint> points) {
    ConeFit fit{law, {}};
    for (const double residual : misfit(law, points))
        fit.residuals.push_back(TemperatureDifference::fromCelsius(residual));
    return fit;
}

double meanEnd_C(std::span<const EndPoint> points) {
    double sum = 0;
    for (const auto& point : points)
        sum += point.end.celsius();
    return sum / static_cast<double>(points.size());
}

bool isPlausible(double activation_J_per_mol) {
    return activation_J_per_mol > 50e3 && activation_J_per_mol < 5000e3;
}

} // namespace

std::optional<ConeFit> fitCone(std::span<const EndPoint> points) {
    if (points.size() < 2)
        return std::nullopt;
    double lnE = std::log(700e3);
    double end60_C = meanEnd_C(points);
    // Gauss-Newton in (ln E, end point at 60 °C/h), derivatives by central difference.
    for (int i = 0; i < 100; ++i) {
        constexpr double hE = 1e-4;
        constexpr double hT = 1e-2;
        const Eigen::VectorXd r = misfit(pivoted(std::exp(lnE), end60_C), points);
        Eigen::MatrixXd J(r.size(), 2);
        J.col(0) = (misfit(pivoted(std::exp(lnE + hE), end60_C), points) -
                    misfit(pivoted(std::exp(lnE - hE), end60_C), points)) /
                   (2 * hE);
        J.col(1) = (misfit(pivoted(std::exp(lnE), end60_C + hT), points) -
                    misfit(pivoted(std::exp(lnE), end60_C - hT), points)) /
                   (2 * hT);
        const Eigen::Vector2d step = -J.colPivHouseholderQr().solve(r);
        lnE += std::clamp(step[0], -0.5, 0.5);
        end60_C += step[1];
        if (!isPlausible(std::exp(lnE)))
            return std::nullopt;
        if (std::abs(step[0]) < 1e-10 && std::abs(step[1]) < 1e-8)
            break;
    }
    return withResiduals(pivoted(std::exp(lnE), end60_C), points);
}

std::optional<ConeFit> fitConeWithActivation(std::span<const EndPoint> points, double activation_J_per_mol) {
    if (points.empty() || !isPlausible(activation_J_per_mol))
        return std::nullopt;
    double end60_C = meanEnd_C(points);
    // Every end point moves all but one for one with the pivot, so taking off the mean misfit converges at
    // once.
    for (int i = 0; i < 50; ++i) {
        const double mean = misfit(pivoted(activation_J_per_mol, end60_C), points).mean();
        end60_C -= mean;
        if (std::abs(mean) < 1e-9)
            break;
    }
    return withResiduals(pivoted(activation_J_per_mol, end60_C), points);
}

} // namespace ringhold
