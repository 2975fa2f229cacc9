#include "core/glaze/formula.h"
#include "core/glaze/recipe.h"
#include "core/glaze/zinc.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

struct Mass {
    const char* formula;
    double g_per_mol; ///< summed by hand from the atomic weights
};

class Formulas : public testing::TestWithParam<Mass> {};

TEST_P(Formulas, Weigh) {
    const auto counts = parseFormula(GetParam().formula);
    ASSERT_TRUE(counts) << counts.error().text();
    EXPECT_NEAR(molarMass(*counts), GetParam().g_per_mol, 1e-6);
}

INSTANTIATE_TEST_SUITE_P(
    Glaze, Formulas,
    testing::Values(Mass{"ZnO", 81.379},               // 65.38 + 15.999
                    Mass{"SiO2", 60.083},              // 28.085 + 31.998
                    Mass{"CaCO3", 100.086},            // 40.078 + 12.011 + 47.997
                    Mass{"Al2Si2O5(OH)4", 258.157},    // 53.964 + 56.170 + 143.991 + 4.032
                    Mass{"Al2O3.2SiO2.2H2O", 258.157}, // the same, the old way of writing
                    Mass{"Al2O3\u00b72SiO2\u00b72H2O", 258.157},
                    Mass{"K2O * Al2O3 * 6SiO2", 556.654},                  // 94.195 + 101.961 + 360.498
                    Mass{"KAlSi3O8", 278.327},                             // half of it
                    Mass{"0.7 Na2O + 0.3CaO, 0.2Al2O3.2.5SiO2", 230.8081}, // 43.3853+16.8231+20.3922+150.2075
                    Mass{"Mg3(Si2O5)2(OH)2", 379.259}, // 72.915 + 112.340 + 191.988 + 2.016
                    Mass{"Na0.5K0.5", 31.044}));

class BadFormulas : public testing::TestWithParam<const char*> {};

TEST_P(BadFormulas, AreRefused) {
    EXPECT_FALSE(parseFormula(GetParam()));
}

INSTANTIATE_TEST_SUITE_P(Glaze, BadFormulas,
                         testing::Values("", " ", "Xx", "zno", "Al2O3)", "(Al2O3", "()", "2", "2 2", "O0",
                                         "Si-O2", "((((((SiO2))))))", "ZnO 0", "0ZnO", "\xc2"));

TEST(Formula, KnowsNoOtherElements) {
    EXPECT_FALSE(atomicWeight("Xe"));
    EXPECT_DOUBLE_EQ(*atomicWeight("Zn"), 65.38);
}

TEST(RawMaterial, LosesWhatIsNoOxide) {
    const auto kaolin = materialFromFormula("Al2Si2O5(OH)4").value();
    EXPECT_NEAR(kaolin.lossShare, 2 * 18.015 / 258.157, 1e-9);
    EXPECT_NEAR(kaolin.mol_per_g.at("SiO2"), 2 / 258.157, 1e-12);
    EXPECT_NEAR(kaolin.mol_per_g.at("Al2O3"), 1 / 258.157, 1e-12);
    const auto whiting = materialFromFormula("CaCO3").value();
    EXPECT_NEAR(whiting.lossShare, 44.009 / 100.086, 1e-9);
    EXPECT_FALSE(materialFromFormula("H2O"));
    EXPECT_EQ(materialFromFormula("Si").value().lossShare, 0) << "takes up oxygen";
}

TEST(RawMaterial, FromAnalysis) {
    const std::vector<OxidePercent> frit{{"SiO2", 60.083}, {"Na2O", 30}, {"Al2O3", 5}};
    const auto material = materialFromAnalysis(frit).value();
    EXPECT_NEAR(material.mol_per_g.at("SiO2"), 0.01, 1e-12);
    EXPECT_NEAR(material.lossShare, 1 - 0.95083, 1e-9);
    EXPECT_FALSE(materialFromAnalysis(std::vector<OxidePercent>{{"SiO2", 90}, {"Na2O", 30}}));
    EXPECT_FALSE(materialFromAnalysis(std::vector<OxidePercent>{{"SiO2", -1}}));
    EXPECT_FALSE(materialFromAnalysis({}));
}

RecipePart part(const char* name, double amount, const char* formula, bool addition = false) {
    return {name, amount, addition,
            formula ? std::optional(materialFromFormula(formula).value()) : std::nullopt};
}

