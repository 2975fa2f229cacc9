// Readings freed of what no kiln does.
#pragma once

#include "core/units/curve.h"

namespace ringhold {

/// Each reading replaced by the median of itself and as many neighbours on either side as lie within 45 s of
/// it, one of each at least where they are within 2 min: a single wild reading is gone, noise is less, ramps
/// and the edges of dwells stay. Readings farther apart than 2 min are left as they are: one may be a whole
/// dwell. The instants stay.
Curve withoutSpikes(const Curve& readings);

} // namespace ringhold
