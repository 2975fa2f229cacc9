// A kiln that runs out of power: its climb dies away towards a ceiling.
#pragma once

#include "core/cones/future_temperature.h"
#include "core/cones/interval.h"

#include <optional>
#include <vector>

namespace ringhold {

/// One way in which the climb may die away: rate and distance to the ceiling shrink together.
struct LevellingCase {
    double weight;
    Temperature now;
    Rate rate; ///< now; above 0
    Temperature ceiling;
};

struct Levelling {
    double probability =
        0; ///< that it levels off; else the climb goes on as shown, or after a change of rate
    Interval<Temperature> ceiling;    ///< if it does
    std::vector<LevellingCase> cases; ///< weights sum to 1
};

/// From this probability on a kiln is said to level off.
inline constexpr double levelsOffSurely = 0.9;

/// What the last two hours of the curve say, from `since` on (as the plan changes the rate there): three
/// courses are weighed against each other by their likelihood, averaged over their unknowns on a grid. The
/// rate stays; it changed once, at some instant (a sag, a stall, a step of the controller); or from some
/// instant on it falls exponentially, by the factor e in 0.6 to 6.4 h, as that of a kiln at full power does,
/// whose chamber and brick lose the more the hotter they are (two-node kiln: about 2 h). Priors 0.6, 0.2 and
/// 0.2 are assumptions. Two-minute means, wobble of 0.25 °C allowed for, likeness of neighbours by counting
/// each for a half. Nothing for less than 30 min or eight means, or a kiln that does not climb.
std::optional<Levelling> levellingShown(const Curve& curve, std::optional<Instant> since = std::nullopt);

/// From the last reading on along that case to the forecast's horizon, but no higher than `top`.
Curve levellingCurve(const LevellingCase& levelling, Instant now, std::optional<Temperature> top);

/// Where the climb levels off before it is where it is wanted, with all but certainty: then no forecast for
/// there is honest. `wanted` is what the plan climbs to; the ceiling's 95 % point must lie below it by 3 °C,
/// for a controller that arrives at its set point levels off too.
bool levelsOffBelow(const Levelling& levelling, Temperature wanted);

} // namespace ringhold
