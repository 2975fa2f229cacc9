#include "core/watch/setting_answer.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

using namespace std::chrono_literals;

Setting set(double minute, const char* what = "damper", bool struck = false) {
    return {SettingId{static_cast<std::int64_t>(minute)}, {}, atMinute(minute), what, "half open", struck};
}

/// 60 °C/h until minute 60, 30 °C/h from there.
const Curve slower = readEvery(curveOf({{0, 900}, {60, 960}, {120, 990}}), 30s);

TEST(SettingAnswers, TellTheClimbBeforeAndAfter) {
    const auto answers = settingAnswers({set(60)}, slower);
    ASSERT_EQ(answers.size(), 1u);
    ASSERT_TRUE(answers[0].before);
    ASSERT_TRUE(answers[0].after);
    EXPECT_NEAR(answers[0].before->rate.celsiusPerHour(), 60, 0.1);
    EXPECT_NEAR(answers[0].after->rate.celsiusPerHour(), 30, 0.1);
    EXPECT_EQ(answers[0].afterOver, 20min);
    EXPECT_EQ(answerWords(answers[0], {}).rfind("Climb 60.0", 0), 0u) << answerWords(answers[0], {});
    EXPECT_NE(answerWords(answers[0], {}).find("in the 20 min after."), std::string::npos);
}

TEST(SettingAnswers, WaitForEnoughOfTheCurve) {
    Curve young = slower;
    std::erase_if(young, [](const auto& p) { return p.at > atMinute(64); });
    const auto soon = settingAnswers({set(60)}, young).at(0);
    EXPECT_TRUE(soon.before);
    EXPECT_FALSE(soon.after);
    EXPECT_EQ(answerWords(soon, {}).find("after"), std::string::npos);
    const auto none = settingAnswers({set(2)}, {}).at(0);
    EXPECT_EQ(answerWords(none, {}), "");
}

TEST(SettingAnswers, ReachNoFurtherThanTheNextSetting) {
    const auto answers = settingAnswers({set(50), set(60), set(61, "gas"), set(70)}, slower);
    ASSERT_EQ(answers.size(), 4u);
    EXPECT_EQ(answers[0].afterOver, 10min);
    EXPECT_NEAR(answers[0].after->rate.celsiusPerHour(), 60, 0.1);
    EXPECT_EQ(answers[1].afterOver, 10min) << "the one a minute later belongs to it";
    EXPECT_NEAR(answers[3].before->rate.celsiusPerHour(), 30, 0.1);
}

TEST(SettingAnswers, LeaveOutWhatDoesNotCount) {
    EXPECT_TRUE(settingAnswers({set(60, "damper", true), set(61, "hold")}, slower).empty());
}

} // namespace
} // namespace ringhold::test
