#include "core/kiln/atmosphere.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

Temperature celsius(double degrees) {
    return Temperature::fromCelsius(degrees);
}

struct Nernst {
    double share;
    double celsius;
    double mV;
};

class OxygenProbe : public testing::TestWithParam<Nernst> {};

TEST_P(OxygenProbe, FollowsNernst) {
    const auto& c = GetParam();
    EXPECT_NEAR(oxygenProbeAt(c.share, celsius(c.celsius)).millivolts, c.mV, 0.06);
    EXPECT_NEAR(oxygenShareFrom(Millivolts{c.mV}, celsius(c.celsius)) / c.share, 1, 0.004);
}

// The project's own table of the formula (reference, physics).
INSTANTIATE_TEST_SUITE_P(Table, OxygenProbe,
                         testing::Values(Nernst{.05, 1000, 39.3}, Nernst{.05, 1080, 41.8},
                                         Nernst{.05, 1200, 45.5}, Nernst{.05, 1280, 47.9},
                                         Nernst{.01, 1000, 83.4}, Nernst{.01, 1080, 88.7},
                                         Nernst{.01, 1200, 96.5}, Nernst{.01, 1280, 101.8},
                                         Nernst{.001, 1000, 146.6}, Nernst{.001, 1080, 155.8},
                                         Nernst{.001, 1200, 169.6}, Nernst{.001, 1280, 178.8}));

TEST(OxygenProbe, AgreesWithAPublishedKilnNote) {
    // 30 mV near 1100 °C is 7 to 8 % of oxygen (Yamauchi, Bizen kiln notes); the formula gives 7.58 %
    EXPECT_NEAR(oxygenShareFrom(Millivolts{30}, celsius(1100)), .0758, .0002);
}

struct Zinc {
    double celsius;
    double mV;
    double atm;
};

class ZincVapour : public testing::TestWithParam<Zinc> {};

TEST_P(ZincVapour, OverPureOxide) {
    const auto& c = GetParam();
    EXPECT_NEAR(zincPressure_atm(Millivolts{c.mV}, celsius(c.celsius)) / c.atm, 1, 0.03);
}

// Likewise.
INSTANTIATE_TEST_SUITE_P(Table, ZincVapour,
                         testing::Values(Zinc{1080, 500, 3.65e-4}, Zinc{1080, 693, 1.0e-2},
                                         Zinc{1200, 300, 2.3e-4}, Zinc{1280, 100, 6.4e-5}));

TEST(Atmosphere, IsToldByTheVoltage) {
    EXPECT_EQ(atmosphereFrom(Millivolts{60}), Atmosphere::oxidising);
    EXPECT_EQ(atmosphereFrom(Millivolts{300}), Atmosphere::between);
    EXPECT_EQ(atmosphereFrom(Millivolts{600}), Atmosphere::reducing);
    EXPECT_FALSE(oxygenProbeIsHot(celsius(600)));
}

} // namespace
} // namespace ringhold
