#include "core/report/model_words.h"

#include <gtest/gtest.h>

#include <cmath>

namespace ringhold {
namespace {

constexpr auto selfSupporting = ConeType::selfSupporting;

const Cone& coneOf(const char* name, ConeType type = selfSupporting) {
    const Cone* cone = ConeTable::builtIn().find(name, type);
    EXPECT_NE(cone, nullptr) << name;
    return *cone;
}

TEST(ModelWords, TellTheResidualRoundedUp) {
    for (const Cone* cone : ConeTable::builtIn().series(selfSupporting)) {
        if (cone->published.size() < 3)
            continue;
        const double worst_C = cone->worstResidual().celsius();
        const auto words = modelFitWords(*cone, {});
        const auto at = words.find("within ");
        ASSERT_NE(at, std::string::npos) << words;
        const double told_C = std::stod(words.substr(at + 7));
        EXPECT_GE(told_C + 1e-6, worst_C) << words;
        EXPECT_LT(told_C, std::max(1.0, worst_C) + 1) << words;
    }
}

struct FitCase {
    const char* cone;
    ConeType type;
    TemperatureScale scale;
    const char* words;
};

class ModelWordsOfCone : public testing::TestWithParam<FitCase> {};

TEST_P(ModelWordsOfCone, SayWhatTestsTheModel) {
    const auto& c = GetParam();
    EXPECT_EQ(modelFitWords(coneOf(c.cone, c.type), {c.scale, "UTC"}), c.words);
}

constexpr auto inCelsius = TemperatureScale::celsius;
INSTANTIATE_TEST_SUITE_P(
    Series, ModelWordsOfCone,
    testing::Values(FitCase{"9", selfSupporting, inCelsius,
                            "cone 9: the model is within 2 °C of the chart at 15, 60 and 150 °C/h"},
                    FitCase{"9", selfSupporting, TemperatureScale::fahrenheit,
                            "cone 9: the model is within 4 °F of the chart at 27, 108 and 270 °F/h"},
                    FitCase{"06", ConeType::large, inCelsius,
                            "cone 06: the chart gives 60 and 150 °C/h only; other rates follow the "
                            "self-supporting cone, untested"}));

TEST(ModelWords, OfAPackAreOneSentence) {
    const auto words = modelFitWords({"8", "9", "10"}, selfSupporting, {});
    EXPECT_EQ(words.rfind("The model is within ", 0), 0U) << words;
    EXPECT_NE(words.find("of the chart for cones 8, 9 and 10, at 15 to 150 °C/h."), std::string::npos)
        << words;
    EXPECT_EQ(modelFitWords({"no such"}, selfSupporting, {}), "");
    EXPECT_EQ(modelFitWords({"06"}, ConeType::large, {}).rfind("Cone 06: the chart gives 60", 0), 0U);
}

} // namespace
} // namespace ringhold
