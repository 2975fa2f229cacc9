#include "core/cones/down_times.h"
#include "core/cones/work_ahead.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

namespace ringhold {
namespace {

const Instant start{std::chrono::hours(492000)};

Instant minute(double minutes) {
    return start + durationFromMinutes(minutes);
}

Temperature celsius(double degrees) {
    return Temperature::fromCelsius(degrees);
}

const HeatWorkLaw& nine() {
    return ConeTable::builtIn().find("9")->law;
}

/// Seconds along a curve by the law's own exact integral, line by line.
double exactly(const Curve& curve, double shift_C, double work) {
    double before_s = 0;
    for (std::size_t i = 1; i < curve.size(); ++i) {
        const double from_K = curve[i - 1].temperature.kelvin() - shift_C;
        const double to_K = curve[i].temperature.kelvin() - shift_C;
        const double seconds = inSeconds(curve[i].at - curve[i - 1].at);
        if (const auto reached = nine().secondsToGain(work, from_K, to_K, seconds))
            return before_s + *reached;
        work -= nine().gained(from_K, to_K, seconds);
        before_s += seconds;
    }
    return INFINITY;
}

struct Ahead {
    const char* name;
    Curve curve;
};

class SecondsAlong : public testing::TestWithParam<Ahead> {};

TEST_P(SecondsAlong, AreThoseOfTheExactIntegralToATenthOfAMinute) {
    const std::vector<double> works{0.05, 0.2, 0.5, 0.8, 1.0};
    int reached = 0;
    for (const double shift_C : {-30.0, -8.0, 0.0, 14.0}) {
        std::vector<double> seconds(works.size());
        secondsAlong(nine(), GetParam().curve, shift_C, works, seconds);
        for (std::size_t i = 0; i < works.size(); ++i) {
            const double wanted_s = exactly(GetParam().curve, shift_C, works[i]);
            ASSERT_EQ(std::isinf(seconds[i]), std::isinf(wanted_s)) << shift_C << " " << works[i];
            if (std::isinf(wanted_s))
                continue;
            EXPECT_NEAR(seconds[i], wanted_s, 6) << shift_C << " " << works[i];
            ++reached;
        }
    }
    EXPECT_GT(reached, 4);
}

INSTANTIATE_TEST_SUITE_P(
    Curves, SecondsAlong,
    testing::Values(
        Ahead{"aClimb", {{minute(0), celsius(700)}, {minute(1000), celsius(1700)}}},
        Ahead{"aFastClimb", {{minute(0), celsius(1100)}, {minute(400), celsius(2100)}}},
        Ahead{"aSoak", {{minute(0), celsius(1235)}, {minute(1440), celsius(1235)}}},
        Ahead{"aClimbToASoak",
              {{minute(0), celsius(900)}, {minute(330), celsius(1230)}, {minute(1440), celsius(1230)}}},
        Ahead{"aCooling", {{minute(0), celsius(1285)}, {minute(120), celsius(700)}}},
        Ahead{"upAndDown",
              {{minute(0), celsius(20)},
               {minute(300), celsius(1265)},
               {minute(360), celsius(900)},
               {minute(500), celsius(1270)},
               {minute(1440), celsius(1270)}}}),
    [](const auto& tested) { return std::string(tested.param.name); });

/// Cone 9 at 1230 °C after a climb at 60 °C/h.
HeatWorkGrid climbed() {
    HeatWorkGrid grid({ConeTable::builtIn().find("9")}, ShiftGrid(-40, 40));
    for (double m = 0; m <= 330; m += 1)
        grid.add({minute(m), celsius(900 + m)});
    return grid;
}

/// Up at about 60 °C/h in five cases, to a top.
FutureTemperature rising(double top_C) {
    return climbOn(minute(330), celsius(1230), Rate::fromCelsiusPerHour(60), Rate::fromCelsiusPerHour(4),
                   celsius(top_C));
}

/// The same distribution, drawn cell by cell: each believed shift and case apart.
double bruteShareBy(const HeatWorkGrid& grid, const FutureTemperature& future, const GridDistribution& shift,
                    double work, double t_s) {
    double share = 0;
    for (std::size_t i = 0; i < shift.size(); ++i)
        for (const auto& possible : future.cases) {
            const double lnNow = grid.shifts().interpolated(grid.lnWork(0), shift.at_C(i));
            const double down_s =
                std::exp(lnNow) >= work ? -1 : exactly(possible.curve, shift.at_C(i), work - std::exp(lnNow));
            share += down_s <= t_s ? shift[i] * possible.weight : 0;
        }
    return share / shift.sum();
}

TEST(DownTimesOf, AConeAreThoseOfEachShiftAndCaseApart) {
    const HeatWorkGrid grid = climbed();
    for (const double sd_C : {1.5, 6.0}) {
        const auto shift = GridDistribution::normal(grid.shifts().at_C(0), 0.5, 161, 4, sd_C);
        for (const double top_C : {1255.0, 1300.0}) {
            const auto future = rising(top_C);
            const WorkAhead ahead(grid, 0, future, {0.4, 1.0}, shift);
            for (const std::size_t work : {0u, 1u}) {
                DownTimes times(ahead);
                times.add(shift, work, 1.0);
                for (const double m : {5.0, 15.0, 25.0, 40.0, 90.0})
                    EXPECT_NEAR(times.probabilityBy(minute(330 + m)),
                                bruteShareBy(grid, future, shift, work == 0 ? 0.4 : 1.0, m * 60), 0.03)
                        << sd_C << " " << top_C << " " << work << " " << m;
            }
        }
    }
}

TEST(DownTimesOf, AConeHaveQuantilesWhereTheirSharesAre) {
    const HeatWorkGrid grid = climbed();
    const auto shift = GridDistribution::normal(grid.shifts().at_C(0), 0.5, 161, 4, 5);
    const auto future = rising(1300);
    const WorkAhead ahead(grid, 0, future, {1.0}, shift);
    DownTimes times(ahead);
    times.add(shift, 0, 1.0);
    const auto when = times.interval();
    ASSERT_TRUE(when.p05 && when.median && when.p95);
    EXPECT_NEAR(times.probabilityBy(*when.p05), 0.05, 0.005);
    EXPECT_NEAR(times.probabilityBy(*when.median), 0.5, 0.005);
    EXPECT_NEAR(times.probabilityBy(*when.p95), 0.95, 0.005);
}

TEST(DownTimesOf, AConeThatATopKeepsFromGoingDownAreNeverForSome) {
    const HeatWorkGrid grid = climbed();
    const auto shift = GridDistribution::normal(grid.shifts().at_C(0), 0.5, 161, 30, 5);
    const auto future = rising(1232); // 30 °C colder than it reads, for a day
    const WorkAhead ahead(grid, 0, future, {1.0}, shift);
    DownTimes times(ahead);
    times.add(shift, 0, 1.0);
    EXPECT_TRUE(times.interval().p05);
    EXPECT_LT(times.probabilityBy(minute(330) + std::chrono::hours(2)), 0.5);
}

} // namespace
} // namespace ringhold
