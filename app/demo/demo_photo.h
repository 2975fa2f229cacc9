// Pictures of demo pieces, drawn: nobody took them.
#pragma once

#include "core/base/result.h"
#include "core/firing/ware_records.h"

#include <QImage>

#include <cstdint>

namespace ringhold {

/// A drawn piece on a sheet with a scale of 50 mm: its ground, its crystals, the largest as large as the
/// outcome says. Equal seed, equal picture.
struct DemoPicture {
    QImage image;
    std::array<PhotoPoint, 4> ends; ///< of the scale, then of the largest crystal
};

DemoPicture drawDemoPiece(const Piece& piece, const Outcome& outcome, std::uint64_t seed);

/// The picture as a photo of the book, without ids; failed when the computer can write no JPEG.
Result<Photo> demoPhoto(const DemoPicture& picture, const std::string& caption, Instant taken);

} // namespace ringhold
