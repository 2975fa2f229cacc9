// What the probe may read from now on.
#pragma once

#include "core/cones/climb_shown.h"
#include "core/cones/interval.h"

#include <optional>
#include <span>
#include <vector>

namespace ringhold {

/// A few possible futures with their weights, which sum to 1. Each curve begins now and reaches at least to
/// the horizon.
struct FutureTemperature {
    struct Case {
        double weight;
        Curve curve;
    };
    std::vector<Case> cases;
    /// Where a kiln that runs out of power levels off, if that is all but certain and below where it is to
    /// go.
    std::optional<Interval<Temperature>> levelsOff = std::nullopt;
};

/// A node and weight of five-point Gauss-Hermite quadrature for a standard normal variable.
struct RateNode {
    double z;
    double weight;
};
std::span<const RateNode> rateNodes();

/// No forecast looks further ahead.
inline constexpr Duration forecastHorizon = std::chrono::hours(24);

/// The climb goes on at this rate, up to `top` if there is one, and soaks there; a falling kiln goes on
/// falling, to no less than 20 °C. The rate is uncertain by `rateSd`: five cases, the nodes and weights of
/// Gauss-Hermite quadrature.
FutureTemperature climbOn(Instant now, Temperature from, Rate rate, Rate rateSd,
                          std::optional<Temperature> top);

/// How a climb that has slowed down goes on: it stays slow, or it is as it was after a while, for sags and
/// stalls pass (shares and times are assumptions).
struct SlowedCourse {
    double weight;
    std::optional<Duration> recovers; ///< from now
};
/// One course, that it stays, for a climb that has not slowed by a tenth in the last hour.
std::span<const SlowedCourse> coursesAfter(const ClimbShown& shown);

/// As climbOn for the climb that is shown, its slowing considered.
FutureTemperature climbOnAsShown(const ClimbShown& shown, std::optional<Temperature> top);

/// How uncertain the climb's rate is for the time ahead: the slope's own sd, and 5 % of the rate, since a
/// kiln does not hold its rate better (an assumption).
Rate aheadSd(const ClimbShown& shown);

} // namespace ringhold
