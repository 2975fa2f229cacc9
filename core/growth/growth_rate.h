// How fast crystals grow at a temperature.
#pragma once

#include "core/units/temperature.h"

namespace ringhold {

/// Where a growth rate comes from; to be said beside every figure reckoned with it.
enum class GrowthBasis {
    published, ///< the range of published growth rates, whatever glaze is meant
    measured   ///< fitted to crystals of this glaze
};

/// The bell of u(T): diffusion-limited on the cold side, interface-limited on the hot one, hence not
/// symmetric (the shape: J. Chinese Ceram. Soc. 42, 2014, 1571). In rising order.
struct GrowthWindow {
    Temperature coldest;  ///< no growth from here down
    Temperature halfCold; ///< half the best rate
    Temperature best;
    Temperature halfHot;
    Temperature hottest; ///< no growth from here up
};

/// u(T), the speed of a crystal's edge: radial, so that the diameter grows twice as fast. On each side of the
/// best temperature u = best (1 - s²)^n, s being the share of the way to where growth ends and n what makes
/// it a half at the half point.
struct GrowthRate {
    GrowthWindow window;
    double best_um_per_min = 0; ///< at window.best
    double low_um_per_min = 0;  ///< the best rate as it may be at the least,
    double high_um_per_min = 0; ///< and at the most
    GrowthBasis basis = GrowthBasis::published;
    int pieces = 0; ///< measured ones that it rests on

    double at_um_per_min(Temperature temperature) const;
};

/// Until a glaze has its own: an assumption. 60 µm/min at 1090 °C, half of that at 1030 and 1130, none below
/// 950 or above 1200; somewhere between 12 and 125 µm/min, the range reckoned from published sizes (1 to 1.5
/// cm of diameter an hour: Shimbo, Crystal Glazes 2, p. 63; 0.5 to 1.5 cm after 3.5 h: MA thesis, Eastern
/// Illinois University, 1978). Glazes differ by 20 °C and more.
GrowthRate publishedGrowthRate();

} // namespace ringhold
