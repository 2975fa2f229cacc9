// Holds and rings, as the verbs write them.
#pragma once

#include "app/verbs/output.h"
#include "core/watch/hold_statistics.h"
#include "core/watch/ring_count.h"

#include <ostream>
#include <vector>

namespace ringhold {

Json toJson(const std::vector<HoldStatistics>& holds);
Json toJson(const std::vector<Ring>& rings);

/// For people. `absolute` as in CsvReadings.
void describe(std::ostream& out, const std::vector<HoldStatistics>& holds, const HoldBand& band,
              bool absolute);
void describe(std::ostream& out, const std::vector<Ring>& rings, bool absolute);

} // namespace ringhold
