// How well the heat-work law fits a cone's published end points, in words.
#pragma once

#include "core/cones/cone_table.h"
#include "core/report/words.h"

#include <string>
#include <vector>

namespace ringhold {

/// "cone 9: the model is within 2 °C of the chart at 15, 60 and 150 °C/h", by the fit's own residuals,
/// rounded up; of a cone with fewer than three rates, that nothing tests the law, and where its pace comes
/// from.
std::string modelFitWords(const Cone& cone, const WordStyle& style);

/// The same for the cones of a pack in one sentence, those of the table: "The model is within 2 °C of the
/// chart for cones 8, 9 and 10, at 15 to 150 °C/h." Empty when none is in the table.
std::string modelFitWords(const std::vector<std::string>& cones, ConeType type, const WordStyle& style);

} // namespace ringhold
