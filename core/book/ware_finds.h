// What the book keeps of pieces once they are out of the kiln: photos, what was measured on them, rings,
// sags.
#pragma once

#include "core/base/result.h"
#include "core/firing/ware_records.h"

#include <optional>
#include <vector>

namespace ringhold {

class Book;

/// A piece with all that hangs on it: what is kept in hand to take its removal back.
struct WholePiece {
    Piece piece;
    std::optional<Outcome> outcome{};
    std::vector<Photo> photos{}; ///< with their pictures
    std::vector<PhotoMeasure> measures{};
    std::vector<RingRadius> rings{};
    std::vector<SagSeen> sags{};
};

/// Reads and writes in an open book, under the rules of BookReader and BookWriter.
class WareFinds {
  public:
    explicit WareFinds(const Book& book) : m_book(&book) {}

    Result<WholePiece> whole(PieceId piece) const;
    /// Puts a removed piece back with all that hung on it, under the old ids.
    Status restore(const WholePiece& piece);

    Result<std::vector<Photo>> photos(PieceId piece) const; ///< without their pictures
    Result<std::string> picture(PhotoId photo) const;       ///< JPEG
    Result<std::vector<PhotoMeasure>> measures(PhotoId photo) const;
    Result<std::vector<RingRadius>> rings(PieceId piece) const; ///< from the innermost
    Result<std::vector<SagSeen>> sags(PieceId piece) const;     ///< in time order
    /// Every answer about pieces whose glaze is called that, whatever the firing, in time order.
    Result<std::vector<SagSeen>> sagsOfGlaze(std::string_view glaze) const;

    /// badInput: no JPEG, or one of more than largestJpeg bytes.
    Result<PhotoId> add(const Photo& photo);
    Status alter(const Photo& photo); ///< its caption, when it was taken and what it is of; not its picture
    Status remove(PhotoId photo);     ///< with what was measured on it
    Status restore(const Photo& photo);

    Result<PhotoMeasureId> add(const PhotoMeasure& measure);
    Status remove(PhotoMeasureId measure);
    Status restore(const PhotoMeasure& measure);

    Status set(const RingRadius& radius); ///< one for each piece and ring; an earlier one is replaced
    Status removeRing(PieceId piece, int ring);
    Status set(const SagSeen& answer); ///< one for each piece and instant; an earlier one is replaced
    Status removeSag(PieceId piece, Instant at);

  private:
    const Book* m_book;
};

} // namespace ringhold
