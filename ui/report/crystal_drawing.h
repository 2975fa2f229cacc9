// A crystal as its firing drew it, ring by ring and to scale.
#pragma once

#include "core/growth/crystal.h"

#include <QPointF>

#include <vector>

class QPainter;

namespace ringhold {

struct Palette;

struct DrawnCrystal {
    SizeRange radius;
    std::vector<CrystalRing> rings; ///< of the likely crystal, from within
};

/// Paints the likely crystal, each ring's low darker than its high; its edge fades out to the radius that it
/// may have at the most, and a dashed circle shows the least. `perMm` is in the painter's units.
void paintCrystal(QPainter& painter, const DrawnCrystal& crystal, QPointF centre, double perMm,
                  const Palette& palette);

} // namespace ringhold
