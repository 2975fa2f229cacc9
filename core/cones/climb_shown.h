// What climb rate the kiln shows now, and how sure that is.
#pragma once

#include "core/units/curve.h"

#include <optional>

namespace ringhold {

/// The kiln has climbed at another rate before.
struct RateChange {
    Instant at;
    Rate before;
};

struct ClimbShown {
    Instant at;              ///< of the last reading
    Temperature temperature; ///< there, freed of the readings' noise as far as they allow
    Rate rate;
    Rate rateSd;                                      ///< of the slope itself
    int readings = 0;                                 ///< that it rests on
    std::optional<RateChange> changed = std::nullopt; ///< within the last hour, plainly
};

/// Plain least squares over the last 20 min (or the last two readings when they are further apart); the
/// slope's standard deviation allows for neighbouring readings that err together by the first autocorrelation
/// of the residuals (effective number of readings n (1-r)/(1+r): G. V. Bayley, J. M. Hammersley, J. R.
/// Statist. Soc. Suppl. 8, 1946, 184). Nothing for fewer than two readings.
std::optional<ClimbShown> climbShownAtEnd(const Curve& curve, Duration window = std::chrono::minutes(20));

/// The same; but where the last three windows' minute means are plainly two lines, not one (a sag or stall
/// that began or ended), that of the second.
std::optional<ClimbShown> climbShownSinceChange(const Curve& curve,
                                                Duration window = std::chrono::minutes(20));

} // namespace ringhold
