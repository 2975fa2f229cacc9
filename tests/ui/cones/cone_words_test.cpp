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

} // namespace
} // namespace ringhold
