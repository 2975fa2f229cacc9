// A whole practice firing by the real program, and what its book gives back.
#include "core/units/time.h"
#include "tests/app/program.h"
#include "tests/core/exchange/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <sstream>

namespace ringhold {
namespace {

using testing::HasSubstr;

class PracticeVerb : public testing::Test {
  protected:
    static void SetUpTestSuite() {
        folder = new ScratchFolder;
        ran = ringholdRuns({"practice", "--headless", "--seed", "1", "--book", book()});
    }
    static void TearDownTestSuite() { delete folder; }

    static std::string book() { return (*folder / "practice.ringhold").string(); }
    static std::string exported(const std::string& how) {
        const auto file = (*folder / ("out" + how)).string();
        EXPECT_EQ(ringholdRuns({"export", "--book", book(), "--firing", "1", how, file}).status, 0);
        return ScratchFolder::bytesOf(file);
    }

    static ScratchFolder* folder;
    static Ran ran;
};
ScratchFolder* PracticeVerb::folder = nullptr;
Ran PracticeVerb::ran;

TEST_F(PracticeVerb, TellsTheWholeFiring) {
    ASSERT_EQ(ran.status, 0) << ran.err;
    EXPECT_EQ(ran.err, "");
    EXPECT_THAT(ran.out, HasSubstr("looked: "));
    EXPECT_THAT(ran.out, HasSubstr("cone 9 is down: the plan goes on"));
    EXPECT_THAT(ran.out, HasSubstr("Hold from "));
    EXPECT_THAT(ran.out, HasSubstr("Rings planned 5, counted 5"));
}

TEST_F(PracticeVerb, IsInTheBookWhole) {
    const auto firings = ringholdRuns({"list", "--book", book(), "--json"}).json()["firings"];
    ASSERT_EQ(firings.size(), 1u);
    // 17 h of three channels every 10 s.
    EXPECT_NEAR(firings[0]["readings"], 3 * 17.0 * 360, 3 * 1.5 * 360);
    EXPECT_NEAR(firings[0]["peak_C"], 1265, 15);
    EXPECT_FALSE(firings[0]["end"].is_null());
    EXPECT_EQ(ringholdRuns({"check", "--book", book()}).status, 0);
    const auto firing = nlohmann::json::parse(exported("--json"));
    EXPECT_EQ(firing["firing"]["plan"]["steps"].size(), 6u);
    EXPECT_EQ(firing["packs"][0]["cones"], nlohmann::json({"8", "9", "10"}));
    EXPECT_EQ(firing["filed_offsets"].size(), 1u);
    EXPECT_GT(firing["looks"].size(), 12u);
}

/// As a potter would use heatwork: with the curve and the looks as they were when the firing cone stood at 2
/// or 3 o'clock, it foretells when that was seen down.
TEST_F(PracticeVerb, ForeseesTheFiringConeFromCurveAndLooks) {
    const auto looks = nlohmann::json::parse(exported("--json"))["looks"];
    const auto firingCone = [](const nlohmann::json& look) { return look["cone"] == "9" && !look["cold"]; };
    std::string asOf, lastStanding, down;
    for (const auto& look : looks) {
        if (!firingCone(look))
            continue;
        if (asOf.empty() && look["hour"] >= 2)
            asOf = look["at"];
        (look["hour"] == 6 ? down : lastStanding) = look["at"];
    }
    ASSERT_FALSE(asOf.empty() || down.empty());
    ASSERT_LT(asOf, lastStanding);

    std::istringstream all(exported("--csv"));
    std::string csv;
    for (std::string line; std::getline(all, line) && (csv.empty() || line.substr(0, asOf.size()) <= asOf);)
        csv += line + "\n";
    std::vector<std::string> arguments{"heatwork", folder->with("sofar.csv", csv).string(), "--json"};
    const auto plain = ringholdRuns(arguments).json();
    for (const auto& look : looks)
        if (look["at"] <= asOf) {
            std::ostringstream hour;
            hour << look["hour"].get<double>();
            arguments.insert(arguments.end(),
                             {"--look", look["cone"].get<std::string>() + "@" +
                                            look["at"].get<std::string>() + "=" + hour.str()});
        }
    const auto looked = ringholdRuns(arguments).json();
    const auto& cone = looked["cones"][1];
    EXPECT_LE(cone["down"]["p05"], down);
    EXPECT_GE(cone["down"]["p95"], lastStanding);
    EXPECT_FALSE(cone["is_down"]);
    EXPECT_NE(cone["down"]["median"], plain["cones"][1]["down"]["median"]);
    const auto minutes = [](const nlohmann::json& interval) {
        return inMinutes(*parseIso8601(interval["p95"].get<std::string>()) -
                         *parseIso8601(interval["p05"].get<std::string>()));
    };
    EXPECT_LT(minutes(cone["down"]), 15);
    EXPECT_LT(minutes(cone["down"]), 0.5 * minutes(plain["cones"][1]["down"]));
}

TEST_F(PracticeVerb, LearnsTheKiln) {
    const auto again = ringholdRuns({"practice", "--headless", "--seed", "1", "--book", book()});
    ASSERT_EQ(again.status, 0) << again.err;
    // The first firing filed its offset, so that the second one knows more before any look.
    const auto firstForecast = [](const std::string& out) {
        const auto at = out.find("offset ");
        return out.substr(at, out.find('\n', at) - at);
    };
    EXPECT_EQ(firstForecast(ran.out), "offset +0 °C (90 %: -16 to +16)");
    EXPECT_NE(firstForecast(again.out), firstForecast(ran.out));
}

} // namespace
} // namespace ringhold
