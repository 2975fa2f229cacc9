// A firing plan: what the potter means the kiln to do, step by step.
#pragma once

#include "core/units/temperature.h"
#include "core/units/time.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace ringhold {

/// Heat at a rate (above 0) until the probe reads `to`.
struct Climb {
    Temperature to;
    Rate rate;
};

/// Stay at a temperature, to which the kiln first goes as fast as it can if it is elsewhere; `band` is the
/// half width within which it counts as held.
struct Hold {
    Temperature at;
    Duration length;
    TemperatureDifference band;
};

/// Climb towards `set` and soak there until a look finds the cone down: at the longest for `longestSoak`,
/// never above `ceiling`. Temperatures are this probe's own degrees.
struct ConeWait {
    std::string cone;
    Rate rate;
    Temperature set;
    Temperature ceiling;
    Duration longestSoak;
};

/// Let the kiln fall to a temperature; without a rate, as fast as it cools by itself. The rate is above 0.
struct Drop {
    Temperature to;
    std::optional<Rate> rate;
};

/// `count` times: down to `low` for `lowDwell`, back up to `high` for `highDwell`. The kiln goes down by
/// itself and up at full power; a dwell counts from its arrival.
struct Rings {
    int count = 0;
    Temperature low;
    Duration lowDwell;
    Temperature high;
    Duration highDwell;
};

/// Cool at the end of the firing; without a rate, as fast as the kiln does.
struct Cool {
    Temperature to;
    std::optional<Rate> rate;
};

using Step = std::variant<Climb, Hold, ConeWait, Drop, Rings, Cool>;

struct Plan {
    std::string name;
    std::vector<Step> steps;
};

} // namespace ringhold
