#include "tests/support/places.h"
#include "ui/theme/palette.h"

#include <QFile>
#include <gtest/gtest.h>

#include <string>

namespace ringhold {
namespace {

constexpr double readable = 4.5;

QByteArray paletteFile() {
    QFile file(test::sourceFolder() / "resources/palette.json");
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    return file.readAll();
}

// Check values of the definition itself: black on white is 21, a colour on itself 1; #777777 on white is the
// well-known near miss (remembered, not seen: 4.48).
TEST(Contrast, FollowsTheDefinition) {
    EXPECT_NEAR(contrast(Qt::black, Qt::white), 21, 1e-6);
    EXPECT_NEAR(contrast(Qt::red, Qt::red), 1, 1e-9);
    EXPECT_NEAR(contrast(QColor(0x77, 0x77, 0x77), Qt::white), 4.48, 0.005);
}

class WordsOnGround : public testing::TestWithParam<std::tuple<const char*, const char*, const char*>> {};

QColor colour(const Palette& palette, const std::string& name) {
    for (const auto& role : paletteRoles())
        if (name == role.name)
            return palette.*role.colour;
    ADD_FAILURE() << name;
    return {};
}

TEST_P(WordsOnGround, AreReadable) {
    const auto& [theme, words, ground] = GetParam();
    const auto& palettes = builtInPalettes();
    const auto& palette = std::string(theme) == "paper" ? palettes.paper : palettes.ember;
    EXPECT_GE(contrast(colour(palette, words), colour(palette, ground)), readable)
        << theme << ": " << words << " on " << ground;
}

INSTANTIATE_TEST_SUITE_P(Themes, WordsOnGround,
                         testing::Combine(testing::Values("paper", "ember"),
                                          testing::Values("ink", "soft", "forecastText", "warning"),
                                          testing::Values("table", "page", "band", "forecastWindow",
                                                          "warningGround")));
INSTANTIATE_TEST_SUITE_P(Lines, WordsOnGround,
                         testing::Combine(testing::Values("paper", "ember"), testing::Values("kiln", "plan"),
                                          testing::Values("table", "page")));
INSTANTIATE_TEST_SUITE_P(Glow, WordsOnGround,
                         testing::Combine(testing::Values("paper", "ember"), testing::Values("glowText"),
                                          testing::Values("glow", "glowHeart")));

TEST(BuiltInPalettes, AreTheFile) {
    const auto fromFile = parsePalettes(paletteFile());
    ASSERT_TRUE(fromFile.ok()) << fromFile.error().text();
    for (const auto& role : paletteRoles()) {
        EXPECT_EQ(builtInPalettes().paper.*role.colour, fromFile->paper.*role.colour) << role.name;
        EXPECT_EQ(builtInPalettes().ember.*role.colour, fromFile->ember.*role.colour) << role.name;
    }
    EXPECT_FALSE(builtInPalettes().paper.isDark());
    EXPECT_TRUE(builtInPalettes().ember.isDark());
}

struct Damage {
    const char* before;
    const char* after;
    const char* told;
};

class BadPalettes : public testing::TestWithParam<Damage> {};

TEST_P(BadPalettes, AreRefusedWithTheRole) {
    QByteArray json = paletteFile();
    const auto size = json.size();
    json.replace(GetParam().before, GetParam().after);
    ASSERT_NE(json.size(), size);
    const auto palettes = parsePalettes(json);
    ASSERT_FALSE(palettes.ok());
    EXPECT_NE(palettes.error().text().find(GetParam().told), std::string::npos) << palettes.error().text();
}

INSTANTIATE_TEST_SUITE_P(Damages, BadPalettes,
                         testing::Values(Damage{"\"kiln\"", "\"curve\"", "paper has no colour for \"kiln\""},
                                         Damage{"\"#ff8a4c\"", "\"hot\"", "ember has no colour for \"kiln\""},
                                         Damage{"\"table\"", "\"moss\": \"#112233\", \"table\"", "\"moss\""},
                                         Damage{"\"paper\": {", "\"paper\":: {", "no palette file"}));

} // namespace
} // namespace ringhold
