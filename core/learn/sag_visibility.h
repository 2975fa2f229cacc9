// Which excursions show in a glaze: learned from the potter's answers at unloading.
#pragma once

#include "core/learn/learning.h"

#include <span>

namespace ringhold {

/// "The sag at 20:54 lies about 11 mm out: is it to be seen?"
struct SagAnswer {
    double depth_C = 0; ///< how far the excursion went from the hold, without sign; above 0
    bool seen = false;
};

/// The depth from which excursions show.
struct VisibleBand {
    double likely_C = 0;  ///< one of this depth shows as often as not
    Bounds likely90_C;    ///< wide for few answers
    double offered_C = 0; ///< the half width to alarm on: no more than one in five of this depth shows
    int answers = 0;
    bool told = false; ///< the answers say more than what is believed of any glaze
};

/// The chance to be seen rises with the logarithm of the depth (a probit whose width is learned too); one
/// answer in twenty is taken to be a slip. Believed of any glaze beforehand, as an assumption without source:
/// 6 °C, within a factor of four either way (90 %). By summing over a grid. Answers without depth are left
/// out.
VisibleBand visibleBand(std::span<const SagAnswer> answers);

} // namespace ringhold
