// Whether a glaze has zinc in it, from its recipe.
#pragma once

#include "core/glaze/glaze_card.h"

#include <optional>

namespace ringhold {

/// Nothing for a material of which neither formula nor analysis is known, or known in a way that cannot be
/// read.
std::optional<RawMaterial> materialOf(const RecipeLine& line);

/// Whether the glaze has zinc in it, which a reducing flame takes away. Nothing without a recipe, or while
/// one of its materials is unknown and none of the others has any.
std::optional<bool> holdsZinc(const GlazeCard& card);

} // namespace ringhold
