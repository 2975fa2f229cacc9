#include "core/glaze/recipe.h"

#include "core/glaze/formula.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace ringhold {

namespace {

/// The oxide as which an element is counted in a fired glaze.
struct GlazeOxide {
    std::string_view element;
    std::string_view oxide;
    double atoms; ///< of the element in one
    bool flux;    ///< R2O or RO
};

constexpr auto oxides = std::to_array<GlazeOxide>({
    {"Li", "Li2O", 2, true},   {"Na", "Na2O", 2, true},   {"K", "K2O", 2, true},
    {"Rb", "Rb2O", 2, true},   {"Mg", "MgO", 1, true},    {"Ca", "CaO", 1, true},
    {"Sr", "SrO", 1, true},    {"Ba", "BaO", 1, true},    {"Zn", "ZnO", 1, true},
    {"Pb", "PbO", 1, true},    {"Be", "BeO", 1, true},    {"Cd", "CdO", 1, true},
    {"Mn", "MnO", 1, true},    {"Co", "CoO", 1, true},    {"Ni", "NiO", 1, true},
    {"Cu", "CuO", 1, true},    {"Al", "Al2O3", 2, false}, {"B", "B2O3", 2, false},
    {"Fe", "Fe2O3", 2, false}, {"Cr", "Cr2O3", 2, false}, {"Si", "SiO2", 1, false},
    {"Ti", "TiO2", 1, false},  {"Zr", "ZrO2", 1, false},  {"Sn", "SnO2", 1, false},
    {"P", "P2O5", 2, false},   {"V", "V2O5", 2, false},   {"W", "WO3", 1, false},
    {"Mo", "MoO3", 1, false},  {"Nb", "Nb2O5", 2, false}, {"Ce", "CeO2", 1, false},
    {"Nd", "Nd2O3", 2, false}, {"Pr", "Pr2O3", 2, false}, {"Er", "Er2O3", 2, false},
    {"La", "La2O3", 2, false}, {"Y", "Y2O3", 2, false},   {"Sb", "Sb2O3", 2, false},
    {"Bi", "Bi2O3", 2, false}, {"As", "As2O3", 2, false}, {"Ag", "Ag2O", 2, false},
});

constexpr double leastSilicaToZinc = 2.7;
constexpr double mostSilicaToZinc = 3.0;
constexpr double goodAlumina = 0.05;
constexpr double stiffAlumina = 0.15;

double massOf(std::string_view oxide) {
    const auto counts = parseFormula(oxide);
    return counts ? molarMass(*counts) : 0;
}

/// What stays of one mole.
OxideMoles oxidesOf(const ElementCounts& counts) {
    OxideMoles moles;
    for (const auto& oxide : oxides)
        if (const auto found = counts.find(oxide.element); found != counts.end())
            moles[std::string(oxide.oxide)] += found->second / oxide.atoms;
    return moles;
}

double massOf(const OxideMoles& moles) {
    double mass = 0;
    for (const auto& [oxide, count] : moles)
        mass += count * massOf(oxide);
    return mass;
}

double amountOf(const OxideMoles& moles, std::string_view oxide) {
    const auto found = moles.find(oxide);
    return found == moles.end() ? 0 : found->second;
}

std::optional<double> ratio(double above, double below) {
    return below > 0 ? std::optional(above / below) : std::nullopt;
}

OxideMoles unityOf(const OxideMoles& moles) {
    double fluxes = 0;
    for (const auto& oxide : oxides)
        fluxes += oxide.flux ? amountOf(moles, oxide.oxide) : 0;
    OxideMoles unity;
    if (fluxes > 0)
        for (const auto& [oxide, count] : moles)
            unity[oxide] = count / fluxes;
    return unity;
}

void judge(RecipeFigures& figures) {
    const double zinc = amountOf(figures.moles, "ZnO");
    const double silica = amountOf(figures.moles, "SiO2");
    const double alumina = amountOf(figures.moles, "Al2O3");
    figures.silicaToZinc = ratio(silica, zinc);
    figures.aluminaToSilica = ratio(alumina, silica);
    if (!figures.unity.empty())
        figures.unityAlumina = amountOf(figures.unity, "Al2O3");
    auto& warnings = figures.warnings;
    if (zinc <= 0)
        warnings.push_back(RecipeWarning::noZinc);
    if (figures.silicaToZinc && *figures.silicaToZinc < leastSilicaToZinc)
        warnings.push_back(RecipeWarning::littleSilica);
    if (figures.silicaToZinc && *figures.silicaToZinc > mostSilicaToZinc)
        warnings.push_back(RecipeWarning::muchSilica);
    if (figures.unityAlumina && *figures.unityAlumina > goodAlumina)
        warnings.push_back(*figures.unityAlumina > stiffAlumina ? RecipeWarning::stiffAlumina
                                                                : RecipeWarning::muchAlumina);
}

} // namespace

Result<RawMaterial> materialFromFormula(std::string_view formula) {
    const auto counts = parseFormula(formula);
    if (!counts)
        return counts.error();
    const double whole = molarMass(*counts);
    RawMaterial material;
    const OxideMoles stays = oxidesOf(*counts);
    if (stays.empty())
        return Error{ErrorKind::badInput, "nothing of " + std::string(formula) + " stays in a glaze"};
    for (const auto& [oxide, moles] : stays)
        material.mol_per_g[oxide] = moles / whole;
    // A metal takes up oxygen where its formula has less: then there is no loss to tell.
    material.lossShare = std::max(0.0, 1 - massOf(stays) / whole);
    return material;
}

Result<RawMaterial> materialFromAnalysis(std::span<const OxidePercent> analysis) {
    RawMaterial material;
    double sum = 0;
    for (const auto& [oxide, percent] : analysis) {
        const auto counts = parseFormula(oxide);
        if (!counts)
            return counts.error();
        if (!(percent >= 0) || !std::isfinite(percent))
            return Error{ErrorKind::badInput, "a share below 0 of " + oxide};
        sum += percent;
        const double mass = molarMass(*counts);
        for (const auto& [counted, moles] : oxidesOf(*counts))
            material.mol_per_g[counted] += moles * percent / 100 / mass;
    }
    constexpr double most = 102; // analyses are rounded
    if (sum > most || material.mol_per_g.empty())
        return Error{ErrorKind::badInput, "an analysis wants oxides of about 100 percent together"};
    material.lossShare = std::max(0.0, 1 - massOf(material.mol_per_g));
    return material;
}

Result<RecipeFigures> recipeFigures(std::span<const RecipePart> lines) {
    double base = 0;
    double whole = 0;
    for (const auto& line : lines) {
        if (!(line.amount >= 0) || !std::isfinite(line.amount))
            return Error{ErrorKind::badInput, "an amount below 0 of " + line.name};
        base += line.addition ? 0 : line.amount;
        whole += line.amount;
    }
    if (base <= 0)
        return Error{ErrorKind::badInput, "a recipe wants something beside additions"};
    RecipeFigures figures;
    for (const auto& line : lines) {
        const double percent = line.amount / base * 100;
        figures.percent.push_back(percent);
        if (!line.material) {
            figures.unknown.push_back(line.name);
            continue;
        }
        for (const auto& [oxide, mol_per_g] : line.material->mol_per_g)
            figures.moles[oxide] += mol_per_g * percent;
        figures.lossPercent += line.material->lossShare * line.amount / whole * 100;
    }
    figures.unity = unityOf(figures.moles);
    judge(figures);
    return figures;
}

} // namespace ringhold
