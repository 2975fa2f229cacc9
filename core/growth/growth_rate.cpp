#include "core/growth/growth_rate.h"

#include <cmath>

namespace ringhold {

namespace {

/// 1 at no distance, a half at `half`, 0 from `end` on.
double bellSide(double distance_C, double half_C, double end_C) {
    if (distance_C >= end_C)
        return 0;
    const auto fall = [end_C](double d_C) { return 1 - (d_C / end_C) * (d_C / end_C); };
    return std::pow(fall(distance_C), std::log(0.5) / std::log(fall(half_C)));
}

} // namespace

double GrowthRate::at_um_per_min(Temperature temperature) const {
    const auto from = [this](Temperature t) { return std::abs((t - window.best).celsius()); };
    const double share = temperature < window.best
                             ? bellSide(from(temperature), from(window.halfCold), from(window.coldest))
                             : bellSide(from(temperature), from(window.halfHot), from(window.hottest));
    return best_um_per_min * share;
}

GrowthRate publishedGrowthRate() {
    const auto C = Temperature::fromCelsius;
    return {.window = {C(950), C(1030), C(1090), C(1130), C(1200)},
            .best_um_per_min = 60,
            .low_um_per_min = 12,
            .high_um_per_min = 125,
            .basis = GrowthBasis::published,
            .pieces = 0};
}

} // namespace ringhold
