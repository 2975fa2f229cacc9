// Looks that do not fit the others, and what each would mean.
#pragma once

#include "core/watch/firing_forecast.h"

#include <vector>

namespace ringhold {

/// A look that is probably wrong by all the others and by what was believed before. It counts in the forecast
/// all the same, as far as it is believed; only the potter strikes it.
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

/// The looks among `looks` that are doubtful in `forecast`, which was made with them; in order of time. Each
/// costs an inference.
std::vector<LookDoubt> doubtfulLooks(const FiringForecast& forecaster, const std::vector<Look>& looks,
                                     const Forecast& forecast, const StepFollower* follower);

} // namespace ringhold
