// Rings backwards: when to move the kiln for a ring that is to lie so far from the crystal's centre.
#pragma once

#include "core/growth/crystal.h"
#include "core/report/words.h"

#include <optional>
#include <string>

namespace ringhold {

/// When the crystal's edge is so far out: at the likely growth rate, and as soon and as late as the rate's
/// range allows. Nothing for what does not come on this curve.
struct RadiusTime {
    double radius_mm = 0;
    std::optional<Instant> earliest;
    std::optional<Instant> likely;
    std::optional<Instant> latest;
};

/// Along the curve that `growth` was made of. The radius must be above 0.
RadiusTime timeOfRadius(const CrystalGrowth& growth, double radius_mm);

/// A short dip in a long hold draws a ring of known time. Measured on the piece it tells the glaze's own
/// growth rate, and when its crystals began.
struct MarkerDip {
    Instant at;
    SizeRange radius; ///< where it would lie
};

/// Where one dip would tell most: at two thirds of the growing time on the curve, so that it is well away
/// from the centre, whose beginning is unsure, and from the edge. Nothing where the likely crystal has less
/// than 3 mm of radius, or where the rate rests on five measured pieces or more already.
std::optional<MarkerDip> markerDip(const CrystalGrowth& growth, Instant end);

/// "A ring at 12 mm: dip at 2 h 50 of growth, 22:40 (20:10 to later than this plan)."
std::string radiusTimeWords(const RadiusTime& time, Instant growthBegan, const WordStyle& style);
/// "A marker dip here, at 21:30, would lie about 9 mm out (2 to 19) and date the crystal."
std::string markerDipWords(const MarkerDip& dip, const WordStyle& style);
/// "The sag at 20:54 lies about 11 mm out (2 to 23): is it to be seen?" `what` is "The sag".
std::string momentWords(const std::string& what, Instant at, const SizeRange& radius, const WordStyle& style);

} // namespace ringhold
