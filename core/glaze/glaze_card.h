// What a potter knows of one glaze: how to mix it, how to fire it, what its crystals do.
#pragma once

#include "core/glaze/recipe.h"
#include "core/units/temperature.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace ringhold {

enum class GlazeCardId : std::int64_t {};

/// Between two temperatures the crystals take a certain shape.
struct HabitBand {
    Temperature low;
    Temperature high;
    std::string word; ///< "bars", "fans"
    bool operator==(const HabitBand&) const = default;
};

/// One line of a recipe, with what is known of the material: a formula, or an analysis, or nothing.
struct RecipeLine {
    std::string material;
    double percent = 0;    ///< of the batch by weight, at least 0
    bool addition = false; ///< on top of the hundred, as colourants are
    std::optional<double> batch_g{};
    std::string formula{};                ///< as core/glaze/formula.h reads it; may be empty
    std::vector<OxidePercent> analysis{}; ///< counts only without a formula
    bool operator==(const RecipeLine&) const = default;
};

struct GlazeCard {
    GlazeCardId id{};
    std::string name;   ///< unique in the book, large and small letters being the same
    std::string cone{}; ///< that it is fired to; may be empty
    std::optional<Temperature> top{};
    std::string running{};                ///< how it runs, in words
    std::optional<Temperature> growLow{}; ///< between these its crystals grow
    std::optional<Temperature> growHigh{};
    std::string colourTemperatures{}; ///< which colour comes at which temperature, in words
    std::vector<HabitBand> habits{};
    std::string application{}; ///< how thick and how, in words
    std::vector<RecipeLine> recipe{};
    std::string notes{};
    bool operator==(const GlazeCard&) const = default;
};

/// The glazes that a piece names, in the order written: parted by "+", "," or ";".
std::vector<std::string> glazeNames(std::string_view piecesGlaze);

} // namespace ringhold
