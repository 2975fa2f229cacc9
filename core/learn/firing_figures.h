// The figures by which firings are compared.
#pragma once

#include "core/firing/firing_record.h"
#include "core/watch/hold_statistics.h"

#include <optional>
#include <string>

namespace ringhold {

/// What can be told of a firing from its record; what cannot is absent. All temperatures are the control
/// probe's own, uncorrected: firings of different probes are not to be compared by them.
struct FiringFigures {
    std::optional<CurvePoint> peak;
    Duration nearPeak{0};          ///< spent less than 10 °C below the peak
    std::optional<Rate> lastClimb; ///< over the last 100 °C before the peak
    std::string firingCone;        ///< empty when there is none
    std::optional<Instant> coneDown;
    std::optional<HoldStatistics> growthHold;
};

/// `control` is the curve that the firing is judged by.
FiringFigures figuresOf(const FiringRecord& record, const Curve& control);

/// The cone that ends the climb: that of the plan's last cone wait, else the second of the first pack (guide,
/// firing, guard), else its only one. Empty when there is none.
std::string firingCone(const FiringRecord& record);

/// The earliest look, through the spyhole and not struck, that found the firing cone down.
std::optional<Instant> coneDownSeen(const FiringRecord& record);

/// The climb from 100 °C to 10 °C below the peak, the last time it went there: the last 10 °C are left out,
/// since a soak at the top is no climb.
std::optional<Rate> lastClimbOf(const Curve& control);

/// The step of the plan that is meant for growth: the first hold after its hottest step that is no soak at
/// the top. Nothing when there is none, or rings come before it.
std::optional<std::size_t> growthHoldStep(const Plan& plan);

/// The hold in which crystals grew: after the peak, at the first hold that the plan has after its hottest
/// step (without one, at the high of its rings). Rings that follow are left out. Without a plan it is the
/// longest hold within +-6 °C, from 900 °C to 30 °C below the peak, that drifts by at most 15 °C/h.
std::optional<HoldStatistics> growthHoldOf(const std::optional<Plan>& plan, const Curve& control);

} // namespace ringhold
