// What is learned from: pieces of one glaze, each with what its firing did to it and how it came out.
#pragma once

#include "core/firing/records.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace ringhold {

/// A temperature with the probe's offset taken off, and what is left unsure of that offset.
struct CorrectedTemperature {
    double value_C = 0;
    double ownSd_C = 0;    ///< this firing's own error
    double seriesSd_C = 0; ///< the error that all firings of this probe at this place share
    std::string series{};  ///< names probe and place; temperatures of one series share an error
};

/// Values are of this piece's firing unless said otherwise; what is not known is absent.
struct PieceResult {
    FiringId firing{};
    std::optional<CorrectedTemperature> growthHold{};
    std::optional<double> hold_h{}; ///< how long the growth hold lasted
    std::optional<CorrectedTemperature> peak{};
    std::optional<double> application{}; ///< glaze per area, in the potter's own measure, of this piece
    std::string position{};              ///< where this piece stood; empty when not known
    std::optional<double> largest_mm{};  ///< diameter of the largest crystal
    std::optional<double> gradeRank{};   ///< higher is better
    std::optional<Crystals> crystals{};
};

/// What may have made the difference.
enum class Cause { growthHold, holdTime, peak, application, position };

/// What is judged by. Grade and crystals are ranks, taken as evenly spaced numbers.
enum class Judged { largest, grade, crystals };

/// In °C, hours or the potter's measure of application; nothing for the position.
std::optional<double> causeOf(const PieceResult& piece, Cause cause);
/// In mm or as a rank: none 0, few 1, many 2, covered 3.
std::optional<double> judgedBy(const PieceResult& piece, Judged judged);
/// Whether the cause is one of the whole firing, so that a firing counts once however many pieces it had.
bool isOfFiring(Cause cause);

} // namespace ringhold
