#include "core/glaze/zinc.h"

namespace ringhold {

std::optional<RawMaterial> materialOf(const RecipeLine& line) {
    if (line.formula.empty() && line.analysis.empty())
        return std::nullopt;
    auto read =
        line.formula.empty() ? materialFromAnalysis(line.analysis) : materialFromFormula(line.formula);
    return read ? std::optional(std::move(*read)) : std::nullopt;
}

std::optional<bool> holdsZinc(const GlazeCard& card) {
    bool allKnown = !card.recipe.empty();
    for (const auto& line : card.recipe) {
        const auto material = materialOf(line);
        const auto zinc = material ? material->mol_per_g.find("ZnO") : OxideMoles::const_iterator();
        if (material && zinc != material->mol_per_g.end() && zinc->second > 0 && line.percent > 0)
            return true;
        allKnown = allKnown && (material || line.percent == 0);
    }
    return allKnown ? std::optional(false) : std::nullopt;
}

} // namespace ringhold
