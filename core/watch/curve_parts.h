// Parts of a curve: a cut of it, the stretches it spends within two temperatures, and what it comes to over
// time. All of it is exact for the piecewise-linear curve: how often it was read changes nothing.
#pragma once

#include "core/units/curve.h"

#include <utility>
#include <vector>

namespace ringhold {

/// A stretch of time, start not after end.
struct Stretch {
    Instant start;
    Instant end;

    Duration length() const { return end - start; }
};

/// The curve from one instant to another, with a point at either end: from before to. Needs a curve with a
/// point; where the curve does not reach, its end temperature goes on.
Curve cut(const Curve& curve, Instant from, Instant to);

/// When the curve is within [low, high], edges included, in time order and apart. Crossings are interpolated
/// and rounded to the millisecond; a mere touch is left out.
std::vector<Stretch> stretchesWithin(const Curve& curve, Temperature low, Temperature high);

/// What the stretches, in time order and apart, leave of the whole.
std::vector<Stretch> remainder(Stretch whole, const std::vector<Stretch>& stretches);

/// The stretches' time together.
Duration totalLength(const std::vector<Stretch>& stretches);

/// The time-weighted mean. The curve must have a point; a single point is its own mean.
Temperature meanOf(const Curve& curve);

/// Time-weighted standard deviation about the mean: root of the mean square deviation.
TemperatureDifference standardDeviationOf(const Curve& curve);

/// The least and the greatest temperature. The curve must have a point.
std::pair<Temperature, Temperature> rangeOf(const Curve& curve);

/// Degree-minutes (°C min, at least 0) by which the curve lies above a level: the area between them.
double degreeMinutesAbove(const Curve& curve, Temperature level);
/// Likewise below.
double degreeMinutesBelow(const Curve& curve, Temperature level);

} // namespace ringhold
