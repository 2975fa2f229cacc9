#include "core/watch/hold_follower.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

using namespace std::chrono_literals;

/// A kiln at 1090 °C from minute 60 to 150, 8 °C over for ten minutes, then dropped to 1000 °C and kept
/// there.
const std::vector<std::pair<double, double>> kiln{{0, 900},    {60, 1090},  {100, 1090},
                                                  {101, 1098}, {110, 1098}, {111, 1090},
                                                  {150, 1090}, {160, 1000}, {240, 1000}};

class HoldFollowerTest : public testing::Test {
  protected:
    explicit HoldFollowerTest(Duration spacing = 30s) : m_curve(readEvery(curveOf(kiln), spacing)) {}

    void tell(double minute, const std::string& value) {
        m_settings.push_back({{}, {}, atMinute(minute), "hold", value, false});
    }
    /// Followed from the start, as it stands at that minute.
    const std::optional<HoldUnderWay>& at(double minute, const StepFollower* plan = nullptr) {
        follower.restart(m_settings, TemperatureScale::celsius);
        for (const auto& point : m_curve)
            if (point.at <= atMinute(minute))
                follower.add(point, m_curve, plan);
        return follower.hold();
    }

    HoldFollower follower;

  private:
    Curve m_curve;
    std::vector<Setting> m_settings;
};

TEST_F(HoldFollowerTest, FindsAHoldThatNobodyTold) {
    EXPECT_FALSE(at(76));
    const auto hold = at(84);
    ASSERT_TRUE(hold);
    EXPECT_EQ(hold->source, HoldSource::curve);
    EXPECT_NEAR(hold->band.target.celsius(), 1090, 1);
    EXPECT_NEAR(minuteOf(hold->from), 58.5, 1.5);
    EXPECT_FALSE(hold->planned);
    ASSERT_TRUE(follower.watch());
    EXPECT_EQ(follower.watch()->from(), hold->from);
}

TEST_F(HoldFollowerTest, KeepsItThroughAnExcursionAndTellsOfIt) {
    const auto before = at(90);
    EXPECT_EQ(at(108), before);
    const auto breach = follower.watch()->breach(atMinute(108));
    ASSERT_TRUE(breach);
    EXPECT_TRUE(breach->confirmed);
    EXPECT_EQ(breach->side, HoldSide::hot);
    EXPECT_EQ(at(149), before);
}

TEST_F(HoldFollowerTest, EndsItWithALongAbsenceAndFindsTheNext) {
    ASSERT_TRUE(at(165)) << "it may come back";
    EXPECT_NEAR(at(165)->band.target.celsius(), 1090, 1);
    const auto next = at(190);
    ASSERT_TRUE(next);
    EXPECT_NEAR(next->band.target.celsius(), 1000, 1);
    EXPECT_NEAR(minuteOf(next->from), 159.5, 1.5);
}

TEST_F(HoldFollowerTest, ObeysThePotterAtOnce) {
    tell(50, "1092 ± 4 °C");
    EXPECT_FALSE(at(57)) << "not there yet";
    const auto hold = at(62);
    ASSERT_TRUE(hold);
    EXPECT_EQ(hold->source, HoldSource::potter);
    EXPECT_EQ(hold->band.target.celsius(), 1092);
    EXPECT_EQ(hold->band.halfWidth.celsius(), 4);
    EXPECT_NEAR(minuteOf(hold->from), 59.5, 1);
    EXPECT_EQ(at(165), hold) << "still allowed to come back";
    EXPECT_EQ(at(190)->source, HoldSource::curve) << "left for good";
}

TEST_F(HoldFollowerTest, TakesABandForTheLevelThatItStandsAt) {
    tell(90, "± 3");
    EXPECT_EQ(at(89)->source, HoldSource::curve);
    const auto hold = at(92);
    ASSERT_TRUE(hold);
    EXPECT_EQ(hold->source, HoldSource::potter);
    EXPECT_EQ(hold->band.halfWidth.celsius(), 3);
    EXPECT_NEAR(hold->band.target.celsius(), 1090, 1);
}

TEST_F(HoldFollowerTest, LetsGoWhenThePotterSaysSo) {
    tell(50, "1090");
    tell(120, "over");
    EXPECT_TRUE(at(119));
    EXPECT_FALSE(at(122));
    EXPECT_FALSE(at(138)) << "not found again at once";
}

TEST_F(HoldFollowerTest, GoesByThePlanAndThePottersWordOnIt) {
    const Plan plan{"held", {Hold{celsius(1090), 3h, degreesC(6)}, Cool{celsius(700), {}}}};
    PlanContext context;
    context.start = atMinute(58);
    StepFollower steps(plan, context);
    steps.restart(curveOf({{58, 1088}, {62, 1090}}), {});
    const auto hold = at(80, &steps);
    ASSERT_TRUE(hold);
    EXPECT_EQ(hold->source, HoldSource::plan);
    EXPECT_EQ(hold->planned, 3h);
    EXPECT_EQ(hold->band.halfWidth.celsius(), 6);
    tell(70, "± 2");
    const auto narrower = at(80, &steps);
    ASSERT_TRUE(narrower);
    EXPECT_EQ(narrower->source, HoldSource::plan);
    EXPECT_EQ(narrower->band.halfWidth.celsius(), 2);
    EXPECT_EQ(narrower->from, hold->from);
}

TEST_F(HoldFollowerTest, LeavesAConeWaitAlone) {
    const Plan plan{"soak", {ConeWait{"9", Rate::fromCelsiusPerHour(60), celsius(1090), celsius(1300), 4h}}};
    PlanContext context;
    context.start = atMinute(0);
    StepFollower steps(plan, context);
    steps.restart(curveOf({{0, 900}, {60, 1090}, {90, 1090}}), {});
    EXPECT_FALSE(at(90, &steps));
}

TEST_F(HoldFollowerTest, HearsWhatWasToldAfterTheLastReading) {
    const Curve curve = readEvery(curveOf({{0, 1090}, {45, 1090}}), 15min);
    follower.restart({{{}, {}, atMinute(50), "hold", "1090 ± 5", false}}, TemperatureScale::celsius);
    for (const auto& point : curve)
        follower.add(point, curve, nullptr);
    ASSERT_TRUE(follower.hold());
    EXPECT_EQ(follower.hold()->source, HoldSource::curve);
    follower.passTime(atMinute(50), curve, nullptr);
    ASSERT_TRUE(follower.hold());
    EXPECT_EQ(follower.hold()->source, HoldSource::potter);
    EXPECT_EQ(follower.hold()->from, atMinute(0));
}

} // namespace
} // namespace ringhold::test
