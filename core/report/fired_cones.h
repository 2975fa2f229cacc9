// The model of a whole firing's cones, by all its looks, cold packs among them; and the offsets that it
// files.
#pragma once

#include "core/firing/firing_record.h"
#include "core/watch/firing_forecast.h"

#include <optional>
#include <vector>

namespace ringhold {

/// The packs that the cone table knows, with those of their cones that it knows.
std::vector<Pack> knownPacks(const FiringRecord& record);

struct FiredCones {
    std::vector<Pack> packs; ///< as far as the cone table knows their cones
    std::vector<Look> looks; ///< as far as the model can take them
    std::vector<OffsetPrior> priors;
    Forecast forecast;
};

/// `history` holds what earlier firings filed. Nothing with fewer than two readings, or no pack that is
/// known.
std::optional<FiredCones> firedCones(const FiringRecord& record, const Curve& control,
                                     const std::vector<FiledOffset>& history);

/// What the firing's looks told of its probe by themselves (see toldByLooks; what earlier firings filed has
/// no part in it), one for each pack whose looks told anything: to be filed when it ends, and again after its
/// cold packs are read. Nothing for a firing without a probe, or that has not ended.
std::vector<FiledOffset> offsetsTold(const FiringRecord& record, const Curve& control);

} // namespace ringhold
