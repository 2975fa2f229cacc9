// What a glaze's own crystals tell of its growth, and whether that is enough to reckon with.
#pragma once

#include "core/learn/growth_fit.h"

#include <optional>
#include <span>

namespace ringhold {

struct GlazeGrowth {
    int pieces = 0;                 ///< with something measured
    int firings = 0;                ///< that they came from
    int rings = 0;                  ///< radii among what was measured
    std::optional<GrowthFit> fit{}; ///< nothing while nothing was measured
    bool told = false;              ///< enough to stand in for the published range

    /// The fitted one once it is told, else the published range.
    GrowthRate rate() const;
};

/// What has to be there before a fit stands in for the published range (our own rule, no source): three
/// pieces of two firings, and the best rate known within a factor of three (90 %).
inline constexpr int fewestGrownPieces = 3;
inline constexpr int fewestGrownFirings = 2;
inline constexpr double widestToldRate = 3;

/// Firings without a curve or without crystals are left out.
GlazeGrowth glazeGrowthOf(std::span<const GrownFiring> firings);

} // namespace ringhold
