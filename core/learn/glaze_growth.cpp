#include "core/learn/glaze_growth.h"

#include <algorithm>
#include <vector>

namespace ringhold {

GrowthRate GlazeGrowth::rate() const {
    return told && fit ? fit->rate() : publishedGrowthRate();
}

GlazeGrowth glazeGrowthOf(std::span<const GrownFiring> firings) {
    std::vector<GrownFiring> measured;
    std::ranges::copy_if(firings, std::back_inserter(measured), [](const GrownFiring& firing) {
        return !firing.curve.empty() && !firing.crystals.empty();
    });
    GlazeGrowth growth;
    growth.firings = static_cast<int>(measured.size());
    for (const auto& firing : measured) {
        growth.pieces += static_cast<int>(firing.crystals.size());
        for (const auto& crystal : firing.crystals)
            growth.rings += static_cast<int>(crystal.rings.size());
    }
    if (auto fit = fitGrowth(measured))
        growth.fit = std::move(*fit);
    if (growth.fit) {
        const auto& rate = growth.fit->rate();
        growth.told = growth.pieces >= fewestGrownPieces && growth.firings >= fewestGrownFirings &&
                      rate.high_um_per_min <= widestToldRate * rate.low_um_per_min;
    }
    return growth;
}

} // namespace ringhold
