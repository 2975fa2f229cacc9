#include "core/watch/look_doubt.h"
#include "tests/core/watch/curve_maker.h"

#include <gtest/gtest.h>

namespace ringhold::test {
namespace {

/// 60 °C/h from 1100 °C to 1265 °C; the probe reads right, as far as the looks that fit tell.
class LookDoubtTest : public testing::Test {
  protected:
    static constexpr double lastMinute = 165;

    void SetUp() override {
        Pack pack;
        pack.id = PackId{1};
        pack.cones = {"8", "9", "10"};
        m_forecast.emplace(*FiringForecast::make({pack}, {{TemperatureDifference{}, degreesC(10)}}));
        m_curve = readEvery(curveOf({{0, 1100}, {lastMinute, 1265}}), std::chrono::minutes(1));
    }
    /// Where a probe that is sure to read right would have the cone at that minute, to halves.
    double hourAt(const std::string& cone, double minute) {
        auto sure = *FiringForecast::make(m_forecast->packs(), {{TemperatureDifference{}, degreesC(0.1)}});
        for (const auto& point : m_curve)
            if (minuteOf(point.at) <= minute)
                sure.add(point);
        const auto told = *sure.forecast(nullptr);
        for (const auto& thought : told.packs[0].cones)
            if (thought.cone == cone)
                return std::round(thought.hourNow.median * 2) / 2;
        return 0;
    }
    Look look(int id, const std::string& cone, double minute, double hour) {
        return {LookId{id}, PackId{1}, atMinute(minute), cone, hour, false, false};
    }
    std::vector<LookDoubt> doubts(const std::vector<Look>& looks) {
        EXPECT_TRUE(m_forecast->restart(m_curve, atMinute(0), looks).ok());
        return doubtfulLooks(*m_forecast, looks, *m_forecast->forecast(nullptr), nullptr);
    }

    std::optional<FiringForecast> m_forecast;
    Curve m_curve;
};

TEST_F(LookDoubtTest, LooksThatFitAreNotDoubted) {
    EXPECT_TRUE(doubts({look(1, "8", 150, hourAt("8", 150)), look(2, "8", 160, hourAt("8", 160)),
                        look(3, "10", 160, 0)})
                    .empty());
}

TEST_F(LookDoubtTest, TheWrongConeIsPointedOutWithWhatItWouldMean) {
    const auto found = doubts({look(3, "10", 150, 5), look(1, "8", 150, hourAt("8", 150)),
                               look(2, "8", 160, hourAt("8", 160)), look(4, "9", 160, hourAt("9", 160))});
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].look.id, LookId{3});
    EXPECT_GT(found[0].probability, 0.5);
    // cone 10 so far down means that the cones feel much more than the probe reads
    EXPECT_LT(found[0].meant.celsius(), -30);
    EXPECT_GT(found[0].byTheRest.offset.median.celsius(), -10);
    EXPECT_LT(found[0].byTheRest.offset.median.celsius(), 10);
}

/// The offset meant puts the cone where the look saw it: the curve read lower by it is what the cone felt.
TEST_F(LookDoubtTest, TheOffsetMeantIsThatWhichPutsTheConeThere) {
    for (const double hour : {0.5, 1.0, 3.0, 6.0}) {
        const auto meant = offsetMeant(look(1, "9", 160, hour), ConeType::selfSupporting, m_curve);
        Pack pack;
        pack.cones = {"9"};
        auto sure = *FiringForecast::make({pack}, {{TemperatureDifference{}, degreesC(0.1)}});
        for (const auto& point : m_curve)
            if (minuteOf(point.at) <= 160)
                sure.add({point.at, point.temperature - meant});
        EXPECT_NEAR(sure.forecast(nullptr)->packs[0].cones[0].hour, hour, 0.02) << hour;
    }
}

/// Down, and then not down: whichever is wrong, the newer one is pointed out.
TEST_F(LookDoubtTest, AConeThatRisesAgainIsPointedOut) {
    const auto found = doubts({look(1, "8", 158, 6), look(2, "8", 162, 5)});
    ASSERT_FALSE(found.empty());
    EXPECT_EQ(found.back().look.id, LookId{2});
    const auto fitting = doubts({look(1, "8", 158, 5), look(2, "8", 162, 6)});
    EXPECT_TRUE(fitting.empty());
}

TEST_F(LookDoubtTest, AStruckLookIsNeitherDoubtedNorCounted) {
    auto wrong = look(3, "10", 150, 5);
    wrong.struck = true;
    EXPECT_TRUE(doubts({wrong, look(1, "8", 150, hourAt("8", 150))}).empty());
}

} // namespace
} // namespace ringhold::test
