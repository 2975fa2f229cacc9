// What a firing wrote into its crystals: rings and excursions, each at a known time.
#pragma once

#include "core/cones/offset_prior.h"
#include "core/firing/ware_records.h"
#include "core/learn/growth_fit.h"
#include "core/plan/plan.h"
#include "core/watch/ring_count.h"

#include <optional>
#include <span>
#include <vector>

namespace ringhold {

/// A time in which the growth hold left its band, as it may be found again in a crystal.
struct GrowthSag {
    Instant at;                  ///< of the reading farthest from the hold
    TemperatureDifference depth; ///< from the hold's mean: below 0 for a sag, above for a bulge
    Duration length{0};          ///< off the band
};

struct GrowthMarks {
    Curve felt;                  ///< from the peak on: what the glaze felt, the probe's offset taken off
    double offsetSd_C = 0;       ///< how unsure that is at the growth hold
    std::vector<Ring> rings;     ///< that the plan's rings steps drew, from the innermost
    std::vector<GrowthSag> sags; ///< of the growth hold, in time order
};

/// At most the deepest `mostSagsAsked` excursions of 2 min or more are told: as many as a potter will answer
/// for. `offset` is that of the control probe at the cones, found at `offsetAt`. All is empty for an empty
/// curve.
GrowthMarks growthMarksOf(const std::optional<Plan>& plan, const Curve& control, const OffsetPrior& offset,
                          Temperature offsetAt);
inline constexpr std::size_t mostSagsAsked = 6;

/// When a ring's edge was drawn: the kiln turned from the low to the climb back.
Instant turnOf(const Ring& ring);

/// What was measured on a piece, as the fit of its glaze takes it: half the largest diameter, and of the ring
/// radii those whose ring the firing knows. Nothing when neither was. A radius measured without an error is
/// taken to be within 0.3 mm.
std::optional<MeasuredCrystal> measuredCrystal(const GrowthMarks& marks,
                                               const std::optional<double>& largest_mm,
                                               std::span<const RingRadius> radii);

/// How far the firing went from its growth hold at the instant that an answer is about; nothing where the
/// answer is unsure or the firing knows no such excursion.
std::optional<double> sagDepth_C(const GrowthMarks& marks, const SagSeen& answer);

} // namespace ringhold
