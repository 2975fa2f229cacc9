// What is found out about a piece once it is out of the kiln: photos, what was measured on them, rings, sags.
#pragma once

#include "core/firing/records.h"

#include <array>

namespace ringhold {

enum class PhotoId : std::int64_t {};
enum class PhotoMeasureId : std::int64_t {};

/// The most bytes that a photo in the book may have.
inline constexpr std::size_t largestJpeg = 4'000'000;

/// One photo of a piece, turned right and scaled down already.
struct Photo {
    PhotoId id{};
    PieceId piece{};
    std::optional<Instant> taken;
    int width = 0; ///< in pixels, above 0
    int height = 0;
    std::string caption;
    std::string jpeg{}; ///< the picture's bytes; empty where photos are only listed
    bool operator==(const Photo&) const = default;
};

/// On a photo, as shares of its width and height from the top left corner.
struct PhotoPoint {
    double x = 0;
    double y = 0;
    bool operator==(const PhotoPoint&) const = default;
};

/// A length measured on a photo against one that is known.
struct PhotoMeasure {
    PhotoMeasureId id{};
    PhotoId photo{};
    std::string what;    ///< "largest crystal"
    double known_mm = 0; ///< of the known length, above 0
    double measured_mm = 0;
    double error_mm = 0; ///< one standard deviation
    /// The ends of the known length, then of the measured one.
    std::optional<std::array<PhotoPoint, 4>> ends{};
    bool operator==(const PhotoMeasure&) const = default;
};

/// How far out a ring lies in a piece's crystals.
struct RingRadius {
    PieceId piece{};
    int ring = 0; ///< counted from the innermost, which is 0
    double radius_mm = 0;
    double sd_mm = 0; ///< one standard deviation
    bool operator==(const RingRadius&) const = default;
};

enum class SagSight { yes, no, unsure };

/// The answer to "the sag at that time lies about there: is it to be seen?"
struct SagSeen {
    PieceId piece{};
    Instant at; ///< of the sag's lowest (or the bulge's highest) reading
    SagSight seen = SagSight::unsure;
    std::optional<double> radius_mm{}; ///< where it was thought to lie when the question was put
    bool operator==(const SagSeen&) const = default;
};

} // namespace ringhold
