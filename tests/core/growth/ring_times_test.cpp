#include "core/growth/ring_times.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace test;

/// Five hours at the best temperature: 60 µm/min is 3.6 mm/h.
CrystalGrowth fiveHours() {
    return {curveOf({{0, 1090}, {300, 1090}}), publishedGrowthRate()};
}

struct Case {
    double radius_mm;
    std::optional<double> earliest_min;
    std::optional<double> likely_min;
    std::optional<double> latest_min;
};

class RingsBackwards : public testing::TestWithParam<Case> {};

TEST_P(RingsBackwards, AreTimedBackwards) {
    const auto time = timeOfRadius(fiveHours(), GetParam().radius_mm);
    const auto expect = [](std::optional<Instant> at, std::optional<double> minute) {
        ASSERT_EQ(at.has_value(), minute.has_value());
        if (at) {
            EXPECT_NEAR(minuteOf(*at), *minute, 0.1);
        }
    };
    expect(time.earliest, GetParam().earliest_min);
    expect(time.likely, GetParam().likely_min);
    expect(time.latest, GetParam().latest_min);
}

// radius over 125, 60 and 12 µm/min
INSTANTIATE_TEST_SUITE_P(Radii, RingsBackwards,
                         testing::Values(Case{3, 24, 50, 250}, Case{12, 96, 200, {}}, Case{20, 160, {}, {}},
                                         Case{50, {}, {}, {}}));

TEST(RingTimes, AreToldInWords) {
    const auto growth = fiveHours();
    EXPECT_EQ(radiusTimeWords(timeOfRadius(growth, 12), *growth.began(), {}),
              "A ring at 12 mm: dip at 3 h 20 of growth, 03:20 (01:36 to later than this plan).");
    EXPECT_EQ(radiusTimeWords(timeOfRadius(growth, 50), *growth.began(), {}),
              "A ring at 50 mm: farther out than this plan’s crystal grows.");
    EXPECT_EQ(momentWords("The sag", atMinute(54), {1, 11.2, 23}, {}),
              "The sag at 00:54 lies about 11 mm out (1 to 23): is it to be seen?");
}

TEST(RingTimes, AMarkerDipDatesACrystalThatNobodyMeasured) {
    const auto dip = markerDip(fiveHours(), atMinute(300));
    ASSERT_TRUE(dip);
    EXPECT_NEAR(minuteOf(dip->at), 200, 0.1);
    EXPECT_NEAR(dip->radius.likely_mm, 12, 0.01);
    EXPECT_EQ(markerDipWords(*dip, {}),
              "A marker dip here, at 03:20, would lie about 12 mm out (2 to 25) and date the crystal.");
}

TEST(RingTimes, NoMarkerDipWhereItTellsNothing) {
    EXPECT_FALSE(
        markerDip(CrystalGrowth(curveOf({{0, 1090}, {30, 1090}}), publishedGrowthRate()), atMinute(30)));
    auto known = publishedGrowthRate();
    known.basis = GrowthBasis::measured;
    known.pieces = 9;
    EXPECT_FALSE(markerDip(CrystalGrowth(curveOf({{0, 1090}, {300, 1090}}), known), atMinute(300)));
}

} // namespace
} // namespace ringhold
