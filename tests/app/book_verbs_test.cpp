// bring, list, export, check and copy on a book of their own.
#include "tests/app/program.h"
#include "tests/core/exchange/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>

namespace ringhold {
namespace {

using testing::HasSubstr;

const std::string pastFiring = "time,probe_C\n2026-03-01T20:00:00Z,1000\n2026-03-01T20:01:00Z,1001.25\n"
                               "2026-03-01T20:02:00Z,\n2026-03-01T20:03:00Z,1003\n";

class BookVerbs : public testing::Test {
  protected:
    Ran bring(const std::vector<std::string>& more = {}) {
        const auto file = m_folder.with("past.csv", pastFiring).string();
        std::vector<std::string> arguments{"bring", file, "--book", m_book, "--kiln", "big"};
        arguments.insert(arguments.end(), more.begin(), more.end());
        return ringholdRuns(arguments);
    }
    const ScratchFolder m_folder;
    const std::string m_book = (m_folder / "notebook.ringhold").string();
};

TEST_F(BookVerbs, BringAFiringAndListIt) {
    const auto brought = bring({"--title", "Tall vases", "--json"});
    ASSERT_EQ(brought.status, 0) << brought.err;
    EXPECT_EQ(brought.json(), nlohmann::json({{"firing", 1}, {"readings", 3}, {"skipped", 1}}));
    const auto listed = ringholdRuns({"list", "--book", m_book, "--json"}).json();
    EXPECT_EQ(listed, nlohmann::json({{"firings",
                                       {{{"firing", 1},
                                         {"title", "Tall vases"},
                                         {"kiln", "big"},
                                         {"start", "2026-03-01T20:00:00Z"},
                                         {"end", "2026-03-01T20:03:00Z"},
                                         {"readings", 3},
                                         {"peak_C", 1003.0}}}}}));
    EXPECT_THAT(ringholdRuns({"list", "--book", m_book}).out, HasSubstr("Tall vases"));
}

TEST_F(BookVerbs, BringAPlanWithIt) {
    const auto plan =
        m_folder.with("plan.json", R"({"name":"Slow","steps":[{"climb":{"to_C":1000,"rate_C_per_h":60}}]})");
    ASSERT_EQ(bring({"--plan", plan.string()}).status, 0);
    const auto out = (m_folder / "out.json").string();
    ASSERT_EQ(ringholdRuns({"export", "--book", m_book, "--firing", "1", "--json", out}).status, 0);
    const auto json = nlohmann::json::parse(ScratchFolder::bytesOf(out), nullptr, false);
    EXPECT_EQ(json["firing"]["plan"]["name"], "Slow");
}

TEST_F(BookVerbs, WriteNothingWhenThePlanIsBad) {
    const auto plan = m_folder.with("plan.json", R"({"name":"Slow","steps":[{"fly":{"to_C":1000}}]})");
    const auto ran = bring({"--plan", plan.string()});
    EXPECT_EQ(ran.status, 2);
    EXPECT_EQ(ran.errorLines(), 1);
    EXPECT_THAT(ran.err, HasSubstr("plan.json"));
    EXPECT_FALSE(std::filesystem::exists(m_book));
}

TEST_F(BookVerbs, ExportWhatComesBackUnchanged) {
    bring();
    const auto out = (m_folder / "out.csv").string();
    const auto again = (m_folder / "again.csv").string();
    ASSERT_EQ(ringholdRuns({"export", "--book", m_book, "--firing", "1", "--csv", out}).status, 0);
    ASSERT_EQ(ringholdRuns({"bring", out, "--book", m_book, "--kiln", "big", "--again"}).status, 0);
    ASSERT_EQ(ringholdRuns({"export", "--book", m_book, "--firing", "2", "--csv", again}).status, 0);
    EXPECT_EQ(ScratchFolder::bytesOf(out), ScratchFolder::bytesOf(again));
    EXPECT_THAT(ScratchFolder::bytesOf(out), HasSubstr("2026-03-01T20:01:00Z,1001.25\n"));
}

/// A firing whose glaze, cone, grade and notes can be looked for.
const char* findable = R"({"ringhold_firing": 1,
"firing": {"id": 1, "kiln": 1, "title": "Bottles", "began": "2026-05-10T06:00:00Z",
 "ended": "2026-05-10T20:00:00Z", "plan": null, "model": ""},
"kiln": {"id": 1, "name": "Shed", "fuel": "electric", "volume_L": null, "rated_W": null, "rated_V": null,
 "price_per_kWh": null, "note": ""},
"probes": [], "channels": [], "packs": [{"id": 1, "firing": 1, "place": "", "type": "large",
 "cones": ["8", "9", "10"], "leans_left": false}], "looks": [], "settings": [],
"notes": [{"id": 1, "firing": 1, "at": "2026-05-10T07:00:00Z", "text": "Türe klemmt", "struck": false}],
"pieces": [{"id": 1, "firing": 1, "name": "bottle", "glaze": "Frost 2", "shelf": "", "catcher": true,
 "sagger": false}], "outcomes": [{"piece": 1, "crystals": null, "largest_mm": null, "rings": null,
 "faults": "", "grade": "B", "note": ""}], "filed_offsets": [], "readings": []})";

