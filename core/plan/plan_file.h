// A plan as a JSON file: {"name","steps":[{"climb":{"to_C","rate_C_per_h"}} |
// {"hold":{"at_C","minutes","band_C"}} |
// {"cone_wait":{"cone","rate_C_per_h","set_C","ceiling_C","longest_soak_min"}} |
// {"drop":{"to_C","rate_C_per_h"}} |
// {"rings":{"count","low_C","low_min","high_C","high_min"}} | {"cool":{"to_C","rate_C_per_h"}}]}.
// All keys must be there and no others; the rate of a drop or cool is null where the kiln cools as it will,
// and like all rates has no sign.
#pragma once

#include "core/base/result.h"
#include "core/plan/plan.h"

#include <filesystem>
#include <string>
#include <string_view>

namespace ringhold {

/// The plan in that text, which has passed check(). badInput names the file, and the line where the text is
/// no JSON or else the step: "plan.json: step 3: rate_C_per_h must be above 0".
Result<Plan> parsePlan(std::string_view json, const std::string& fileName);

/// The same without check(): a plan that is still being written. A ring count or time beyond a million is
/// taken to be that.
Result<Plan> parsePlanDraft(std::string_view json, const std::string& fileName);

/// The plan in that file, which may have up to 1 MB. Also notFound and unreadable.
Result<Plan> readPlan(const std::filesystem::path& path);

/// The text of a plan file, a line for each step. A plan that passes check() comes back from parsePlan()
/// unchanged to the last bit.
std::string formatPlan(const Plan& plan);

} // namespace ringhold
