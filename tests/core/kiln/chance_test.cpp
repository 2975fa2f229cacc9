#include "core/kiln/chance.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace ringhold {
namespace {

using std::chrono::seconds;

struct Moments {
    double mean = 0;
    double sd = 0;
    double neighbour = 0; ///< correlation of each value with the next
};

Moments momentsOf(const std::vector<double>& x) {
    Moments m;
    for (const double v : x)
        m.mean += v / static_cast<double>(x.size());
    double squares = 0;
    double products = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        squares += (x[i] - m.mean) * (x[i] - m.mean);
        if (i > 0)
            products += (x[i] - m.mean) * (x[i - 1] - m.mean);
    }
    m.sd = std::sqrt(squares / static_cast<double>(x.size()));
    m.neighbour = products / squares;
    return m;
}

std::vector<double> normals(Chance chance, int count) {
    std::vector<double> x;
    for (int i = 0; i < count; ++i)
        x.push_back(chance.normal());
    return x;
}

TEST(Chance, NormalHasMeanZeroAndDeviationOne) {
    const auto x = normals(Chance(7), 100'000);
    const auto m = momentsOf(x);
    EXPECT_NEAR(m.mean, 0.0, 0.01);
    EXPECT_NEAR(m.sd, 1.0, 0.01);
    EXPECT_NEAR(m.neighbour, 0.0, 0.01);
    // Two-sided shares of a normal distribution beyond 1, 2 and 3 standard deviations.
    const double beyond[] = {0.3173, 0.0455, 0.0027};
    for (int k = 1; k <= 3; ++k) {
        const auto out = std::count_if(x.begin(), x.end(), [k](double v) { return std::abs(v) > k; });
        EXPECT_NEAR(static_cast<double>(out) / static_cast<double>(x.size()), beyond[k - 1], 0.005);
    }
}

TEST(Chance, IsEvenBetweenZeroAndOne) {
    Chance chance(3);
    std::vector<int> tenths(10);
    for (int i = 0; i < 100'000; ++i) {
        const double u = chance.uniform();
        ASSERT_GE(u, 0.0);
        ASSERT_LT(u, 1.0);
        ++tenths[static_cast<std::size_t>(u * 10)];
    }
    for (const int count : tenths)
        EXPECT_NEAR(count, 10'000, 500);
}

TEST(Chance, SeedAndStreamDecideAll) {
    EXPECT_EQ(normals(Chance(1, 1), 50), normals(Chance(1, 1), 50));
    EXPECT_NE(normals(Chance(1, 1), 50), normals(Chance(1, 2), 50));
    EXPECT_NE(normals(Chance(1, 1), 50), normals(Chance(2, 1), 50));
}

TEST(Chance, IsTheSameEverywhere) {
    // Our own last values: they must not change, nor differ between platforms but for the last digits.
    Chance chance(1);
    for (const double last : {0.0416075043895769, 0.471669069138771, 1.44155515888367})
        EXPECT_NEAR(chance.normal(), last, 1e-12);
    EXPECT_NEAR(chance.uniform(), 0.476692428120283, 1e-12);
}

struct WanderCase {
    Duration correlation;
    Duration step;
    double neighbour; ///< exp(-step / correlation)
};

class Wandering : public testing::TestWithParam<WanderCase> {};

TEST_P(Wandering, KeepsItsDeviationAtAnyStep) {
    Chance chance(5);
    Wander wander(0.8, GetParam().correlation);
    std::vector<double> x;
    for (int i = 0; i < 200'000; ++i)
        x.push_back(wander.next(chance, GetParam().step));
    const auto m = momentsOf(x);
    EXPECT_NEAR(m.mean, 0.0, 0.05);
    EXPECT_NEAR(m.sd, 0.8, 0.02);
    EXPECT_NEAR(m.neighbour, GetParam().neighbour, 0.01);
}

INSTANTIATE_TEST_SUITE_P(Chance, Wandering,
                         testing::Values(WanderCase{seconds(0), seconds(1), 0.0},
                                         WanderCase{seconds(10), seconds(10), std::exp(-1.0)},
                                         WanderCase{seconds(60), seconds(10), std::exp(-1.0 / 6.0)}));

} // namespace
} // namespace ringhold
