// A step of a plan in words.
#pragma once

#include "core/plan/plan.h"

#include <string>

namespace ringhold {

/// "hold 1090 °C for 3 h 30 min".
std::string spokenStep(const Step& step);

} // namespace ringhold
