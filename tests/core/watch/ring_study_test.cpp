// The ring counter on firings made up at random: the count must be right in every one.
#include "tests/core/watch/ring_firings.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace test;
using std::chrono::seconds;

struct Reading {
    int spacing_s;
    double shortest_min; ///< dwell that such readings must still show
    int firings;
};

/// How far the figures of all rings found were off, in minutes and °C.
struct Errors {
    std::vector<double> starts_min, lengths_min, means_C;

    void add(const Dwell& found, double start_min, double length_min, double mean_C) {
        starts_min.push_back(std::abs(minuteOf(found.start) - start_min));
        lengths_min.push_back(std::abs(inMinutes(found.length) - length_min));
        means_C.push_back(std::abs(found.mean.celsius() - mean_C));
    }
};

double quantile(std::vector<double> values, double share) {
    std::sort(values.begin(), values.end());
    return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
}

/// Noise of up to 2 °C, at times hanging together, a lag of up to 90 s, wild readings.
Curve readingsOf(const MadeFiring& firing, const Reading& reading, double lag_s, FiringMaker& maker,
                 std::mt19937& random) {
    const Curve slow = lagged(readEvery(firing.corners, seconds(std::min(reading.spacing_s, 10))), lag_s);
    const double memory = reading.spacing_s <= 30 ? maker.between(0, 0.8) : 0;
    return spiky(noisy(readEvery(slow, seconds(reading.spacing_s)), maker.between(0, 2), memory, random),
                 maker);
}

class RingStudy : public testing::TestWithParam<Reading> {};

TEST_P(RingStudy, CountsEveryRingOfEveryFiring) {
    Errors lows, highs;
    std::size_t made = 0;
    for (int seed = 1; seed <= GetParam().firings; ++seed) {
        std::mt19937 random(static_cast<unsigned>(seed));
        FiringMaker maker(random, GetParam().shortest_min);
        const MadeFiring firing = maker.make();
        const double lag_s = maker.between(0, 90);
        const auto rings = countRings(readingsOf(firing, GetParam(), lag_s, maker, random), firing.levels);
        EXPECT_EQ(rings.size(), firing.rings.size()) << "seed " << seed;
        made += firing.rings.size();
        for (std::size_t i = 0; i < std::min(rings.size(), firing.rings.size()); ++i) {
            const MadeRing& ring = firing.rings[i];
            lows.add(rings[i].low, ring.lowStart + lag_s / 60, ring.lowMinutes, ring.low_C);
            highs.add(rings[i].high, ring.highStart + lag_s / 60, ring.highMinutes, ring.high_C);
        }
    }
    ASSERT_GT(made, 3u * static_cast<unsigned>(GetParam().firings));
    for (const Errors& errors : {lows, highs}) {
        EXPECT_LT(quantile(errors.starts_min, 0.5), 0.3);
        EXPECT_LT(quantile(errors.starts_min, 0.95), 1.5);
        EXPECT_LT(quantile(errors.lengths_min, 0.5), 0.6);
        EXPECT_LT(quantile(errors.lengths_min, 0.95), 2.7);
        EXPECT_LT(quantile(errors.means_C, 0.95), 2.7);
    }
}

INSTANTIATE_TEST_SUITE_P(Spacing, RingStudy,
                         testing::Values(Reading{1, 3.5, 6}, Reading{10, 3.5, 60}, Reading{30, 3.5, 80},
                                         Reading{60, 3.5, 80}, Reading{120, 5, 80}));

} // namespace
} // namespace ringhold
