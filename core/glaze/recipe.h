// What a glaze recipe comes to in moles, from the formulas or analyses of its raw materials.
#pragma once

#include "core/base/result.h"

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace ringhold {

/// Moles of oxides, by formula: "SiO2", "ZnO". Also used for moles per gram.
using OxideMoles = std::map<std::string, double, std::less<>>;

/// What one gram of a raw material brings to the fired glaze.
struct RawMaterial {
    OxideMoles mol_per_g;
    double lossShare = 0; ///< of its weight, gone in the firing: water, carbon dioxide, sulphur, halogens
};

/// From a stated formula (core/glaze/formula.h). Each metal counts as the oxide that glaze calculation uses:
/// SiO2, Al2O3, B2O3, P2O5, TiO2, Fe2O3 ...; badInput when none of it stays in the glaze.
Result<RawMaterial> materialFromFormula(std::string_view formula);

struct OxidePercent {
    std::string oxide;  ///< "SiO2"
    double percent = 0; ///< by weight
    bool operator==(const OxidePercent&) const = default;
};

/// From an analysis in percent by weight, as for a frit or a feldspar; what is missing to 100 counts as loss.
/// badInput for an oxide that cannot be read, a percent below 0 or a sum above 102.
Result<RawMaterial> materialFromAnalysis(std::span<const OxidePercent> analysis);

struct RecipePart {
    std::string name;
    double amount = 0;                   ///< by weight, in any unit, at least 0
    bool addition = false;               ///< on top of the hundred, as colourants are
    std::optional<RawMaterial> material; ///< unknown when there is none: then moles cannot be told whole
};

/// A figure of the recipe outside of what is usual. Only a warning: glazes outside of it work too.
enum class RecipeWarning {
    littleSilica, ///< SiO2/ZnO below 2.7 by mole
    muchSilica,   ///< above 3.0
    muchAlumina,  ///< Al2O3 above 0.05 in the unity formula
    stiffAlumina, ///< above 0.15: too stiff for crystals to grow
    noZinc,
};

struct RecipeFigures {
    std::vector<double> percent; ///< of each line; the lines that are no additions come to 100
    OxideMoles moles;            ///< in 100 g of the batch, additions on top
    OxideMoles unity;       ///< the same with the fluxes (R2O and RO, ZnO among them) making 1; empty without
    double lossPercent = 0; ///< of the whole batch, gone in the firing
    std::vector<std::string> unknown;      ///< lines without a material: all ratios are without them
    std::optional<double> silicaToZinc;    ///< SiO2/ZnO by mole
    std::optional<double> aluminaToSilica; ///< Al2O3/SiO2 by mole
    std::optional<double> unityAlumina;    ///< Al2O3 in the unity formula
    /// Against what is usual for crystalline glazes: SiO2/ZnO 2.7 to 3.0, Al2O3 at most 0.05, above 0.15 too
    /// stiff (practice, as told on the Clayart list, 21 January 2003).
    std::vector<RecipeWarning> warnings;
};

/// badInput when there is no line but additions, or an amount is below 0 or not finite.
Result<RecipeFigures> recipeFigures(std::span<const RecipePart> lines);

} // namespace ringhold