TEST_F(BookVerbs, FindFiringsInTheList) {
    ASSERT_EQ(bring({"--title", "Tall vases"}).status, 0);
    const auto file = m_folder.with("bottles.json", findable).string();
    ASSERT_EQ(ringholdRuns({"bring", file, "--book", m_book}).status, 0);
    const auto found = [&](std::vector<std::string> arguments) {
        arguments.insert(arguments.begin(), {"list", "--book", m_book, "--json"});
        std::string titles;
        const auto listed = ringholdRuns(arguments).json();
        for (const auto& firing : listed["firings"])
            titles += firing["title"].get<std::string>() + ";";
        return titles;
    };
    EXPECT_EQ(found({}), "Tall vases;Bottles;");
    EXPECT_EQ(found({"--kiln", "shed"}), "Bottles;");
    EXPECT_EQ(found({"--glaze", "frost"}), "Bottles;");
    EXPECT_EQ(found({"--cone", "9"}), "Bottles;");
    EXPECT_EQ(found({"--cone", "10"}), "");
    EXPECT_EQ(found({"--grade", "b"}), "Bottles;");
    EXPECT_EQ(found({"--words", "ture klem"}), "Bottles;");
    EXPECT_EQ(found({"--words", "vase"}), "Tall vases;");
    EXPECT_EQ(found({"--from", "2026-03-03"}), "Bottles;");
    EXPECT_EQ(found({"--until", "2026-03-02"}), "Tall vases;");
    EXPECT_EQ(found({"--from", "2026-02-27", "--until", "2026-03-02", "--kiln", "big"}), "Tall vases;");
    EXPECT_EQ(found({"--from", "2026-02-27", "--until", "2026-03-02", "--kiln", "shed"}), "");
    EXPECT_EQ(ringholdRuns({"list", "--book", m_book, "--words", "celadon"}).out, "No such firing.\n");
}

TEST_F(BookVerbs, RefuseToListWhatMakesNoSense) {
    bring();
    for (const char* day : {"yesterday", "2026-02-30", "2026-3-1", "2026-03-01T10:00:00Z", ""}) {
        const auto ran = ringholdRuns({"list", "--book", m_book, "--from", day});
        EXPECT_EQ(ran.status, *day ? 2 : 0) << day;
        EXPECT_EQ(ran.errorLines(), *day ? 1 : 0) << ran.err;
    }
    const auto nobody = ringholdRuns({"list", "--book", m_book, "--kiln", "nobody's"});
    EXPECT_EQ(nobody.status, 2);
    EXPECT_THAT(nobody.err, HasSubstr("there is no kiln \"nobody's\""));
}

