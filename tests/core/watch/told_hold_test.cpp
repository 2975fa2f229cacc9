#include "core/watch/told_hold.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

const Instant evening{std::chrono::hours(492000)};

std::optional<ToldHold> told(const std::string& value, TemperatureScale scale = TemperatureScale::celsius) {
    return toldHold(Setting{{}, {}, evening, "hold", value, false}, scale);
}

struct Said {
    const char* value;
    std::optional<double> target_C;
    std::optional<double> half_C;
};

class ToldHoldValues : public testing::TestWithParam<Said> {};

TEST_P(ToldHoldValues, AreUnderstood) {
    const auto& said = GetParam();
    const auto hold = told(said.value);
    ASSERT_TRUE(hold) << said.value;
    EXPECT_EQ(hold->target.has_value(), said.target_C.has_value());
    EXPECT_EQ(hold->halfWidth.has_value(), said.half_C.has_value());
    if (said.target_C) {
        EXPECT_NEAR(hold->target->celsius(), *said.target_C, 1e-9);
    }
    if (said.half_C) {
        EXPECT_NEAR(hold->halfWidth->celsius(), *said.half_C, 1e-9);
    }
}

INSTANTIATE_TEST_SUITE_P(Told, ToldHoldValues,
                         testing::Values(Said{"1076", 1076, {}}, Said{"1076 °C", 1076, {}},
                                         Said{"1 076 ± 4 °C", 1076, 4}, Said{"1076+-4", 1076, 4},
                                         Said{"1076 +/- 2,5 C", 1076, 2.5}, Said{"± 4 °C", {}, 4},
                                         Said{"1994 ± 9 °F", 1090, 5}, Said{"Over", {}, {}}));

TEST(ToldHoldTest, GoesByTheScaleWhereNoUnitIsWritten) {
    const auto hold = told("1994 ± 9", TemperatureScale::fahrenheit);
    ASSERT_TRUE(hold);
    EXPECT_NEAR(hold->target->celsius(), 1090, 1e-9);
    EXPECT_NEAR(hold->halfWidth->celsius(), 5, 1e-9);
    EXPECT_NEAR(told("1090 °C", TemperatureScale::fahrenheit)->target->celsius(), 1090, 1e-9);
}

TEST(ToldHoldTest, LeavesAloneWhatIsNoHold) {
    for (const char* value : {"", "high", "9000", "-20", "1076 ± 0", "1076 ± 400", "±", "1076 ±", "± warm"})
        EXPECT_FALSE(told(value)) << value;
    EXPECT_FALSE(toldHold(Setting{{}, {}, evening, "damper", "1076", false}, TemperatureScale::celsius));
    EXPECT_FALSE(toldHold(Setting{{}, {}, evening, "hold", "1076", true}, TemperatureScale::celsius))
        << "struck";
}

TEST(ToldHoldTest, IsReadBackAsItIsWritten) {
    const HoldBand band{Temperature::fromCelsius(1076), TemperatureDifference::fromCelsius(2.5)};
    for (const auto scale : {TemperatureScale::celsius, TemperatureScale::fahrenheit}) {
        const auto words = toldHoldWords(band, {scale, "UTC"});
        const auto hold = told(words);
        ASSERT_TRUE(hold) << words;
        EXPECT_NEAR(hold->target->celsius(), 1076, 0.05) << words;
        EXPECT_NEAR(hold->halfWidth->celsius(), 2.5, 0.05) << words;
    }
    EXPECT_EQ(toldHoldWords(band, {}), "1076 ± 2.5 °C");
}

} // namespace
} // namespace ringhold
