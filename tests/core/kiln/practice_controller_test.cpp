#include "core/kiln/practice_controller.h"

#include <gtest/gtest.h>

#include <functional>

namespace ringhold {
namespace {

using std::chrono::minutes;
using std::chrono::seconds;

Temperature celsius(double degrees) {
    return Temperature::fromCelsius(degrees);
}

Rate perHour(double degrees) {
    return Rate::fromCelsiusPerHour(degrees);
}

/// A bare kiln of one node with a quick probe, so that the controller alone is on trial.
class Trial {
  public:
    Trial(const Plan& plan, double from_C) : m_controller(plan, perHour(900), seconds(0)), m_now_C(from_C) {}

    void second() {
        m_power = m_controller.demand(celsius(m_now_C), seconds(1));
        m_now_C += 0.25 * m_power - 0.1 * (m_now_C - 20) / 1000;
        ++m_seconds;
    }
    /// Runs until `over` or for a day; the seconds it took.
    int run(const std::function<bool()>& over) {
        const int from = m_seconds;
        while (!over() && m_seconds - from < 86'400)
            second();
        return m_seconds - from;
    }

    PracticeController m_controller;
    double m_now_C;
    double m_power = 0;
    int m_seconds = 0;
};

TEST(PracticeController, ClimbsAtItsRate) {
    Trial trial({"", {Climb{celsius(620), perHour(120)}}}, 20);
    trial.run([&] { return trial.m_now_C >= 220; });
    const int took_s = trial.run([&] { return trial.m_now_C >= 520; });
    EXPECT_NEAR(took_s / 3600.0, 2.5, 0.02);
    trial.run([&] { return trial.m_controller.finished(); });
    EXPECT_NEAR(trial.m_now_C, 620, 2.1);
}

TEST(PracticeController, SetPointWaitsForASlowKiln) {
    // 2000 °C/h is more than it can do: it must run full all the way and still not overshoot by much.
    Trial trial({"", {Climb{celsius(800), perHour(2000)}, Hold{celsius(800), minutes(60), {}}}}, 20);
    double top_C = 0;
    trial.run([&] {
        top_C = std::max(top_C, trial.m_now_C);
        return trial.m_controller.finished();
    });
    EXPECT_LT(top_C, 806);
    EXPECT_NEAR(trial.m_now_C, 800, 0.3);
}

TEST(PracticeController, HoldsForItsTimeOnceItIsThere) {
    Trial trial({"", {Hold{celsius(500), minutes(30), TemperatureDifference::fromCelsius(3)}}}, 20);
    trial.run([&] { return trial.m_now_C >= 498; });
    const int took_s = trial.run([&] { return trial.m_controller.finished(); });
    EXPECT_NEAR(took_s, 1800, 60);
    EXPECT_NEAR(trial.m_now_C, 500, 0.3);
}

TEST(PracticeController, DropsWithoutPowerAndCatchesItself) {
    Trial trial({"", {Drop{celsius(900), std::nullopt}, Hold{celsius(900), minutes(60), {}}}}, 1250);
    double low_C = 2000;
    trial.second();
    EXPECT_EQ(trial.m_power, 0.0);
    trial.run([&] {
        low_C = std::min(low_C, trial.m_now_C);
        return trial.m_controller.finished();
    });
    EXPECT_GT(low_C, 897);
}

TEST(PracticeController, DropsAtARateWhereOneIsGiven) {
    Trial trial({"", {Drop{celsius(800), perHour(-60)}}}, 1000);
    const int took_s = trial.run([&] { return trial.m_controller.finished(); });
    EXPECT_NEAR(took_s / 3600.0, 200.0 / 60.0, 0.05);
}

TEST(PracticeController, RunsEveryRing) {
    Trial trial({"", {Rings{4, celsius(1000), minutes(8), celsius(1030), minutes(6)}}}, 1030);
    int lows = 0;
    bool low = false;
    trial.run([&] {
        if (!low && trial.m_now_C < 1003) {
            low = true;
            ++lows;
        } else if (trial.m_now_C > 1027) {
            low = false;
        }
        return trial.m_controller.finished();
    });
    EXPECT_EQ(lows, 4);
    EXPECT_FALSE(low);
    EXPECT_GT(trial.m_seconds, 4 * (8 + 6) * 60);
}

Plan twoCones() {
    return {"",
            {ConeWait{"6", perHour(100), celsius(500), celsius(520), minutes(30)},
             ConeWait{"9", perHour(100), celsius(700), celsius(690), minutes(20)},
             Drop{celsius(400), std::nullopt}}};
}

TEST(PracticeController, SoaksNoLongerThanTheLongestAndNotAboveTheCeiling) {
    Trial trial(twoCones(), 450);
    trial.run([&] { return trial.m_now_C >= 498.1; });
    const int soaked_s = trial.run([&] { return trial.m_controller.step() == 1; });
    EXPECT_NEAR(soaked_s, 1800, 80); // the last 2 °C of its ramp are 72 s
    double top_C = 0;
    trial.run([&] {
        top_C = std::max(top_C, trial.m_now_C);
        return trial.m_controller.step() == 2;
    });
    EXPECT_NEAR(top_C, 690, 1.5); // its set point lies above the ceiling
}

TEST(PracticeController, ConeDownEndsTheWaitForThatConeOnly) {
    Trial trial(twoCones(), 450);
    trial.second();
    EXPECT_FALSE(trial.m_controller.coneDown("8"));
    EXPECT_EQ(trial.m_controller.step(), 0U);
    EXPECT_TRUE(trial.m_controller.coneDown("6")); // while it still climbs
    EXPECT_EQ(trial.m_controller.step(), 1U);
    EXPECT_FALSE(trial.m_controller.coneDown("6"));
    EXPECT_EQ(trial.m_controller.step(), 1U);
    EXPECT_TRUE(trial.m_controller.coneDown("9"));
    EXPECT_EQ(trial.m_controller.step(), 2U);
    trial.second();
    EXPECT_EQ(trial.m_power, 0.0);
}

TEST(PracticeController, AConeDownBeforeItsWaitSkipsThatWait) {
    Trial trial(twoCones(), 450);
    EXPECT_TRUE(trial.m_controller.coneDown("9"));
    EXPECT_EQ(trial.m_controller.step(), 2U);
}

TEST(PracticeController, AsksNoPowerWithoutAReadingOrAPlan) {
    PracticeController controller({"", {Climb{celsius(620), perHour(120)}}}, perHour(900), seconds(0));
    EXPECT_EQ(controller.demand(std::nullopt, seconds(1)), 0.0);
    PracticeController idle({}, perHour(900), seconds(0));
    EXPECT_TRUE(idle.finished());
    EXPECT_EQ(idle.step(), 0U);
    EXPECT_EQ(idle.demand(celsius(20), seconds(1)), 0.0);
}

} // namespace
} // namespace ringhold
