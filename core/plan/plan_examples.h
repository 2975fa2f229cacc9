// Plans to begin with, for an electric kiln of usual power. Starting points of our own, not recipes: every
// glaze and every kiln wants its own.
#pragma once

#include "core/plan/plan.h"

#include <string>
#include <vector>

namespace ringhold {

struct ExamplePlan {
    Plan plan;
    std::vector<std::string> pack; ///< the cones that it is meant for: guide, firing and guard cone
};

/// Three of them, each passing check(); the first is the practice kiln's.
std::vector<ExamplePlan> examplePlans();

} // namespace ringhold
