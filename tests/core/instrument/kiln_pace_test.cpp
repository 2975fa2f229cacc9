#include "core/instrument/kiln_pace.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace ringhold {
namespace {

using std::chrono::hours;
using std::chrono::milliseconds;
using std::chrono::seconds;

TEST(KilnPace, IsTheWallClockUntilItStarts) {
    const KilnPace pace(60);
    EXPECT_EQ(pace.kilnTime(Instant(seconds(77))), Instant(seconds(77)));
}

TEST(KilnPace, RunsAtItsSpeedFromItsStart) {
    KilnPace pace(60);
    pace.start(Instant(hours(500)), Instant(hours(3)));
    EXPECT_EQ(pace.kilnTime(Instant(hours(500))), Instant(hours(3)));
    EXPECT_EQ(pace.kilnTime(Instant(hours(500) + seconds(10))), Instant(hours(3) + seconds(600)));
    EXPECT_EQ(pace.wallTime(Instant(hours(3) + seconds(600))), Instant(hours(500) + seconds(10)));
}

class PaceSpeeds : public testing::TestWithParam<double> {};

TEST_P(PaceSpeeds, WakesWhenItIsTimeAndNotMuchLater) {
    KilnPace pace(GetParam());
    ASSERT_TRUE(pace.check().ok());
    pace.start(Instant(seconds(1'700'000'000)), Instant(seconds(1'600'000'000)));
    for (int i = 1; i < 5000; ++i) {
        const Instant due = Instant(seconds(1'600'000'000)) + i * milliseconds(9'973);
        const Instant wall = pace.wallTime(due);
        ASSERT_GE(pace.kilnTime(wall), due);
        ASSERT_LT(pace.kilnTime(wall - milliseconds(1)), due);
    }
}

INSTANTIATE_TEST_SUITE_P(Pace, PaceSpeeds, testing::Values(0.1, 0.7, 1.0, 3.3, 60.0, 1234.5, 1e6));

TEST(KilnPace, RefusesASpeedThatMakesNoSense) {
    for (const double speed : {0.0, -1.0, 2e6, std::nan(""), std::numeric_limits<double>::infinity()})
        EXPECT_EQ(KilnPace(speed).check().error().kind, ErrorKind::badInput) << speed;
}

} // namespace
} // namespace ringhold
