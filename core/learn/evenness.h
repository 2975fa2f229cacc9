// How even the kiln was, told by the cold cone packs of its shelves.
#pragma once

#include "core/cones/cone.h"
#include "core/learn/regression.h"
#include "core/units/curve.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace ringhold {

/// A pack as it stood after the firing.
struct ColdPack {
    std::string place;
    ConeType type = ConeType::selfSupporting;
    struct ColdCone {
        std::string cone;
        double hour = 0; ///< 0 standing, halves, 6 down
    };
    std::vector<ColdCone> cones;
};

/// The heat of a place in degrees: how much hotter or cooler the same firing would have had to be all over to
/// leave the mean of the places with this pack.
struct PlaceHeat {
    std::string place;
    Estimate relative_C; ///< to the mean of the places that could be told
    bool told =
        true; ///< false when all its cones stood or all were down: it was below, or above, what they tell
};

struct Evenness {
    std::vector<PlaceHeat> places; ///< hottest first; those that are not told last, their figures 0
    std::optional<Estimate>
        spread_C; ///< from the coolest to the hottest; of two places that are told at least
};

/// Each pack's offset is inferred from its cones along the control curve as in core/cones/offset_posterior.h,
/// with next to nothing believed before; a difference between two places is free of the probe's own error.
/// The cones' own deviations (about 2 °C each) and reading errors are in the sd. badInput for an unknown
/// cone, an hour that is none, an empty curve.
Result<Evenness> evennessOf(const Curve& control, std::span<const ColdPack> packs);

} // namespace ringhold
