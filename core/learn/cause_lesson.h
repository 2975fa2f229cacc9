// One lesson by itself, before the causes asked together are weighed against each other.
#pragma once

#include "core/learn/firing_means.h"
#include "core/learn/learning.h"

namespace ringhold {

/// A lesson whose chance and claim are there wherever something could be fitted, whatever the chance is; the
/// verdict is notEnough, with its shortfall, or nothingSeen.
Lesson firingLesson(std::span<const PieceResult> pieces, Cause cause, Judged judged);
/// By differences between the pieces of one firing.
Lesson applicationLesson(std::span<const PieceResult> pieces, Judged judged);
/// By the means of each position in each firing, firings and positions taken apart.
Lesson positionLesson(std::span<const PieceResult> pieces, Judged judged);

} // namespace ringhold
