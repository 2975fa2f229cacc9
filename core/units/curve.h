// A temperature over time, as everything that reckons with one takes it.
#pragma once

#include "core/units/temperature.h"
#include "core/units/time.h"

#include <vector>

namespace ringhold {

struct CurvePoint {
    Instant at;
    Temperature temperature;
};

/// Piecewise linear between its points, which are in time order, none twice at the same instant.
using Curve = std::vector<CurvePoint>;

/// The temperature at an instant, between the points by straight line, before and after them that of the end.
/// The curve must have a point.
Temperature temperatureAt(const Curve& curve, Instant at);

} // namespace ringhold
