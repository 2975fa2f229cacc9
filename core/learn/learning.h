// What past firings tell of a glaze, and how surely: each outcome against each cause, honestly.
#pragma once

#include "core/learn/piece_result.h"
#include "core/learn/regression.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace ringhold {

/// Bounds of a 90 % interval.
struct Bounds {
    double low = 0;
    double high = 0;
};

enum class Verdict {
    notEnough,   ///< not enough to say: the usual answer for few
    nothingSeen, ///< enough, and whatever difference there may be is less than pieces differ anyway
    claimed,     ///< chance alone would show so much in no more than one of twenty glazes
};

/// Why there is not enough to say.
enum class Shortfall {
    tooFewFirings, ///< or for application and position, too few pieces that can be compared within firings
    allAlike,      ///< the cause was the same in all of them, but for small change
    temperaturesUnsure, ///< the offsets are less sure than the temperatures differ
    unclear,            ///< something may be there, or may not
};

/// How the outcome goes with the cause.
enum class Trend {
    rises,
    falls,
    best,    ///< highest at a value in between
    worst,   ///< lowest there
    differs, ///< between positions
};

/// The fitted curve at a value of the cause, with its 90 % band: where the mean of a firing's pieces lies.
/// The temperatures' shared error is in it.
struct CurveValue {
    double cause = 0;
    double value = 0;
    double low = 0;
    double high = 0;
};

/// One place in the kiln against the mean of all.
struct PositionEffect {
    std::string position{};
    Estimate difference{};
    int pieces = 0;
};

struct Claim {
    Trend trend = Trend::rises;
    double from = 0; ///< the range of the cause that was tried
    double to = 0;
    /// Of the fitted curve from `from` to `to`; for best and worst from the farther end of the range to
    /// there; for positions from the worst to the best.
    double change = 0;
    Bounds change90{};
    std::optional<double> bestAt{};   ///< of best and worst
    std::optional<Bounds> bestAt90{}; ///< the temperatures' shared error is in it; absent when it has no end
};

/// Another cause that went along, so that it cannot be told which of the two it was.
struct Confounder {
    Cause with = Cause::position;
    double shared = 0; ///< share of the variance that the two have in common, 0 to 1; 1 is hopeless
    /// For causes of the whole firing: whether the claim still stands with the other one in the model too.
    /// Absent where there are too few firings for both.
    std::optional<bool> standsBesides{};
    /// For a position: where all pieces of the upper (or lower) half of the cause stood, if it was one place.
    std::string upperHalfOn{};
    std::string lowerHalfOn{};
};

/// What one cause has to do with the outcome.
struct Lesson {
    Cause cause = Cause::growthHold;
    Verdict verdict = Verdict::notEnough;
    std::optional<Shortfall> shortfall{}; ///< when there is not enough to say
    int pieces = 0;                       ///< behind it
    int firings = 0;                      ///< that they came from; pieces of one firing are not independent
    std::optional<double>
        chance{}; ///< how often chance alone shows so much, all causes asked taken into account
    std::vector<CurveValue>
        curve{}; ///< over the range tried; empty for positions and where nothing can be fitted
    std::vector<PositionEffect> positions{}; ///< of a position lesson, best first
    std::optional<Claim> claim{};
    std::vector<Confounder> confounders{}; ///< most in common first; only where at least half is shared
    double ownSd_C = 0;    ///< the temperatures' own error (root mean square), allowed for by calibration
    double sharedSd_C = 0; ///< the error they share, in the band
};

struct LearningQuestion {
    Judged judged = Judged::largest;
    /// How many such questions are asked of the same pieces, as when all three outcomes are looked at: claims
    /// become that much rarer.
    int questions = 1;
};

/// One lesson a cause, in the order of the enum. Firing-wide causes are judged by the means of firings,
/// weighted by how many pieces they rest on; application and position by differences within firings, of which
/// positions are averaged first. Growth hold, peak and application are fitted by a parabola once six firings
/// at four values allow it, else by a line. The temperatures' own errors would flatten a curve: each is
/// pulled towards the mean by its reliability first (regression calibration: R. J. Carroll et al.,
/// Measurement Error in Nonlinear Models, 2006, chapter 4). The chance is that of the F ratio, raised by
/// Holm's rule (Scand. J. Stat. 6, 1979, 65) for the causes asked. How often it claims falsely is in
/// tests/study/learning_study.cpp.
std::vector<Lesson> learnFrom(std::span<const PieceResult> pieces, const LearningQuestion& question);

} // namespace ringhold
