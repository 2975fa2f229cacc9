// How well a temperature was held: the holds of a curve, found without a plan, and the figures of each.
#pragma once

#include "core/units/curve.h"
#include "core/watch/curve_parts.h"
#include "core/watch/drift.h"
#include "core/watch/hold_arrival.h"
#include "core/watch/uniformity.h"

#include <cstddef>
#include <vector>

namespace ringhold {

/// What is to be held: the temperature is inside when it is within target +- halfWidth, edges included.
struct HoldBand {
    Temperature target;
    TemperatureDifference halfWidth; ///< at least 0

    Temperature low() const { return target - halfWidth; }
    Temperature high() const { return target + halfWidth; }
};

/// A visit outside the band, between the two crossings of its edge.
struct Excursion {
    Instant start;
    Instant end;
    Temperature peak; ///< where it was farthest from the target
};

/// The figures of one hold. All are of the piecewise-linear curve, by exact integration, every minute
/// counting alike, excursions included: readings close together count no more than readings far apart.
struct HoldStatistics {
    Instant start;
    Instant end;
    Temperature mean;
    TemperatureDifference sd;
    Temperature min;
    Temperature max;
    double insideShare = 0; ///< share of the time inside the band, 0 to 1
    Duration longestExcursion{0};
    /// °C min beyond the band's edge: the area that the excursions enclose with it, so 0 for a hold never
    /// left.
    double degreeMinutesAbove = 0;
    double degreeMinutesBelow = 0;
    /// °C min off the target itself, inside the band too: how far to the hot and to the cold side it ran.
    double degreeMinutesAboveTarget = 0;
    double degreeMinutesBelowTarget = 0;
    Drift drift;
    std::vector<Excursion>
        excursions;           ///< in time order; at either side of the band noise may make many short ones
    std::size_t readings = 0; ///< in [start, end]; few of them know little, however sure the line between
    Duration longestGap{0};   ///< longest time between neighbouring readings that reaches into the hold
    std::optional<HoldArrival> arrival{};
    std::optional<Uniformity> uniformity{}; ///< nothing when no class was kept

    double minutes() const { return inMinutes(end - start); }
};

/// The holds of a curve. A hold lasts from the first entry into the band to the last time inside, its
/// crossings interpolated; an absence longer than 20 min ends it, and it must have spent 20 min inside in
/// all. So a climb at 60 °C/h through a band of +-6 °C (12 min) is no hold, but one at 30 °C/h (24 min) is: a
/// curve alone cannot tell a slow pass from a hold, its drift can. Where readings are missing the straight
/// line counts.
std::vector<HoldStatistics> findHolds(const Curve& curve, const HoldBand& band);

/// The figures of a stretch that is known to be a hold, from a plan for instance. Time off the band at its
/// ends counts as excursion. The curve must have a point, the stretch last longer than 0.
HoldStatistics judgeHold(const Curve& curve, const HoldBand& band, Stretch hold);

} // namespace ringhold