TEST_F(BookVerbs, BringTheSameFiringOnlyWhenToldAgain) {
    ASSERT_EQ(bring({"--title", "Tall vases"}).status, 0);
    const auto twice = bring({"--json"});
    EXPECT_EQ(twice.status, 0) << twice.err;
    EXPECT_EQ(twice.json(),
              nlohmann::json({{"firing", 1}, {"readings", 0}, {"skipped", 0}, {"already", true}}));
    EXPECT_THAT(bring().out, HasSubstr("it is firing 1 already, \"Tall vases\" in big"));
    EXPECT_EQ(ringholdRuns({"list", "--book", m_book, "--json"}).json()["firings"].size(), 1u);
    EXPECT_EQ(bring({"--again", "--json"}).json()["firing"], 2);
}

TEST_F(BookVerbs, BringAFiringAsJsonIntoAnotherBook) {
    ASSERT_EQ(bring({"--title", "Tall vases"}).status, 0);
    const auto file = (m_folder / "firing.json").string();
    const auto other = (m_folder / "other.ringhold").string();
    ASSERT_EQ(ringholdRuns({"export", "--book", m_book, "--firing", "1", "--json", file}).status, 0);
    const auto brought = ringholdRuns({"bring", file, "--book", other, "--json"});
    ASSERT_EQ(brought.status, 0) << brought.err;
    EXPECT_EQ(brought.json(), nlohmann::json({{"firing", 1}, {"readings", 3}, {"skipped", 0}}));
    EXPECT_EQ(ringholdRuns({"list", "--book", other, "--json"}).out,
              ringholdRuns({"list", "--book", m_book, "--json"}).out);
    EXPECT_THAT(ringholdRuns({"bring", file, "--book", m_book}).out, HasSubstr("firing 1 already"));
    const auto renamed =
        ringholdRuns({"bring", file, "--book", other, "--kiln", "small", "--title", "Mine", "--again"});
    ASSERT_EQ(renamed.status, 0) << renamed.err;
    const auto last = ringholdRuns({"list", "--book", other, "--json"}).json()["firings"][1];
    EXPECT_EQ(last["kiln"], "small");
    EXPECT_EQ(last["title"], "Mine");
}

TEST_F(BookVerbs, BringNothingOfABrokenJson) {
    const auto file = m_folder.with("cut.json", R"({"ringhold_firing": 2, "firing": {"id": )").string();
    const auto ran = ringholdRuns({"bring", file, "--book", m_book});
    EXPECT_EQ(ran.status, 2);
    EXPECT_EQ(ran.errorLines(), 1) << ran.err;
    EXPECT_THAT(ran.err, HasSubstr("cut.json:1: the JSON text ends too early"));
    EXPECT_FALSE(std::filesystem::exists(m_book));
}

TEST_F(BookVerbs, BringColumnsAsTheyAreSaidToBe) {
    const auto file = m_folder
                          .with("odd.csv", "when;chamber;door;line\n0;1832,5;100;230\n"
                                           "1;1834,3;101;231\n")
                          .string();
    const auto ran = ringholdRuns({"bring", file, "--book", m_book, "--kiln", "big", "--time", "when",
                                   "--time-unit", "min", "--began", "2026-03-01T20:00:00Z", "--take",
                                   "chamber=F", "--take", "line=V", "--column", "chamber"});
    ASSERT_EQ(ran.status, 0) << ran.err;
    EXPECT_THAT(ran.out, HasSubstr("column \"door\" holds nothing"));
    const auto out = (m_folder / "out.csv").string();
    ASSERT_EQ(ringholdRuns({"export", "--book", m_book, "--firing", "1", "--csv", out}).status, 0);
    EXPECT_EQ(ScratchFolder::bytesOf(out),
              "time_utc,chamber_C,line_V\n2026-03-01T20:00:00Z,1000.2777777777777,230\n"
              "2026-03-01T20:01:00Z,1001.2777777777777,231\n");
}

