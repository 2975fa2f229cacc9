// Whether a plan makes sense, before anything is reckoned with it.
#pragma once

#include "core/base/result.h"
#include "core/plan/plan.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace ringhold {

/// What a plan may contain. Wide on purpose: they stop slips of the pen, not unusual firings.
namespace plan_limits {
inline constexpr Temperature coldest = Temperature::fromCelsius(0);
inline constexpr Temperature hottest = Temperature::fromCelsius(1400);
inline constexpr Rate slowest = Rate::fromCelsiusPerHour(0.1);
inline constexpr Rate fastest = Rate::fromCelsiusPerHour(3000);
inline constexpr TemperatureDifference widestBand = TemperatureDifference::fromCelsius(100);
inline constexpr Duration longestTime = std::chrono::hours(7 * 24); ///< of one hold, soak or dwell
inline constexpr int mostRings = 50;
inline constexpr std::size_t mostSteps = 200;
} // namespace plan_limits

/// Why a field is wrong.
enum class FaultReason {
    noSteps,      ///< of the plan as a whole
    tooManySteps, ///< likewise; at most `high`
    notAboveZero,
    outOfRange,      ///< not from `low` to `high`
    tooMuch,         ///< above `high`
    belowKiln,       ///< a step that goes up ends below `low`, which the kiln has by then
    aboveKiln,       ///< a step that goes down ends above `high`, which the kiln has by then
    notACone,        ///< not written as a cone's number is
    ceilingBelowSet, ///< of a cone wait
    highNotAboveLow  ///< of rings
};

/// One thing that is wrong with a plan.
struct PlanFault {
    std::optional<std::size_t> step; ///< counts from 0; none when it is the plan as a whole
    std::string_view key;            ///< of the field in a plan file, "rate_C_per_h"; may be empty
    std::string what;                ///< in a plan file's words: "rate_C_per_h must be above 0"
    FaultReason reason = FaultReason::noSteps;
    double low = 0; ///< in the key's unit, for the reasons that name it
    double high = 0;

    /// "step 3: rate_C_per_h must be above 0"; people count steps from 1.
    std::string text() const;
};

/// All that is wrong: values that are not finite or out of range, and steps that cannot follow one another.
/// Only what is certain counts: after a cone wait, and at the beginning unless `start` is given, the kiln may
/// be at many temperatures. Whether the cone chart has the cone is not looked at.
std::vector<PlanFault> faultsOf(const Plan& plan, std::optional<Temperature> start = {});

/// The first of the faults as badInput, or success.
Status check(const Plan& plan, std::optional<Temperature> start = {});

} // namespace ringhold
