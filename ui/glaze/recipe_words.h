// What a recipe comes to, in words.
#pragma once

#include "core/base/result.h"
#include "core/glaze/glaze_card.h"

#include <QString>

namespace ringhold {

struct RecipeTold {
    QString figures;  ///< "100 % and 3 % on top. SiO2 to ZnO 2.8 by mole ..."
    QString warnings; ///< outside of what is usual, said to be practice; empty when nothing is
};

RecipeTold tellRecipe(const std::vector<RecipeLine>& lines);

} // namespace ringhold
