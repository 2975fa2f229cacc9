#include "core/learn/piece_result.h"

namespace ringhold {

namespace {

std::optional<double> valueOf(const std::optional<CorrectedTemperature>& temperature) {
    return temperature ? std::optional(temperature->value_C) : std::nullopt;
}

} // namespace

std::optional<double> causeOf(const PieceResult& piece, Cause cause) {
    switch (cause) {
    case Cause::growthHold:
        return valueOf(piece.growthHold);
    case Cause::holdTime:
        return piece.hold_h;
    case Cause::peak:
        return valueOf(piece.peak);
    case Cause::application:
        return piece.application;
    case Cause::position:
        break;
    }
    return std::nullopt;
}

std::optional<double> judgedBy(const PieceResult& piece, Judged judged) {
    switch (judged) {
    case Judged::largest:
        return piece.largest_mm;
    case Judged::grade:
        return piece.gradeRank;
    case Judged::crystals:
        break;
    }
    return piece.crystals ? std::optional(static_cast<double>(*piece.crystals)) : std::nullopt;
}

bool isOfFiring(Cause cause) {
    return cause != Cause::application && cause != Cause::position;
}

} // namespace ringhold
