// Pieces gathered by firing: what firing-wide causes are judged by.
#pragma once

#include "core/learn/piece_result.h"

#include <vector>

namespace ringhold {

struct FiringMean {
    FiringId firing{};
    double cause = 0;   ///< mean over its pieces
    double outcome = 0; ///< likewise
    int pieces = 0;
    double ownSd = 0;    ///< error of the cause, of its own
    double seriesSd = 0; ///< and shared
    std::string series;
};

struct FiringMeans {
    std::vector<FiringMean> firings;
    double withinSquares = 0; ///< of the outcomes about their firing's mean
    int withinFreedom = 0;
    int pieces = 0;
};

/// Of the pieces that have both.
FiringMeans firingMeansOf(std::span<const PieceResult> pieces, Cause cause, Judged judged);

/// Standard deviation of all pieces' outcomes about their mean; 0 for fewer than two.
double pieceSdOf(std::span<const PieceResult> pieces, Judged judged);

/// How much each mean is to count: one over (variance between firings plus variance within over pieces), 1 on
/// average. `residualSd` is that of an unweighted fit of the means.
std::vector<double> weightsOf(const FiringMeans& means, double residualSd);

} // namespace ringhold
