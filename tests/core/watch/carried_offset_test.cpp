#include "core/watch/carried_offset.h"

#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

TemperatureDifference degrees(double celsius) {
    return TemperatureDifference::fromCelsius(celsius);
}

TEST(CarriedOffset, IsScaledAndWiderAtTheGrowthHold) {
    Pack pack;
    pack.cones = {"8", "9", "10"};
    PackForecast told;
    told.offsetMean = degrees(9);
    told.offsetSd = degrees(2);
    const auto carried = carriedOffset(pack, told, Temperature::fromCelsius(1076));
    ASSERT_TRUE(carried);
    // cone 9 ends near 1280 °C at 60 °C/h: 200 °C lower, 9 * 1076 / 1280 = 7.6 and sd hypot(2 * 0.84, 4)
    // = 4.3
    EXPECT_NEAR(carried->mean.celsius(), 7.6, 0.15);
    EXPECT_GT(carried->sd.celsius(), 3.5);
    EXPECT_LT(carried->sd.celsius(), 5);
}

TEST(CarriedOffset, NeedsACone) {
    EXPECT_FALSE(carriedOffset(Pack{}, PackForecast{}, Temperature::fromCelsius(1076)));
    Pack unknown;
    unknown.cones = {"no such"};
    EXPECT_FALSE(carriedOffset(unknown, PackForecast{}, Temperature::fromCelsius(1076)));
}

} // namespace
} // namespace ringhold::test
