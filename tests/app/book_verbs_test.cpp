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
    ASSERT_EQ(ringholdRuns({"bring", out, "--book", m_book, "--kiln", "big"}).status, 0);
    ASSERT_EQ(ringholdRuns({"export", "--book", m_book, "--firing", "2", "--csv", again}).status, 0);
    EXPECT_EQ(ScratchFolder::bytesOf(out), ScratchFolder::bytesOf(again));
    EXPECT_THAT(ScratchFolder::bytesOf(out), HasSubstr("2026-03-01T20:01:00Z,1001.25\n"));
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
