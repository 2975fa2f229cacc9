// holds and rings on curves whose figures are known by construction.
#include "tests/app/curve_csv.h"
#include "tests/app/program.h"
#include "tests/core/exchange/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using testing::HasSubstr;

TEST(HoldsVerb, JudgesAHoldWithASag) {
    const ScratchFolder folder;
    // At 1080 for 2 h, a triangle of 10 min down to 1070, 2 h more; the edges of the band are at +-4.
    CurveCsv csv(1200);
    csv.to(1080, 20).stay(120).to(1070, 5).to(1080, 5).stay(120).to(600, 240);
    const auto file = folder.with("hold.csv", csv.text()).string();
    const auto ran = ringholdRuns({"holds", file, "--target", "1080", "--band", "4", "--json"});
    ASSERT_EQ(ran.status, 0) << ran.err;
    const auto holds = ran.json()["holds"];
    ASSERT_EQ(holds.size(), 1u);
    for (const char* key : {"start", "end", "minutes", "mean_C", "sd_C", "min_C", "max_C", "inside_percent",
                            "longest_excursion_minutes", "degree_minutes_above", "degree_minutes_below",
                            "drift_C_per_h", "excursions"})
        EXPECT_TRUE(holds[0].contains(key)) << key;
    // In at 1084, 40 s before 12:20, out at 1076, 2 min after 16:30.
    EXPECT_EQ(holds[0]["start"], "2026-03-01T12:19:20Z");
    EXPECT_EQ(holds[0]["end"], "2026-03-01T16:32:00Z");
    EXPECT_NEAR(holds[0]["minutes"], 252.667, 0.01);
    EXPECT_NEAR(holds[0]["min_C"], 1070, 0.001);
    EXPECT_NEAR(holds[0]["max_C"], 1084, 0.001);
    EXPECT_NEAR(holds[0]["longest_excursion_minutes"], 6, 0.01); // below 1076: 3 min down, 3 min up
    EXPECT_NEAR(holds[0]["degree_minutes_below"], 18, 0.01);     // a triangle of 6 min by 6 °C
    EXPECT_NEAR(holds[0]["degree_minutes_above"], 0, 0.01);
    EXPECT_NEAR(holds[0]["inside_percent"], 100 * (1 - 6 / 252.667), 0.01);
    ASSERT_EQ(holds[0]["excursions"].size(), 1u);
    EXPECT_EQ(holds[0]["excursions"][0]["start"], "2026-03-01T14:22:00Z");
    EXPECT_EQ(holds[0]["excursions"][0]["end"], "2026-03-01T14:28:00Z");
    EXPECT_NEAR(holds[0]["excursions"][0]["peak_C"], 1070, 0.001);
}

TEST(HoldsVerb, SaysThatThereIsNone) {
    const ScratchFolder folder;
    CurveCsv csv(20);
    const auto file = folder.with("climb.csv", csv.to(1200, 600).text()).string();
    const auto json = ringholdRuns({"holds", file, "--target", "1080", "--band", "4", "--json"}).json();
    EXPECT_EQ(json, nlohmann::json({{"holds", nlohmann::json::array()}}));
    const auto ran = ringholdRuns({"holds", file, "--target", "1080", "--band", "4"});
    EXPECT_EQ(ran.status, 0);
    EXPECT_THAT(ran.out, HasSubstr("No hold"));
}

TEST(RingsVerb, CountsTheReturnsOnly) {
    const ScratchFolder folder;
    CurveCsv csv(1200);
    csv.to(1090, 20).stay(60);
    for (int ring = 0; ring < 3; ++ring)
        csv.to(1050, 4).stay(10).to(1090, 4).stay(10);
    csv.to(1050, 4).stay(10).to(600, 120); // a low without a return
    const auto file = folder.with("rings.csv", csv.text()).string();
    const auto ran = ringholdRuns({"rings", file, "--high", "1090", "--low", "1050", "--json"});
    ASSERT_EQ(ran.status, 0) << ran.err;
    const auto json = ran.json();
    EXPECT_EQ(json["count"], 3);
    ASSERT_EQ(json["rings"].size(), 3u);
    for (const char* key :
         {"low_start", "low_minutes", "low_mean_C", "high_start", "high_minutes", "high_mean_C"})
        EXPECT_TRUE(json["rings"][0].contains(key)) << key;
    EXPECT_NEAR(json["rings"][1]["low_minutes"], 10, 1.0);
    EXPECT_NEAR(json["rings"][1]["low_mean_C"], 1050, 1.0);
    EXPECT_NEAR(json["rings"][1]["high_mean_C"], 1090, 1.0);
    EXPECT_THAT(ringholdRuns({"rings", file, "--high", "1090", "--low", "1050"}).out, HasSubstr("Ring 3: "));
}

} // namespace
} // namespace ringhold
