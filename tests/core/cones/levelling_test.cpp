#include "core/cones/levelling.h"
#include "core/kiln/chance.h"
#include "core/kiln/two_node_kiln.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace ringhold {
namespace {

const Instant start{std::chrono::hours(492000)};

Instant minute(double minutes) {
    return start + durationFromMinutes(minutes);
}

/// Where a kiln of that power would come to rest.
double ceilingOf(const KilnConstants& kiln, Power power) {
    double low_C = 500, high_C = 2000;
    while (high_C - low_C > 0.1) {
        const double middle_C = (low_C + high_C) / 2;
        (holdingPower(kiln, Temperature::fromCelsius(middle_C)) > power ? high_C : low_C) = middle_C;
    }
    return low_C;
}

struct WeakKiln {
    double watts;
    double rate_C_per_h;
    int readEvery_s;
};

/// A tired kiln whose controller climbs steadily while it has the power.
class PracticeClimb {
  public:
    explicit PracticeClimb(const WeakKiln& weak) : m_weak(weak) {}

    /// Reads on until it lags `lag_C` behind the climb that is wanted; `more` beyond that.
    void untilItLags(double lag_C, Duration more = {}) {
        std::optional<int> lagged;
        for (; m_second < 40 * 3600; m_second += step_s) {
            if (!lagged && m_wanted_C - m_state.chamber.celsius() > lag_C)
                lagged = m_second;
            if (lagged && m_second >= *lagged + inSeconds(more))
                return;
            advance();
        }
    }
    const Curve& curve() const { return m_curve; }
    Temperature chamber() const { return m_state.chamber; }

  private:
    static constexpr int step_s = 20;

    void advance() {
        m_wanted_C += m_weak.rate_C_per_h * step_s / 3600;
        const auto after = [&](double share) {
            return advanced(m_kiln, m_state, Power{m_weak.watts * share}, std::chrono::seconds(step_s));
        };
        const double cold_C = after(0).chamber.celsius();
        const double share = (m_wanted_C - cold_C) / (after(1).chamber.celsius() - cold_C);
        m_state = after(std::clamp(share, 0.0, 1.0));
        if (m_second % m_weak.readEvery_s == 0)
            m_curve.push_back({start + std::chrono::seconds(m_second),
                               m_state.chamber + TemperatureDifference::fromCelsius(0.7 * m_noise.normal())});
    }