// Frit 50, ZnO 25, SiO2 25 by weight. By hand: 50 / 230.8081 = 0.216630 mol of the frit, with 2.5 SiO2 and
// 0.2 Al2O3 each; 25 / 60.083 = 0.416091 mol SiO2, 25 / 81.379 = 0.307205 mol ZnO.
TEST(Recipe, ComesToMoles) {
    const std::vector<RecipePart> lines{part("frit", 500, "0.7Na2O+0.3CaO+0.2Al2O3+2.5SiO2"),
                                        part("zinc", 250, "ZnO"), part("flint", 250, "SiO2"),
                                        part("copper carbonate", 20, "CuCO3", true)};
    const auto figures = recipeFigures(lines).value();
    EXPECT_THAT(figures.percent, testing::ElementsAre(50, 25, 25, 2));
    EXPECT_NEAR(figures.moles.at("SiO2"), 0.957667, 1e-6);
    EXPECT_NEAR(figures.moles.at("ZnO"), 0.307205, 1e-6);
    EXPECT_NEAR(*figures.silicaToZinc, 3.117358, 1e-6);
    EXPECT_NEAR(*figures.aluminaToSilica, 0.0452413, 1e-7);
    const double copper = 2 / 123.554; // 63.546 + 12.011 + 47.997, a flux as CuO
    EXPECT_NEAR(figures.moles.at("CuO"), copper, 1e-9);
    EXPECT_NEAR(*figures.unityAlumina, 0.0433260 / (0.216630 + 0.307205 + copper), 1e-6);
    EXPECT_NEAR(figures.lossPercent, 100 * (20 * 44.009 / 123.554) / 1020, 1e-9);
    EXPECT_THAT(figures.warnings,
                testing::ElementsAre(RecipeWarning::muchSilica, RecipeWarning::muchAlumina));
}

TEST(Recipe, SaysWhatItDoesNotKnow) {
    const std::vector<RecipePart> lines{part("zinc", 30, "ZnO"), part("local sand", 70, nullptr)};
    const auto figures = recipeFigures(lines).value();
    EXPECT_THAT(figures.unknown, testing::ElementsAre("local sand"));
    EXPECT_NEAR(*figures.silicaToZinc, 0, 1e-12);
    EXPECT_FALSE(figures.aluminaToSilica);
    EXPECT_THAT(figures.warnings, testing::ElementsAre(RecipeWarning::littleSilica));
}

struct Judged {
    double silica_mol;
    double alumina_mol;
    std::vector<RecipeWarning> warnings; ///< common practice: 2.7 to 3.0; 0.05; 0.15
};

class RecipeWarnings : public testing::TestWithParam<Judged> {};

TEST_P(RecipeWarnings, OutsideTheUsual) {
    const std::vector<RecipePart> lines{part("zinc", 81.379, "ZnO"),
                                        part("flint", 60.083 * GetParam().silica_mol, "SiO2"),
                                        part("alumina", 101.961 * GetParam().alumina_mol, "Al2O3")};
    EXPECT_EQ(recipeFigures(lines)->warnings, GetParam().warnings);
}

INSTANTIATE_TEST_SUITE_P(Practice, RecipeWarnings,
                         testing::Values(Judged{2.8, 0.04, {}},
                                         Judged{2.6, 0.04, {RecipeWarning::littleSilica}},
                                         Judged{3.1, 0, {RecipeWarning::muchSilica}},
                                         Judged{2.9, 0.1, {RecipeWarning::muchAlumina}},
                                         Judged{2.9, 0.2, {RecipeWarning::stiffAlumina}}));

TEST(Recipe, WarnsWithoutZincAndRefusesNonsense) {
    EXPECT_THAT(recipeFigures(std::vector{part("flint", 1, "SiO2")})->warnings,
                testing::ElementsAre(RecipeWarning::noZinc));
    EXPECT_FALSE(recipeFigures({}));
    EXPECT_FALSE(recipeFigures(std::vector{part("zinc", 1, "ZnO", true)}));
    EXPECT_FALSE(recipeFigures(std::vector{part("zinc", -1, "ZnO")}));
}

TEST(GlazeCard, ZincIsKnownWhenTheRecipeIs) {
    GlazeCard card;
    EXPECT_FALSE(holdsZinc(card)) << "no recipe";
    card.recipe = {{"frit", 60, false, {}, "", {{"SiO2", 60}, {"Na2O", 20}}}, {"mystery", 40}};
    EXPECT_FALSE(holdsZinc(card)) << "the other may be zinc";
    card.recipe.push_back({"zinc oxide", 20, false, {}, "ZnO", {}});
    EXPECT_EQ(holdsZinc(card), true) << "whatever the other is";
    card.recipe[2].percent = card.recipe[1].percent = 0;
    EXPECT_EQ(holdsZinc(card), false);
}

} // namespace
} // namespace ringhold
