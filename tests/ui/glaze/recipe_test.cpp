#include "ui/glaze/recipe_model.h"
#include "ui/glaze/recipe_words.h"

#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

RecipeLine line(const char* material, double percent, const char* formula, bool addition = false) {
    RecipeLine made;
    made.material = material;
    made.percent = percent;
    made.formula = formula;
    made.addition = addition;
    return made;
}

class RecipeModelTest : public testing::Test {
  protected:
    QModelIndex cell(int row, RecipeColumn column) { return m_model.index(row, static_cast<int>(column)); }

    RecipeModel m_model;
    QAbstractItemModelTester m_tester{&m_model, QAbstractItemModelTester::FailureReportingMode::Fatal};
    QSignalSpy m_edited{&m_model, &RecipeModel::edited};
    QSignalSpy m_troubled{&m_model, &RecipeModel::troubled};
};

} // namespace

TEST_F(RecipeModelTest, AMaterialsNameAddsALineWithItsFormula) {
    EXPECT_EQ(m_model.rowCount(), 1);
    EXPECT_TRUE(m_model.setData(cell(0, RecipeColumn::material), u"Zinc oxide"_qs));
    EXPECT_EQ(m_model.rowCount(), 2);
    EXPECT_EQ(cell(0, RecipeColumn::formula).data(), u"ZnO"_qs);
    EXPECT_TRUE(m_model.setData(cell(0, RecipeColumn::percent), u"25,5"_qs));
    EXPECT_EQ(m_edited.count(), 2);
    EXPECT_DOUBLE_EQ(m_model.lines().at(0).percent, 25.5);
    EXPECT_EQ(cell(0, RecipeColumn::batch).data(), u"255 g"_qs);
    m_model.setBatch(200);
    EXPECT_EQ(cell(0, RecipeColumn::batch).data(), u"51 g"_qs);
    EXPECT_TRUE(m_model.setData(cell(0, RecipeColumn::addition), int(Qt::Checked), Qt::CheckStateRole));
    EXPECT_TRUE(m_model.lines().at(0).addition);
}

TEST_F(RecipeModelTest, AnotherNameBringsItsFormulaUnlessOneWasWritten) {
    m_model.show({line("zinc oxide", 25, "ZnO"), line("my frit", 50, "0.7 Na2O + 0.3 CaO + 2.5 SiO2")});
    EXPECT_TRUE(m_model.setData(cell(0, RecipeColumn::material), u"quartz"_qs));
    EXPECT_EQ(m_model.lines()[0].formula, "SiO2");
    EXPECT_TRUE(m_model.setData(cell(1, RecipeColumn::material), u"our frit"_qs));
    EXPECT_EQ(m_model.lines()[1].formula, "0.7 Na2O + 0.3 CaO + 2.5 SiO2");
}

TEST_F(RecipeModelTest, RefusesWhatMakesNoSense) {
    m_model.show({line("zinc oxide", 25, "ZnO")});
    EXPECT_FALSE(m_model.setData(cell(0, RecipeColumn::percent), u"-1"_qs));
    EXPECT_FALSE(m_model.setData(cell(0, RecipeColumn::percent), u"some"_qs));
    EXPECT_FALSE(m_model.setData(cell(0, RecipeColumn::formula), u"Zn(O"_qs));
    EXPECT_FALSE(m_model.setData(cell(0, RecipeColumn::material), u" "_qs));
    EXPECT_EQ(m_troubled.count(), 4);
    EXPECT_FALSE(m_model.setData(cell(0, RecipeColumn::batch), u"5"_qs));
    EXPECT_FALSE(m_model.setData(cell(1, RecipeColumn::percent), u"5"_qs));
    EXPECT_EQ(m_edited.count(), 0);
    EXPECT_DOUBLE_EQ(m_model.lines()[0].percent, 25);
}

TEST_F(RecipeModelTest, ALineIsTakenOutByWhoeverKeepsIt) {
    m_model.show({line("zinc oxide", 25, "ZnO"), line("silica", 20, "SiO2")});
    m_model.removeLine(0);
    ASSERT_EQ(m_edited.count(), 1);
    const auto left = m_edited[0][0].value<std::vector<RecipeLine>>();
    ASSERT_EQ(left.size(), 1U);
    EXPECT_EQ(left[0].material, "silica");
}

TEST(RecipeMaterials, EveryFormulaCanBeRead) {
    ASSERT_FALSE(knownMaterials().isEmpty());
    for (const QString& material : knownMaterials())
        EXPECT_TRUE(materialFromFormula(formulaOf(material).toStdString())) << material.toStdString();
}

TEST(RecipeWords, TellSumsAndMoles) {
    // 25 g of ZnO (81.38 g/mol) are 0.307 mol, 52 g of SiO2 (60.08 g/mol) 0.865 mol: 2.82
    const auto told = tellRecipe({line("zinc oxide", 25, "ZnO"), line("silica", 52, "SiO2"),
                                  line("soda", 23, "Na2CO3"), line("cobalt", 1, "CoCO3", true)});
    EXPECT_TRUE(told.figures.startsWith(u"100 % and 1 % on top.")) << told.figures.toStdString();
    EXPECT_TRUE(told.figures.contains(u"SiO₂ to ZnO 2.82 by mole")) << told.figures.toStdString();
    EXPECT_TRUE(told.warnings.isEmpty()) << told.warnings.toStdString();
}

TEST(RecipeWords, WarnOutsideTheUsualAndSayThatItIsPractice) {
    const auto told =
        tellRecipe({line("zinc oxide", 25, "ZnO"), line("silica", 40, "SiO2"), line("soda", 35, "Na2CO3")});
    EXPECT_TRUE(told.warnings.contains(u"below 2.7"));
    EXPECT_TRUE(told.warnings.contains(u"by practice"));
    EXPECT_TRUE(tellRecipe({}).warnings.isEmpty());
}

TEST(RecipeWords, TellNoRatioWhileALineIsUnknown) {
    const auto told =
        tellRecipe({line("zinc oxide", 25, "ZnO"), line("silica", 40, "SiO2"), line("frit", 35, "")});
    EXPECT_TRUE(told.figures.contains(u"Without frit"));
    EXPECT_FALSE(told.figures.contains(u"by mole"));
    EXPECT_TRUE(told.warnings.isEmpty());
}

} // namespace ringhold::test