    WeakKiln m_weak;
    KilnConstants m_kiln = KilnConstants::tired();
    KilnState m_state{m_kiln.surroundings, m_kiln.surroundings};
    double m_wanted_C = m_kiln.surroundings.celsius();
    int m_second = 0;
    Curve m_curve;
    Chance m_noise{7};
};

class AWeakKiln : public testing::TestWithParam<WeakKiln> {};

TEST_P(AWeakKiln, IsSeenToLevelOffWellBeforeItDoesAndNearItsCeiling) {
    const double ceiling_C = ceilingOf(KilnConstants::tired(), Power{GetParam().watts});
    PracticeClimb climb(GetParam());
    climb.untilItLags(0.2);
    const auto steady = levellingShown(climb.curve());
    EXPECT_TRUE(!steady || steady->probability < levelsOffSurely) << "it has power enough yet";
    climb.untilItLags(1, std::chrono::minutes(75));
    EXPECT_LT(climb.chamber().celsius(), ceiling_C - 15);
    const auto levelling = levellingShown(climb.curve());
    ASSERT_TRUE(levelling);
    EXPECT_GE(levelling->probability, levelsOffSurely);
    EXPECT_LE(levelling->ceiling.p05.celsius(), ceiling_C);
    EXPECT_GE(levelling->ceiling.p95.celsius(), ceiling_C);
    EXPECT_LT((levelling->ceiling.p95 - levelling->ceiling.p05).celsius(), 130);
    EXPECT_TRUE(levelsOffBelow(*levelling, levelling->ceiling.p95 + TemperatureDifference::fromCelsius(10)));
    EXPECT_FALSE(levelsOffBelow(*levelling, levelling->ceiling.median)) << "it may get there";
    climb.untilItLags(1, std::chrono::minutes(90));
    const auto later = levellingShown(climb.curve());
    ASSERT_TRUE(later);
    EXPECT_NEAR(later->ceiling.median.celsius(), ceiling_C, 15);
    EXPECT_LT((later->ceiling.p95 - later->ceiling.p05).celsius(), 60);
}

INSTANTIATE_TEST_SUITE_P(Kilns, AWeakKiln,
                         testing::Values(WeakKiln{9000, 60, 20}, WeakKiln{9500, 60, 60},
                                         WeakKiln{10000, 60, 60}, WeakKiln{10500, 60, 60},
                                         WeakKiln{10000, 90, 20}));

struct SoundClimb {
    const char* name;
    double (*celsiusAt)(double minutes); ///< for three hours
};

class ASoundKiln : public testing::TestWithParam<SoundClimb> {};

/// Nothing of this is a lack of power, whatever the instant at which it is asked.
TEST_P(ASoundKiln, IsNotSaidToLevelOff) {
    int asked = 0;
    for (const unsigned seed : {1U, 2U, 3U}) {
        Chance noise(seed);
        Curve curve;
        for (double m = 0; m <= 180; m += 1) {
            curve.push_back(
                {minute(m), Temperature::fromCelsius(GetParam().celsiusAt(m) + 0.7 * noise.normal())});
            if (m < 30 || static_cast<int>(m) % 5 != 0)
                continue;
            const auto levelling = levellingShown(curve);
            ++asked;
            EXPECT_FALSE(levelling && levelsOffBelow(*levelling, Temperature::fromCelsius(1290)))
                << "seed " << seed << ", minute " << m << ", p " << levelling->probability;
        }
    }
    EXPECT_GT(asked, 40);
}

INSTANTIATE_TEST_SUITE_P(
    Climbs, ASoundKiln,
    testing::Values(
        SoundClimb{"steady", [](double m) { return 1080 + m; }},
        SoundClimb{"slow", [](double m) { return 1180 + 0.5 * m; }},
        SoundClimb{"wobblingController",
                   [](double m) { return 1080 + m + 1.5 * std::sin(m * 2 * 3.14159265 / 12); }},
        SoundClimb{"aSagOfHalfAnHour",
                   [](double m) { return 1080 + m - 0.25 * std::clamp(m - 60, 0.0, 30.0); }},
        SoundClimb{"aStallOfTwentyMinutes",
                   [](double m) { return 1080 + m - std::clamp(m - 80, 0.0, 20.0); }},
        SoundClimb{"aStepToHalfTheRate", [](double m) { return 1080 + m - 0.5 * std::max(m - 90, 0.0); }},
        SoundClimb{"aClimbThatQuickens", [](double m) { return 1080 + 0.7 * m + 0.002 * m * m; }}),
    [](const auto& tested) { return std::string(tested.param.name); });

TEST(Levelling, IsNotAskedOfAKilnThatHoldsOrFallsOrHasJustBegun) {
    Curve hold, fall, brief;
    for (double m = 0; m <= 120; m += 1) {
        hold.push_back({minute(m), Temperature::fromCelsius(1080)});
        fall.push_back({minute(m), Temperature::fromCelsius(1280 - 2 * m)});
        if (m < 25)
            brief.push_back({minute(m), Temperature::fromCelsius(1080 + m)});
    }
    EXPECT_FALSE(levellingShown({}));
    EXPECT_FALSE(levellingShown(hold));
    EXPECT_FALSE(levellingShown(fall));
    EXPECT_FALSE(levellingShown(brief));
}

TEST(Levelling, LeavesAloneWhatWasBeforeTheStep) {
    Curve curve; // the plan goes from 180 to 60 °C/h
    for (double m = 0; m <= 100; m += 1)
        curve.push_back({minute(m), Temperature::fromCelsius(900 + (m < 60 ? 3 * m : 180 + (m - 60)))});
    const auto levelling = levellingShown(curve, minute(60));
    ASSERT_TRUE(levelling);
    EXPECT_LT(levelling->probability, 0.1);
}

TEST(Levelling, CurveRisesToItsCeilingAtItsTimeConstant) {
    const LevellingCase one{1, Temperature::fromCelsius(1200), Rate::fromCelsiusPerHour(30),
                            Temperature::fromCelsius(1260)}; // 2 h
    const auto curve = levellingCurve(one, minute(0), std::nullopt);
    EXPECT_EQ(curve.front().at, minute(0));
    EXPECT_EQ(curve.back().at, minute(0) + forecastHorizon);
    EXPECT_NEAR(curve.back().temperature.celsius(), 1260, 0.3);
    for (const double m : {30.0, 120.0, 240.0})
        EXPECT_NEAR(temperatureAt(curve, minute(m)).celsius(), 1260 - 60 * std::exp(-m / 120), 0.5) << m;
    const auto capped = levellingCurve(one, minute(0), Temperature::fromCelsius(1230));
    EXPECT_NEAR(capped.back().temperature.celsius(), 1230, 1e-9);
    EXPECT_TRUE(std::ranges::is_sorted(curve, {}, &CurvePoint::at));
}

} // namespace
} // namespace ringhold
