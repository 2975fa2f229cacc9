// What the kiln was loaded with before.
#pragma once

#include "core/book/reader.h"

#include <optional>
#include <vector>

namespace ringhold {

struct LastLoad {
    FiringSummary from;
    std::vector<Piece> pieces; ///< as they were set then
};

/// The pieces of the latest firing of the same kiln, begun before that one, that had any.
Result<std::optional<LastLoad>> lastLoad(const BookReader& reader, FiringId before);

} // namespace ringhold
