#include "core/learn/known_offset.h"

#include <vector>

namespace ringhold {

namespace {

constexpr double firingScatter_C = 2; ///< of an offset from firing to firing, as priorFromHistory takes it

} // namespace

KnownOffset knownOffset(std::span<const FiledOffset> filed, FiringId firing, const Probe& probe,
                        Temperature at) {
    std::vector<OffsetFound> others;
    std::string place;
    for (const auto& offset : filed) {
        if (offset.probe != probe.id)
            continue;
        if (offset.firing == firing)
            return {{offset.mean, offset.sd, 1}, offset.sd.celsius(), offset.place};
        if (place.empty())
            place = offset.place;
        if (offset.place == place)
            others.push_back({offset.mean, offset.sd});
    }
    return {priorFromHistory(others, newProbePrior(probe.type, at)), firingScatter_C, place};
}

} // namespace ringhold
