#include "core/cones/bending.h"
#include "core/cones/cone_table.h"
#include "core/plan/cone_down_estimate.h"
#include "core/watch/firing_advice.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

/// 60 °C/h from 1100 °C to 1250 °C, read each minute; the probe is thought to read right, give or take 3 °C.
class FiringAdviceTest : public testing::Test {
  protected:
    static constexpr double lastMinute = 150;

    FiringAdviceTest() {
        Pack pack;
        pack.id = PackId{1};
        pack.cones = {"8", "9", "10"};
        m_forecast.emplace(*FiringForecast::make({pack}, {{TemperatureDifference{}, degreesC(3)}}));
        m_curve = readEvery(curveOf({{0, 1100}, {lastMinute, 1250}}), std::chrono::minutes(1));
        for (const auto& point : m_curve)
            m_forecast->add(point);
    }
    FiringAdvice advice() const { return FiringAdvice(*m_forecast, nullptr); }
    /// The truth for a probe that reads right, on the curve so far and on from there.
    std::optional<double> downMinute(const std::vector<std::pair<double, double>>& ahead,
                                     const char* cone) const {
        Curve whole = m_curve;
        for (const auto& point : curveOf(ahead))
            whole.push_back(point);
        const auto down = coneDownByHeatWork(ConeTable::builtIn())(whole, cone);
        return down ? std::optional(minuteOf(*down)) : std::nullopt;
    }

    std::optional<FiringForecast> m_forecast;
    Curve m_curve;
};

struct HoldCase {
    double at_C;
    const char* cone;
};

class HoldAdvice : public FiringAdviceTest, public testing::WithParamInterface<HoldCase> {};

TEST_P(HoldAdvice, SaysWhenTheConeIsDown) {
    const auto& c = GetParam();
    const double arrives = lastMinute + (c.at_C - 1250);
    const auto truth = downMinute({{arrives + 0.01, c.at_C}, {lastMinute + 1440, c.at_C}}, c.cone);
    const auto told = advice().downHolding(celsius(c.at_C), c.cone);
    ASSERT_TRUE(told && told->median && truth);
    EXPECT_NEAR(minuteOf(*told->median), *truth, 0.03 * (*truth - lastMinute) + 0.5);
    ASSERT_TRUE(told->p05 && told->p95);
    EXPECT_LT(*told->p05, *told->median);
    EXPECT_GT(*told->p95, *told->median);
}

INSTANTIATE_TEST_SUITE_P(Temperatures, HoldAdvice,
                         testing::Values(HoldCase{1250, "9"}, HoldCase{1262, "9"}, HoldCase{1275, "10"},
                                         HoldCase{1275, "9"}));

TEST_F(FiringAdviceTest, AKilnHeldTooColdNeverBringsTheConeDown) {
    const auto told = advice().downHolding(celsius(1100), "10");
    ASSERT_TRUE(told);
    EXPECT_FALSE(told->median);
    EXPECT_FALSE(advice().downHolding(celsius(1300), "no such cone"));
}

TEST_F(FiringAdviceTest, TheClimbAskedForBringsTheConeDownInTime) {
    double last = 1000;
    for (const double minutes : {16.0, 20.0, 25.0, 30.0}) {
        const auto climb = advice().climbToBeDownBy(atMinute(lastMinute + minutes), "10");
        ASSERT_TRUE(climb) << minutes;
        const double rate = climb->median.celsiusPerHour();
        EXPECT_LT(climb->p05, climb->median) << minutes;
        EXPECT_LT(climb->median, climb->p95) << minutes;
        EXPECT_LT(rate, last) << "more time, less haste";
        last = rate;
        const auto truth = downMinute({{lastMinute + 300, 1250 + 5 * rate}}, "10");
        ASSERT_TRUE(truth);
        EXPECT_NEAR(*truth, lastMinute + minutes, 1) << rate;
    }
}

TEST_F(FiringAdviceTest, SaysWhatNoClimbCanDo) {
    EXPECT_FALSE(advice().climbToBeDownBy(atMinute(lastMinute + 1), "10"));
    EXPECT_FALSE(advice().climbToBeDownBy(atMinute(lastMinute - 1), "9")) << "the past";
    const auto easy = advice().climbToBeDownBy(atMinute(lastMinute + 1000), "9");
    ASSERT_TRUE(easy) << "staying is enough";
    EXPECT_EQ(easy->median.celsiusPerHour(), 0);
}

TEST_F(FiringAdviceTest, MoreMinutesBendTheGuardCone) {
    const auto at = [&](int minutes) {
        const auto hour = advice().hourAfterMore(std::chrono::minutes(minutes), "10", "9");
        EXPECT_TRUE(hour);
        EXPECT_LE(hour->p05, hour->median);
        EXPECT_LE(hour->median, hour->p95);
        return hour->median;
    };
    EXPECT_LT(at(0), at(15));
    EXPECT_LT(at(15), at(30));
}

TEST_F(FiringAdviceTest, CoolingAddsToTheConesThatMove) {
    const auto cones = advice().afterDropNow();
    ASSERT_FALSE(cones.empty());
    for (const auto& cone : cones) {
        EXPECT_GE(cone.after.median, cone.now.median) << cone.cone;
        EXPECT_GE(cone.after.p95, cone.now.p95) << cone.cone;
    }
    const auto& guard = cones.back(); // cone 10, that is still far from down
    ASSERT_EQ(guard.cone, "10");
    EXPECT_GT(guard.after.median, guard.now.median + 0.02);
}

/// Heat work goes on while the kiln cools: a drop may come before the cone is down.
TEST_F(FiringAdviceTest, ADropBringsTheConeDownFromSoonerOnThanItGoesDownOfItself) {
    const auto told = advice().earliestDrop("9");
    ASSERT_TRUE(told && told->drop.median && told->down.median);
    const double sooner = minuteOf(*told->down.median) - minuteOf(*told->drop.median);
    EXPECT_GT(sooner, 1);
    EXPECT_LT(sooner, 12);
    EXPECT_LE(*told->drop.p05, *told->drop.median);
    EXPECT_LE(*told->drop.median, *told->drop.p95);
    // the truth of a probe that reads right, dropped then at 300 °C/h, is down and not much more
    const double at = minuteOf(*told->drop.median);
    const double top_C = 1100 + at;
    ASSERT_TRUE(downMinute({{at + 1.5, top_C + 1.5}, {at + 61.5, top_C - 298.5}}, "9"));
    EXPECT_FALSE(downMinute({{at - 1.5, top_C - 1.5}, {at + 58.5, top_C - 301.5}}, "9"));
    EXPECT_FALSE(advice().earliestDrop("no such cone"));
}

TEST_F(FiringAdviceTest, HasNothingToSayWithoutReadings) {
    const auto none = *FiringForecast::make(m_forecast->packs(), {{TemperatureDifference{}, degreesC(3)}});
    const FiringAdvice advice(none, nullptr);
    EXPECT_FALSE(advice.can());
    EXPECT_FALSE(advice.downHolding(celsius(1250), "9"));
    EXPECT_FALSE(advice.climbToBeDownBy(atMinute(10), "9"));
    EXPECT_FALSE(advice.hourAfterMore(std::chrono::minutes(15), "10", "9"));
    EXPECT_TRUE(advice.afterDropNow().empty());
    EXPECT_FALSE(advice.earliestDrop("9"));
}

} // namespace
} // namespace ringhold::test
