// The cone that a firing is about, among all that stand in it.
#pragma once

#include "core/cones/forecast.h"

#include <optional>
#include <string>

namespace ringhold {

class FiringSession;

/// The cone that the plan waits for, at this step or the next that waits; nothing without one.
std::optional<std::string> firingConeOf(const FiringSession& session);

/// Its forecast in the first pack; without a plan, that of the first cone that is not down. Null without a
/// forecast, and when the plan waits for none any more.
const ConeForecast* firingConeForecast(const FiringSession& session);

} // namespace ringhold
