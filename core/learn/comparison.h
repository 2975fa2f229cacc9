// Firings side by side: curves laid over each other, and the differences that matter.
#pragma once

#include "core/cones/offset_prior.h"
#include "core/learn/firing_energy.h"
#include "core/learn/firing_figures.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace ringhold {

/// As many as one can tell apart.
inline constexpr std::size_t mostCompared = 20;

/// Which moment of the firings is laid on one another.
enum class AlignAt { start, coneDown, growthHold };

/// That moment of a firing: its first reading, the look that found the firing cone down, the growth hold's
/// begin. Nothing when the firing has none.
std::optional<Instant> momentOf(const FiringFigures& figures, const Curve& control, AlignAt align);

struct ComparedFiring {
    const FiringRecord* record = nullptr; ///< must outlive the call
    Curve control;                        ///< as the control probe read
    /// What the control probe reads above what the cones feel, at the cones; nothing when it is not known.
    std::optional<OffsetPrior> offset;
    std::optional<Temperature> offsetAt; ///< where that was found; about the peak without it
    /// What is worked out already; without them the record is asked.
    const FiringFigures* figures = nullptr;
    std::optional<KnownEnergy> energy{};
};

enum class Figure {
    peak_C,
    nearPeak_min, ///< spent less than 10 °C below the peak
    lastClimb_C_per_h,
    growthHold_C, ///< mean
    growthHoldSd_C,
    growthHold_h,
    rings,
    coneHour, ///< of the firing cone, from the cold pack, or the last look through the spyhole
    energy_kWh,
    largest_mm, ///< the largest crystal of the firing
    typical_mm, ///< the mean over the pieces of their largest
    pieces,
};

struct FigureValue {
    double value = 0;
    std::optional<double> sd{};           ///< of temperatures whose offset was taken off
    std::optional<EnergySource> source{}; ///< of an energy
};

struct FigureRow {
    Figure figure = Figure::peak_C;
    std::vector<std::optional<FigureValue>> values; ///< in the order of the firings
    /// By how much the largest and the least differ, and whether that is enough to look at (our own
    /// thresholds, no source: 3 °C, 3 min, 10 °C/h, sd 1 °C, 15 min, one ring, half an hour of the cone, 5 %
    /// of energy, a fifth of size).
    double spread = 0;
    bool matters = false;
    /// False when temperatures are of different probes, and not all have their offset taken off: then nothing
    /// is to be concluded from the row.
    bool comparable = true;
};

struct Comparison {
    std::vector<FigureRow> rows; ///< those for which at least one firing has a value
    bool corrected = false;      ///< the probes' offsets are taken off the temperatures
};

/// The table of up to mostCompared firings, further ones left out. Offsets are taken off only if all firings
/// have one.
Comparison compare(std::span<const ComparedFiring> firings);

} // namespace ringhold
