// Pieces of an invented glaze, for tests of what is learned.
#pragma once

#include "core/kiln/chance.h"
#include "core/learn/piece_result.h"

#include <functional>

namespace ringhold::test {

struct MadeUpFiring {
    double hold_C = 1090;
    double hold_h = 4;
    double peak_C = 1270;
    std::string position = "middle"; ///< of all its pieces
};

/// `perFiring` pieces of each firing, with the size that `size` gives and a scatter of `sd_mm`.
inline std::vector<PieceResult> madeUpPieces(const std::vector<MadeUpFiring>& firings, int perFiring,
                                             double sd_mm,
                                             const std::function<double(const MadeUpFiring&)>& size,
                                             double ownSd_C = 0, double sharedSd_C = 0) {
    Chance chance(7);
    std::vector<PieceResult> pieces;
    for (std::size_t f = 0; f < firings.size(); ++f)
        for (int p = 0; p < perFiring; ++p) {
            PieceResult piece;
            piece.firing = FiringId{static_cast<std::int64_t>(f) + 1};
            piece.growthHold = CorrectedTemperature{firings[f].hold_C, ownSd_C, sharedSd_C, "K1"};
            piece.peak = CorrectedTemperature{firings[f].peak_C, ownSd_C, sharedSd_C, "K1"};
            piece.hold_h = firings[f].hold_h;
            piece.position = firings[f].position;
            piece.largest_mm = size(firings[f]) + sd_mm * chance.normal();
            pieces.push_back(piece);
        }
    return pieces;
}

} // namespace ringhold::test
