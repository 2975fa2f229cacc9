// What is believed of the probe's offset before anyone looks.
#pragma once

#include "core/thermocouple/thermocouple_type.h"
#include "core/units/temperature.h"

#include <optional>
#include <span>

namespace ringhold {

/// A normal belief about the offset (probe minus what the cones feel) at one place in the kiln.
struct OffsetPrior {
    TemperatureDifference mean;
    TemperatureDifference sd;
    int firings = 0; ///< that it rests on; 0: a new kiln, probe or place
};

/// For a probe without history: the probe's tolerance limit over the square root of 3, 2 °C for the cone and
/// 8 °C for place and age, in quadrature (design 4.2; the 8 °C are an assumption).
OffsetPrior newProbePrior(TemperatureDifference toleranceLimit);

/// The same for a thermocouple of IEC 60584-1 class 2 at that temperature, the limit carried on above its
/// range.
OffsetPrior newProbePrior(ThermocoupleType type, Temperature at);

/// What one earlier firing told of the offset.
struct OffsetFound {
    TemperatureDifference mean;
    TemperatureDifference sd;
};

/// What a firing's looks told by themselves: the prior that they were inferred with taken out again, both
/// taken as normal. Filing what is left keeps a prior made of earlier firings from being counted twice.
/// Nothing where the looks told next to nothing (the posterior's sd is above 95 % of the prior's).
std::optional<OffsetFound> toldByLooks(const OffsetPrior& prior, const OffsetFound& posterior);

/// From this kiln's earlier firings with this probe at this place, oldest first: a Kalman filter (R. E.
/// Kalman, Journal of Basic Engineering 82, 1960, 35) for an offset that wanders slowly (sd 0.5 °C from
/// firing to firing) and is met each time with a scatter of its own (sd 2 °C). Starts from `fresh`, so that
/// few firings leave it wide and many make it narrow.
OffsetPrior priorFromHistory(std::span<const OffsetFound> found, const OffsetPrior& fresh);

/// The offset at another temperature, as at the growth hold where no cone tells it: scaled with the
/// temperature in °C, and wider by 2 °C for each 100 °C away (an assumption).
OffsetPrior carriedTo(Temperature to, const OffsetPrior& atCones, Temperature from);

} // namespace ringhold
