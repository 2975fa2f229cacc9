// What is known of a probe's offset in one past firing.
#pragma once

#include "core/cones/offset_prior.h"
#include "core/firing/records.h"

#include <span>
#include <string>

namespace ringhold {

struct KnownOffset {
    OffsetPrior prior;
    double own_C = 0;  ///< of its standard deviation, what is this firing's own and not the probe's
    std::string place; ///< of the cones that told it; empty when none did
};

/// The offset that this firing's own cones told, else what other firings of the probe told (those of the
/// place that was filed first), else that of a new probe. `filed` is of the probe's kiln, in time order; `at`
/// is the temperature of the cones, about the peak.
KnownOffset knownOffset(std::span<const FiledOffset> filed, FiringId firing, const Probe& probe,
                        Temperature at);

} // namespace ringhold
