#include "tests/app/curve_csv.h"
#include "tests/app/program.h"
#include "tests/core/exchange/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using testing::HasSubstr;

/// Minutes from the last reading to the median of a cone's "down".
double minutesAhead(const nlohmann::json& json, std::size_t cone) {
    const auto down = parseIso8601(json["cones"][cone]["down"]["median"].get<std::string>());
    const auto now = parseIso8601(json["as_of"].get<std::string>());
    return inMinutes(*down - *now);
}

class HeatworkVerb : public testing::Test {
  protected:
    /// A climb at 60 °C/h from 1000 °C that stands at this temperature now.
    std::string climbTo(double celsius) {
        CurveCsv csv(1000);
        csv.to(celsius, static_cast<int>(celsius) - 1000);
        return m_folder.with("climb.csv", csv.text()).string();
    }
    const ScratchFolder m_folder;
};

TEST_F(HeatworkVerb, ForeseesTheChartedEndPoint) {
    const auto ran = ringholdRuns({"heatwork", climbTo(1240), "--json"});
    ASSERT_EQ(ran.status, 0) << ran.err;
    const auto json = ran.json();
    EXPECT_EQ(json["as_of"], "2026-03-01T16:00:00Z");
    EXPECT_TRUE(json["offset_C"].contains("p05") && json["offset_C"].contains("p95"));
    EXPECT_NEAR(json["offset_C"]["median"], 0, 0.5);
    ASSERT_EQ(json["cones"].size(), 3u);
    for (const char* key : {"cone", "work", "hour", "down", "is_down"})
        EXPECT_TRUE(json["cones"][1].contains(key)) << key;
    EXPECT_EQ(json["cones"][1]["cone"], "9");
    EXPECT_FALSE(json["cones"][1]["is_down"]);
    // The law's own end point at 60 °C/h is 1258.2 °C for cone 9; the chart has 1260. 1 °C is 1 min.
    EXPECT_NEAR(minutesAhead(json, 1), 18.2, 1.5);
}

TEST_F(HeatworkVerb, MovesWithALook) {
    const auto file = climbTo(1240);
    const auto before = ringholdRuns({"heatwork", file, "--json"}).json();
    // Cone 8 down at 15:58, at 1238 °C on the probe, 10 °C early: the probe reads low, cone 9 comes sooner.
    const auto ran = ringholdRuns(
        {"heatwork", "--look", "8@2026-03-01T15:58:00Z=down", file, "--cones", "8,9,10", "--json"});
    ASSERT_EQ(ran.status, 0) << ran.err;
    const auto after = ran.json();
    EXPECT_TRUE(after["cones"][0]["is_down"]);
    EXPECT_LT(after["offset_C"]["median"], before["offset_C"]["median"]);
    EXPECT_LT(minutesAhead(after, 1), minutesAhead(before, 1) - 4);
    const auto width = [](const nlohmann::json& json) {
        return json["offset_C"]["p95"].get<double>() - json["offset_C"]["p05"].get<double>();
    };
    EXPECT_LT(width(after), width(before));
}

TEST_F(HeatworkVerb, TakesRateAndTop) {
    const auto file = climbTo(1240);
    const auto steady = ringholdRuns({"heatwork", file, "--json"}).json();
    const auto fast = ringholdRuns({"heatwork", file, "--rate", "120", "--json"}).json();
    EXPECT_LT(minutesAhead(fast, 1), minutesAhead(steady, 1) - 2);
    const auto soaked = ringholdRuns({"heatwork", file, "--top", "1242", "--json"}).json();
    EXPECT_GT(minutesAhead(soaked, 1), minutesAhead(steady, 1) + 2);
    // Falling, cone 10 never comes: null.
    const auto falling = ringholdRuns({"heatwork", file, "--rate", "-60", "--json"}).json();
    EXPECT_TRUE(falling["cones"][2]["down"]["p95"].is_null());
}

TEST_F(HeatworkVerb, SpeaksToPeople) {
    const auto ran = ringholdRuns({"heatwork", climbTo(1290)});
    EXPECT_EQ(ran.status, 0) << ran.err;
    EXPECT_THAT(ran.out, HasSubstr("Cone 8 is down"));
    EXPECT_THAT(ran.out, HasSubstr("90 %"));
}

} // namespace
} // namespace ringhold
