// What stands in a demo firing and what comes out of it, by a stated model.
#pragma once

#include "app/demo/demo_studio.h"
#include "core/firing/ware_records.h"
#include "core/kiln/chance.h"
#include "core/units/curve.h"
#include "core/watch/ring_count.h"

#include <optional>
#include <vector>

namespace ringhold {

/// A piece with what only the demo knows of it.
struct DemoPiece {
    Piece piece;
    std::size_t glaze = 0;
    std::size_t shelf = 0;
};

/// Two to three pieces of each glaze on every shelf; saggers where there is a flame.
std::vector<DemoPiece> demoLoad(const DemoStudio& studio, const DemoFiring& firing, Chance& chance);

/// What the kiln did, in the truth that the practice kiln knows.
struct DemoCourse {
    Curve felt;              ///< by ware on the middle shelf
    std::vector<Ring> rings; ///< counted from what the probe read
    bool reduced = false;    ///< zinc was lost
};

struct DemoFound {
    Outcome outcome;
    std::vector<RingRadius> rings; ///< measured with a ruler, on the pieces that show them best
};

/// The model. A crystal grows as core/growth reckons with the glaze's own rate along what its shelf felt,
/// times a factor of its own (sd 12 %). The hotter the peak above clearFrom, the fewer seeds are left: their
/// number falls by e for each 5 °C. The glaze runs 1 mm for each 1.5 °C above runsFrom, times its thickness
/// over 0.1 g/cm². Rings of crystals above 8 mm are counted right four times in five, else one too few. A
/// reducing flame takes the crystals' half and makes the glaze dull. Grades: A above 24 mm, clean and without
/// a fault; C below 9 mm or with a grave one; else B.
DemoFound demoOutcome(const DemoPiece& piece, const DemoStudio& studio, const DemoFiring& firing,
                      const DemoCourse& course, Chance& chance);

/// "Is it to be seen?" for an excursion of that depth: yes by a probit in ln(depth/shows) with a width of
/// 0.35, unsure in one answer of ten.
SagSight demoSight(double depth_C, const DemoGlaze& glaze, Chance& chance);

} // namespace ringhold