TEST_F(BookVerbs, BringRefusesWhatIsSaidOfNoColumn) {
    EXPECT_THAT(bring({"--take", "nowhere=C"}).err, HasSubstr("there is no column \"nowhere\""));
    EXPECT_THAT(bring({"--take", "probe_C=K"}).err, HasSubstr("--take is NAME="));
    EXPECT_THAT(bring({"--time", "nowhen"}).err, HasSubstr("there is no column \"nowhen\""));
    EXPECT_THAT(bring({"--time-unit", "fortnights"}).err, HasSubstr("--time-unit is s, min or h"));
    const auto file = m_folder.with("past.csv", pastFiring).string();
    const auto ran = ringholdRuns({"bring", file, "--book", m_book});
    EXPECT_EQ(ran.status, 2);
    EXPECT_THAT(ran.err, HasSubstr("--kiln is required"));
    EXPECT_FALSE(std::filesystem::exists(m_book));
}

TEST_F(BookVerbs, MakeAFormulaInAHeaderHarmlessAndGiveItBack) {
    const auto file = m_folder.with("f.csv", "time_utc,=1+1_C\n2026-03-01T20:00:00Z,1000\n").string();
    ASSERT_EQ(ringholdRuns({"bring", file, "--book", m_book, "--kiln", "big"}).status, 0);
    const auto out = (m_folder / "out.csv").string();
    ASSERT_EQ(ringholdRuns({"export", "--book", m_book, "--firing", "1", "--csv", out}).status, 0);
    EXPECT_THAT(ScratchFolder::bytesOf(out), testing::StartsWith("time_utc,'=1+1_C\n"));
    ASSERT_EQ(ringholdRuns({"bring", out, "--book", m_book, "--kiln", "big", "--again"}).status, 0);
    const auto again = (m_folder / "again.csv").string();
    ASSERT_EQ(ringholdRuns({"export", "--book", m_book, "--firing", "2", "--csv", again}).status, 0);
    EXPECT_EQ(ScratchFolder::bytesOf(again), ScratchFolder::bytesOf(out));
}

TEST_F(BookVerbs, ExportRefusesAFiringThatIsNotThere) {
    bring();
    const auto ran = ringholdRuns({"export", "--book", m_book, "--firing", "9", "--csv", "/nowhere/x.csv"});
    EXPECT_EQ(ran.status, 2);
    EXPECT_EQ(ran.errorLines(), 1) << ran.err;
    EXPECT_THAT(ran.err, HasSubstr("9"));
}

TEST_F(BookVerbs, ExportOntoAFullDiskFails) {
    bring();
    const auto ran = ringholdRuns({"export", "--book", m_book, "--firing", "1", "--csv", "/dev/full"});
    EXPECT_EQ(ran.status, 1);
    EXPECT_EQ(ran.errorLines(), 1) << ran.err;
    EXPECT_THAT(ran.err, HasSubstr("/dev/full"));
}

TEST_F(BookVerbs, CopyAndCheck) {
    bring();
    const auto copy = (m_folder / "copy.ringhold").string();
    ASSERT_EQ(ringholdRuns({"copy", "--book", m_book, "--to", copy}).status, 0);
    EXPECT_EQ(ringholdRuns({"check", "--book", copy}).status, 0);
    EXPECT_EQ(ringholdRuns({"list", "--book", copy, "--json"}).out,
              ringholdRuns({"list", "--book", m_book, "--json"}).out);
    const auto again = ringholdRuns({"copy", "--book", m_book, "--to", copy});
    EXPECT_EQ(again.status, 2); // never overwrites
    EXPECT_EQ(again.errorLines(), 1) << again.err;
    EXPECT_EQ(ringholdRuns({"copy", "--book", m_book, "--to", "/proc/copy.ringhold"}).status, 1);
}

TEST_F(BookVerbs, CheckFindsDamage) {
    bring();
    {
        std::fstream book(m_book, std::ios::in | std::ios::out | std::ios::binary);
        book.seekp(4096 * 2);
        book << std::string(4096, 'x');
    }
    const auto ran = ringholdRuns({"check", "--book", m_book});
    EXPECT_NE(ran.status, 0);
    EXPECT_EQ(ran.errorLines(), 1) << ran.err;
    EXPECT_THAT(ran.err, HasSubstr(m_book));
}

} // namespace
} // namespace ringhold
