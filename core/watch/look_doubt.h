// Looks that do not fit the others, and what each would mean.
#pragma once

#include "core/watch/firing_forecast.h"

#include <vector>

namespace ringhold {

/// A look that is probably wrong by all the others and by what was believed before, or that says a cone is
/// not down which by an earlier look or the model was: one of them is wrong. It counts in the forecast all
/// the same, as far as it is believed; only the potter strikes it.
struct LookDoubt {
    Look look;
    double probability = 0;      ///< that it is wrong
    std::size_t pack = 0;        ///< by the forecast's order
    TemperatureDifference meant; ///< what the offset would have to be for the cone to point there then
    PackForecast byTheRest;      ///< without it
};

/// The offset (probe minus what the cone feels) for which the law has the cone at the look's hour at its
/// instant; for a look that saw it standing or down, the one at which it begins or ends to bend. To 0.1 °C,
/// within 200 °C.
TemperatureDifference offsetMeant(const Look& look, ConeType type, const Curve& curve);

/// From this probability on a look is pointed out.
inline constexpr double doubtful = 0.5;

/// The places, in the order of wrongLook, of a pack's looks that do not fit: those probably wrong, and the
/// newest at a cone that the forecast has as contradicted by it. `its` are the pack's looks that count, in
/// that order.
std::vector<std::size_t> looksNotFitting(const PackForecast& pack, const std::vector<Look>& its);

/// Those of all looks that count for a pack, in the order of its wrongLook.
std::vector<Look> looksThatCount(const std::vector<Look>& looks, PackId pack);

/// The looks among `looks` that do not fit in `forecast`, which was made with them; in order of time. Each
/// costs an inference.
std::vector<LookDoubt> doubtfulLooks(const FiringForecast& forecaster, const std::vector<Look>& looks,
                                     const Forecast& forecast, const StepFollower* follower);

} // namespace ringhold
