// A look as written on the command line.
#pragma once

#include "core/cones/forecast.h"

#include <string>

namespace ringhold {

/// "8@2026-03-01T20:41:00Z=2": cone, time (in that zone where it has none) and hour, which is a number,
/// "standing" or "down"; 12 is standing too. badInput for any other text.
Result<WatchedLook> parseLook(const std::string& text, const std::string& zone);

} // namespace ringhold
