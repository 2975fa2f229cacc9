// What the potter could do at the top of the climb, and what the cones would make of it.
#pragma once

#include "core/cones/forecast.h"

#include <optional>
#include <string>
#include <vector>

namespace ringhold {

/// The cone that is asked about.
struct ConeOfPack {
    std::size_t pack = 0;
    std::string cone;
};

/// A kiln that holds wanders about its set point: sd in °C (an assumption).
inline constexpr double holdSd_C = 1.0;
/// How fast a kiln comes to a new set point: up at the climb shown or, where it shows less, at 60 °C/h; down
/// at 200 °C/h (assumptions).
inline constexpr double leastUp_C_per_h = 60;
inline constexpr double comesDown_C_per_h = 200;

/// From the present temperature to `hold` and there for good, its set point kept within holdSd_C.
FutureTemperature holdAt(const ClimbShown& shown, Temperature hold);

/// "Hold 1275 °C and cone 10 is down at ...". Numeric over the posterior; O(ms). badInput for an unknown
/// cone or fewer than two readings; so for all of these.
Result<TimeInterval> downWhenHeldAt(const ConeForecaster& forecaster, const ConeOfPack& which,
                                    Temperature hold);

/// The climb rate from now on for which the cone is down by that instant with 5, 50 and 95 % of belief: the
/// p95 makes it all but sure. Each is at most `fastestRate()`, nothing if that is not enough; 0 when staying
/// at the present temperature brings it down by then.
Result<Interval<std::optional<Rate>>> rateToBeDownBy(const ConeForecaster& forecaster,
                                                     const ConeOfPack& which, Instant by);
inline constexpr Rate fastestRate() {
    return Rate::fromCelsiusPerHour(400);
}

/// Where a cone's tip will point.
struct HoursAhead {
    Interval<double> atEnd;  ///< when the soak ends
    Interval<double> cooled; ///< when the kiln has cooled after it: heat work goes on
    double downAtEnd = 0;    ///< the probability that it is down when the soak ends
    double downCooled = 0;   ///< and when the kiln has cooled
};

/// "15 min more at the top would bring cone 11 to 2 o'clock": to `top`, there for `soak`, then down at the
/// rate `drop` (above 0).
Result<HoursAhead> hoursAfterSoak(const ConeForecaster& forecaster, const ConeOfPack& which, Temperature top,
                                  Duration soak, Rate drop);

/// The same after any course that begins now: the drop begins at `end`.
Result<HoursAhead> hoursAfter(const ConeForecaster& forecaster, const ConeOfPack& which,
                              const FutureTemperature& future, Instant end, Rate drop);

/// What dropping now at that rate (above 0) would leave of each cone of a pack, in the pack's order: atEnd is
/// now, cooled is the end. badInput for an unknown pack.
Result<std::vector<HoursAhead>> hoursAfterDrop(const ConeForecaster& forecaster, std::size_t pack, Rate drop);

/// The instant from which a drop at that rate (above 0) still brings the cone down while the kiln cools, if
/// until then it goes on as in `future`; not before the last reading. As the cone is down later still when
/// the kiln is not dropped, this is by how much the drop may be earlier.
Result<TimeInterval> earliestDrop(const ConeForecaster& forecaster, const ConeOfPack& which,
                                  const FutureTemperature& future, Rate drop);

} // namespace ringhold
