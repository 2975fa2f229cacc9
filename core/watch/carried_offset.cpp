#include "core/watch/carried_offset.h"

#include "core/cones/cone_table.h"

namespace ringhold {

namespace {

const Rate chartedRate = Rate::fromCelsiusPerHour(60);

} // namespace

std::optional<OffsetPrior> carriedOffset(const Pack& pack, const PackForecast& told, Temperature to) {
    if (pack.cones.empty())
        return std::nullopt;
    const Cone* cone = ConeTable::builtIn().find(pack.cones[pack.cones.size() / 2], pack.type);
    if (!cone)
        return std::nullopt;
    return carriedTo(to, {told.offsetMean, told.offsetSd, 0}, cone->law.endPoint(chartedRate));
}

} // namespace ringhold
