// What of a long curve is worth drawing.
#pragma once

#include "core/units/curve.h"

#include <span>

namespace ringhold {

/// The points that draw `curve` over [from, to] on that many pixel columns as all of them would: of each
/// column the first, lowest, highest and last. The nearest point beyond either edge is kept too, so that the
/// line runs off the picture. Costs a pass over the points in sight, not over the whole curve.
Curve decimated(std::span<const CurvePoint> curve, Instant from, Instant to, int columns);

} // namespace ringhold
