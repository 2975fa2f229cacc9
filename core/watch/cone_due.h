// When the firing cone calls for the potter.
#pragma once

#include "core/cones/forecast.h"
#include "core/report/words.h"
#include "core/watch/alarm_cause.h"

#include <optional>
#include <string>
#include <vector>

namespace ringhold {

/// The firing cone as the forecast has it, and what was seen.
struct ConeAwaited {
    const ConeForecast& cone;
    const std::vector<Look>& looks; ///< of its pack, struck ones may be among them
};

struct ConeDueRules {
    Duration before = std::chrono::minutes(10);     ///< the early edge: the warning
    Duration lookCounts = std::chrono::minutes(10); ///< so long a look that found it standing is believed
};

/// Nothing while there is time, and once a look has found the cone down. A warning from `before` the
/// forecast's early edge (5 %) on. Urgent, not to be silenced but by a look, from when it is more likely than
/// not that the cone is down, with no look since or the last one too long ago.
std::optional<AlarmFinding> coneDue(const ConeAwaited& awaited, Instant now, const WordStyle& style,
                                    const ConeDueRules& rules = {});

} // namespace ringhold
