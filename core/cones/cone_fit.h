// Fits the heat-work law to a cone's published end points.
#pragma once

#include "core/cones/heat_work.h"

#include <optional>
#include <span>
#include <vector>

namespace ringhold {

/// Where a cone ends in a steady climb at that rate over the last 100 °C.
struct EndPoint {
    Rate climb;
    Temperature end;
};

struct ConeFit {
    HeatWorkLaw law;
    std::vector<TemperatureDifference> residuals; ///< law minus table, point by point
};

/// Least squares on the temperatures, with the exact integral. Needs two rates or more; with two it passes
/// through both. Nothing when there are fewer, or when no law with E from 50 to 5000 kJ/mol fits.
std::optional<ConeFit> fitCone(std::span<const EndPoint> points);

/// The same with E taken from elsewhere: only A is fitted, one point is enough.
std::optional<ConeFit> fitConeWithActivation(std::span<const EndPoint> points, double activation_J_per_mol);

} // namespace ringhold
