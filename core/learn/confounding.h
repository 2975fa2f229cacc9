// Causes that went along with one another, so that it cannot be told which of them made the difference.
#pragma once

#include "core/learn/learning.h"

namespace ringhold {

/// The other causes that share at least half of their variance with this one, most first. Firing-wide causes
/// are compared over firings, positions with the pieces' values (less what so many positions share by
/// chance), application and position within firings.
std::vector<Confounder> confoundersOf(std::span<const PieceResult> pieces, Cause cause, Judged judged);

} // namespace ringhold
