#include "ui/plot/decimation.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace ringhold;

namespace {

const Instant start{std::chrono::hours(480000)};

CurvePoint pointAt(double seconds, double celsius) {
    return {start + durationFromSeconds(seconds), Temperature::fromCelsius(celsius)};
}

/// A wave with a spike up and one down, a reading a second.
Curve wave(int seconds) {
    Curve curve;
    for (int i = 0; i < seconds; ++i)
        curve.push_back(pointAt(i, 1000 + 50 * std::sin(i / 700.0)));
    curve[static_cast<std::size_t>(seconds / 3)].temperature = Temperature::fromCelsius(1200);
    curve[static_cast<std::size_t>(seconds / 2)].temperature = Temperature::fromCelsius(700);
    return curve;
}

struct Range {
    double low = 1e9;
    double high = -1e9;
    bool operator==(const Range&) const = default;
};

/// What each of the columns shows.
std::vector<Range> shown(const Curve& curve, Instant from, Instant to, int columns) {
    std::vector<Range> ranges(static_cast<std::size_t>(columns));
    for (const auto& point : curve) {
        if (point.at < from || point.at >= to)
            continue;
        auto& range = ranges[static_cast<std::size_t>((point.at - from) * columns / (to - from))];
        range.low = std::min(range.low, point.temperature.celsius());
        range.high = std::max(range.high, point.temperature.celsius());
    }
    return ranges;
}

} // namespace

TEST(Decimation, AShortCurveComesBackWhole) {
    const Curve curve = wave(100);
    EXPECT_EQ(decimated(curve, start, curve.back().at, 50).size(), 100U);
}

TEST(Decimation, EveryColumnShowsItsLowestAndHighest) {
    const Curve curve = wave(72000);
    const Instant to = start + std::chrono::seconds(72000);
    const Curve few = decimated(curve, start, to, 600);
    EXPECT_LE(few.size(), 2402U);
    EXPECT_EQ(shown(few, start, to, 600), shown(curve, start, to, 600));
}

TEST(Decimation, PointsStayInTimeOrderAndNoneComesTwice) {
    const Curve few = decimated(wave(72000), start, start + std::chrono::hours(20), 500);
    for (std::size_t i = 1; i < few.size(); ++i)
        ASSERT_LT(few[i - 1].at, few[i].at);
}

TEST(Decimation, TheNearestPointBeyondEitherEdgeIsKept) {
    const Curve curve = wave(72000);
    const Instant from = start + durationFromSeconds(1000.5);
    const Instant to = start + durationFromSeconds(70000.5);
    const Curve few = decimated(curve, from, to, 400);
    EXPECT_EQ(few.front().at, start + std::chrono::seconds(1000));
    EXPECT_EQ(few.back().at, start + std::chrono::seconds(70001));
}

TEST(Decimation, AGapBetweenPointsIsCrossedByItsLine) {
    const Curve curve{pointAt(0, 20), pointAt(36000, 900)};
    const Curve seen = decimated(curve, start + std::chrono::hours(1), start + std::chrono::hours(2), 300);
    EXPECT_EQ(seen.size(), 2U);
}

TEST(Decimation, NothingOfNothing) {
    EXPECT_TRUE(decimated({}, start, start + std::chrono::hours(1), 100).empty());
    EXPECT_EQ(decimated(wave(10), start, start, 100).size(), 2U);
    EXPECT_EQ(decimated(wave(10), start, start + std::chrono::hours(1), 0).size(), 10U);
}
