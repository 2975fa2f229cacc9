// How a curve drifts: the slope of its straight line, and how sure it is.
#pragma once

#include "core/units/curve.h"

#include <optional>

namespace ringhold {

struct RateInterval {
    Rate low;
    Rate high;
};

struct Drift {
    Rate rate;
    /// 90 % for the slope that goes on beneath noise, cycling and excursions; absent when the curve is too
    /// short or its deviations too much of a piece to tell.
    std::optional<RateInterval> interval90;
};

/// The least-squares line through the curve, every minute counting alike: for evenly spaced readings this is
/// plain least squares on the readings. The interval allows for autocorrelated deviations as Santer et al. do
/// (J. Geophys. Res. 105, 2000, 7337): an effective number of values from their lag-1 correlation, and
/// Student's t; here on the means of equal blocks of time, so that how often the curve was read does not
/// count. The curve must last longer than 0.
Drift driftOf(const Curve& curve);

} // namespace ringhold
