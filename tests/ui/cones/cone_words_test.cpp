#include "ui/cones/cone_words.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

struct Told {
    double hour;
    const char* sentence;
    const char* button;
};

class HourWords : public testing::TestWithParam<Told> {};

TEST_P(HourWords, AreThoseOfPotters) {
    const auto& told = GetParam();
    EXPECT_EQ(coneInWords(QStringLiteral("9"), told.hour), QString::fromUtf8(told.sentence));
    EXPECT_EQ(hourOnButton(told.hour), QString::fromUtf8(told.button));
}

INSTANTIATE_TEST_SUITE_P(Hours, HourWords,
                         testing::Values(Told{0, "9 standing", "standing"},
                                         Told{0.2, "9 standing", "standing"},
                                         Told{0.5, "9 just leaning", "just leaning"},
                                         Told{1, "9 at 1 o’clock", "1"}, Told{2.6, "9 at 2½ o’clock", "2½"},
                                         Told{5.5, "9 at 5½ o’clock", "5½"},
                                         Told{5.8, "9 nearly down", "down"}, Told{6, "9 down", "down"}));

struct Typed {
    const char* text;
    const char* cone;
    double hour;
};

class TypedLooks : public testing::TestWithParam<Typed> {};

TEST_P(TypedLooks, AreUnderstood) {
    const auto looks = parseLooks(QString::fromUtf8(GetParam().text));
    ASSERT_TRUE(looks.ok()) << looks.error().text();
    ASSERT_EQ(looks->size(), 1u);
    EXPECT_EQ(looks->front().cone, GetParam().cone);
    EXPECT_DOUBLE_EQ(looks->front().hour, GetParam().hour);
}

INSTANTIATE_TEST_SUITE_P(Ways, TypedLooks,
                         testing::Values(Typed{"10 3.5", "10", 3.5}, Typed{"10 3,5", "10", 3.5},
                                         Typed{" 10  3½ ", "10", 3.5}, Typed{"9 ½", "9", 0.5},
                                         Typed{"9 0.5", "9", 0.5}, Typed{"06 12", "06", 0},
                                         Typed{"05.5 4", "05.5", 4}, Typed{"9 0", "9", 0},
                                         Typed{"9 6", "9", 6}, Typed{"9 Standing", "9", 0},
                                         Typed{"9 just leaning", "9", 0.5}, Typed{"9 leaning", "9", 0.5},
                                         Typed{"9 down", "9", 6}, Typed{"9 at 4 o'clock", "9", 4},
                                         Typed{"9 4 o’clock", "9", 4}, Typed{"9 3 ½", "9", 3.5}));

TEST(SeveralTypedLooks, ArePartedByCommaAndSpaceOrSemicolon) {
    const auto looks = parseLooks(u"9 4,5, 10 just leaning; 11 standing,");
    ASSERT_TRUE(looks.ok()) << looks.error().text();
    ASSERT_EQ(looks->size(), 3u);
    EXPECT_DOUBLE_EQ((*looks)[0].hour, 4.5);
    EXPECT_EQ((*looks)[1].cone, "10");
    EXPECT_DOUBLE_EQ((*looks)[1].hour, 0.5);
    EXPECT_EQ((*looks)[2].cone, "11");
}

class NoLooks : public testing::TestWithParam<const char*> {};

TEST_P(NoLooks, AreRefusedInWords) {
    const auto looks = parseLooks(QString::fromUtf8(GetParam()));
    ASSERT_FALSE(looks.ok());
    EXPECT_FALSE(looks.error().what.empty());
}

INSTANTIATE_TEST_SUITE_P(Ways, NoLooks,
                         testing::Values("10", "10 7", "10 -1", "10 3.25", "10 fallen", "10 nan", "10 3.5.",
                                         "9 4, 10", "10 13"));

TEST(NoTypedText, IsNoLookAndNoError) {
    EXPECT_TRUE(parseLooks(u"  ").ok());
    EXPECT_TRUE(parseLooks(u"")->empty());
}

// What the program says of a cone can be typed back.
TEST(ConeWords, AreUnderstoodWhenTyped) {
    for (double hour = 0; hour <= 6; hour += 0.5) {
        const auto looks = parseLooks(coneInWords(QStringLiteral("10"), hour));
        ASSERT_TRUE(looks.ok()) << looks.error().text();
        EXPECT_DOUBLE_EQ(looks->front().hour, hour);
    }
}

} // namespace
} // namespace ringhold
