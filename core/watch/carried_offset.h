// The offset that cones have told, at a temperature where no cone tells any.
#pragma once

#include "core/cones/forecast.h"
#include "core/firing/records.h"

#include <optional>

namespace ringhold {

/// Carried (see carriedTo) from where the pack's middle cone goes down at 60 °C/h. Nothing when the table
/// does not have that cone.
std::optional<OffsetPrior> carriedOffset(const Pack& pack, const PackForecast& told, Temperature to);

} // namespace ringhold
