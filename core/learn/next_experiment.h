// The next firing that would tell most.
#pragma once

#include "core/learn/learning.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace ringhold {

/// Between which values the potter could and would fire: of growth hold, hold time and peak.
struct FeasibleRange {
    Cause cause = Cause::growthHold;
    double low = 0;
    double high = 0; ///< above low
};

struct SuggestedValue {
    Cause cause = Cause::growthHold;
    double value = 0;
    double low =
        0; ///< from here to `high`, the others as suggested, a firing tells at least nine tenths as much
    double high = 0;
};

/// What a suggestion is after.
enum class Aim {
    sharpenBest, ///< where the best growth hold lies, once one is claimed
    tellMost,    ///< all of the causes at once
};

struct NextExperiment {
    Aim aim = Aim::tellMost;
    std::vector<SuggestedValue> values; ///< one for each range
    double bits = 0;                   ///< expected information about the curve: half the binary logarithm of
                                       ///< how much smaller the volume of what may be true becomes
    std::optional<double> bestSdNow_C; ///< when sharpening: how sure the best is now,
    std::optional<double> bestSdThen_C; ///< and after such a firing
    /// Put pieces of the glaze there too: so far the shelf and the growth hold went together. Empty when they
    /// did not.
    std::string alsoOn;
};

/// The peaks to choose from, as the ware felt them, where the peak matters: something is claimed of it, or it
/// is unclear, or it went along with the growth hold. From 5 °C below the lowest that was tried to 5 °C above
/// the highest (our own choice: a step that no glaze runs away from). Nothing where it does not matter, or
/// fewer than three firings tell it.
std::optional<FeasibleRange> peaksToTry(std::span<const PieceResult> pieces, Judged judged);

/// Of a grid over the ranges, the setting by which a firing would tell most, under a model with a parabola in
/// the growth hold and lines in the others and the scatter seen so far: the determinant of the coefficients'
/// covariance (D-optimal) while nothing is claimed, the variance of the best growth hold afterwards. With few
/// firings a wide prior (each coefficient within twice the pieces' scatter over its range) stands in, so that
/// the first answers are the ends of the ranges. badInput without ranges, or with one that is empty, repeated
/// or of application or position.
Result<NextExperiment> nextExperiment(std::span<const PieceResult> pieces, Judged judged,
                                      std::span<const FeasibleRange> ranges);

} // namespace ringhold
