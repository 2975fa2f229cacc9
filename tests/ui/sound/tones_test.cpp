#include "ui/sound/tones.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <span>

namespace ringhold {
namespace {

constexpr int rate = 48000;

/// How strong a frequency is in these samples: Goertzel's sum, as an amplitude.
double strength(std::span<const float> samples, double hertz) {
    const double w = 2 * std::numbers::pi * hertz / rate;
    double re = 0, im = 0;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        re += samples[i] * std::cos(w * static_cast<double>(i));
        im += samples[i] * std::sin(w * static_cast<double>(i));
    }
    return 2 * std::hypot(re, im) / static_cast<double>(samples.size());
}

double loudest(const std::vector<float>& samples) {
    return std::abs(*std::ranges::max_element(samples, {}, [](float s) { return std::abs(s); }));
}

class Tones : public testing::TestWithParam<Sound> {};

TEST_P(Tones, BeginAndEndInSilenceAndNeverClip) {
    const auto samples = samplesOf(GetParam(), rate);
    EXPECT_EQ(samples.front(), 0);
    EXPECT_EQ(samples.back(), 0);
    EXPECT_LT(loudest(samples), 1);
    EXPECT_GT(loudest(samples), 0.1);
    for (std::size_t i = 1; i < samples.size(); ++i)
        ASSERT_LT(std::abs(samples[i] - samples[i - 1]), 0.35) << "a click at sample " << i;
}

TEST_P(Tones, LastAsLongWhateverTheDevice) {
    const auto fast = samplesOf(GetParam(), 48000), slow = samplesOf(GetParam(), 8000);
    EXPECT_NEAR(static_cast<double>(fast.size()) / 48000, static_cast<double>(slow.size()) / 8000, 0.01);
    EXPECT_LT(fast.size(), 48000u * 3);
}

INSTANTIATE_TEST_SUITE_P(All, Tones, testing::Values(Sound::cue, Sound::call, Sound::urgent));

TEST(Tones, GrowLouderWithWhatTheyAreFor) {
    EXPECT_LT(loudest(samplesOf(Sound::cue, rate)), loudest(samplesOf(Sound::call, rate)));
    EXPECT_LT(loudest(samplesOf(Sound::call, rate)), loudest(samplesOf(Sound::urgent, rate)));
}

TEST(Tones, HaveTheNoteTheyBeginWith) {
    const auto samples = samplesOf(Sound::call, rate);
    const std::span first(samples.data(), static_cast<std::size_t>(rate) / 5);
    EXPECT_GT(strength(first, 784), 5 * strength(first, 988));
    EXPECT_GT(strength(first, 1568), 5 * strength(first, 1800)) << "its first overtone";
}

} // namespace
} // namespace ringhold
