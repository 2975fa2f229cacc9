#include "ui/ware/last_load.h"

#include <algorithm>
#include <ranges>

namespace ringhold {

Result<std::optional<LastLoad>> lastLoad(const BookReader& reader, FiringId before) {
    const auto firings = reader.firings();
    if (!firings)
        return firings.error();
    const auto now = std::ranges::find(*firings, before, &FiringSummary::id);
    // the list is in time order
    for (const auto& earlier : std::ranges::subrange(firings->begin(), now) | std::views::reverse) {
        if (now == firings->end() || earlier.kiln != now->kiln)
            continue;
        auto pieces = reader.pieces(earlier.id);
        if (!pieces)
            return pieces.error();
        if (!pieces->empty())
            return std::optional(LastLoad{earlier, std::move(*pieces)});
    }
    return std::optional<LastLoad>();
}

} // namespace ringhold
