// Logging by the real program: what it has acknowledged is in the book, whatever happens to it.
#include "tests/app/background_program.h"
#include "tests/app/program.h"
#include "tests/app/pseudo_terminal.h"
#include "tests/core/exchange/scratch_folder.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <atomic>
#include <set>
#include <thread>

namespace ringhold {
namespace {

using testing::HasSubstr;

/// A meter that sends a line every few milliseconds, each value another.
class Meter {
  public:
    explicit Meter(const PseudoTerminal& terminal) : m_thread([this, &terminal] { send(terminal); }) {}
    ~Meter() {
        m_stop = true;
        m_thread.join();
    }

  private:
    void send(const PseudoTerminal& terminal) {
        for (int tenths = 0; !m_stop; ++tenths) {
            terminal.send(fmt::format("{:.1f}\n", 1000 + tenths / 10.0));
            std::this_thread::sleep_for(std::chrono::milliseconds(10));
        }
    }
    std::atomic<bool> m_stop = false;
    std::thread m_thread;
};

/// Time and value of a line that log printed: "time\tchannel\tvalue\tunit".
std::string readingIn(const std::string& line) {
    const auto first = line.find('\t');
    const auto second = line.find('\t', first + 1);
    const auto third = line.find('\t', second + 1);
    return line.substr(0, first) + "," + line.substr(second + 1, third - second - 1);
}

class LogVerb : public testing::Test {
  protected:
    std::vector<std::string> logFrom(const std::string& source,
                                     const std::vector<std::string>& more = {}) const {
        std::vector<std::string> all{"log", "--book", m_book, "--kiln", "big", "--source", source};
        all.insert(all.end(), more.begin(), more.end());
        return all;
    }
    nlohmann::json firings() const {
        return ringholdRuns({"list", "--book", m_book, "--json"}).json()["firings"];
    }
    /// "time,value" of every reading of the only firing.
    std::set<std::string> readings() const {
        const auto file = (m_folder / "out.csv").string();
        EXPECT_EQ(ringholdRuns({"export", "--book", m_book, "--firing", "1", "--csv", file}).status, 0);
        std::set<std::string> all;
        std::istringstream in(ScratchFolder::bytesOf(file));
        for (std::string line; std::getline(in, line);)
            all.insert(line);
        return all;
    }

    const ScratchFolder m_folder;
    const std::string m_book = (m_folder / "notebook.ringhold").string();
};

TEST_F(LogVerb, LosesNoAcknowledgedReadingWhenKilledAndResumesTheFiring) {
    const PseudoTerminal terminal;
    const auto arguments = logFrom("serial:" + terminal.device());
    std::vector<std::string> acknowledged;
    std::size_t beforeTheKill = 0;
    {
        const Meter meter(terminal);
        for (int kills = 0; kills < 3; ++kills) {
            BackgroundProgram log(arguments);
            ASSERT_TRUE(log.waitForLines(15)) << log.errors();
            log.killHard();
            const auto printed = log.lines();
            acknowledged.insert(acknowledged.end(), printed.begin(), printed.end());
        }
        beforeTheKill = acknowledged.size();
        BackgroundProgram log(arguments);
        ASSERT_TRUE(log.waitForLines(10)) << log.errors();
        EXPECT_EQ(log.terminate(), 0);
        EXPECT_EQ(log.errors(), "");
        const auto printed = log.lines();
        acknowledged.insert(acknowledged.end(), printed.begin(), printed.end());
    }
    ASSERT_GT(acknowledged.size(), beforeTheKill);

    const auto kept = readings();
    for (const auto& line : acknowledged)
        EXPECT_TRUE(kept.contains(readingIn(line))) << line;
    const auto all = firings();
    ASSERT_EQ(all.size(), 1u); // one firing, resumed three times
    EXPECT_EQ(all[0]["kiln"], "big");
    EXPECT_TRUE(all[0]["end"].is_null());
    EXPECT_GE(all[0]["readings"].get<std::size_t>(), acknowledged.size());
    EXPECT_EQ(ringholdRuns({"check", "--book", m_book}).status, 0);
}

TEST_F(LogVerb, WaitsForAnInstrumentThatIsNotThere) {
    const auto ran = ringholdRuns(logFrom("serial:/dev/ringhold-no-such-port", {"--seconds", "0.5"}));
    EXPECT_EQ(ran.status, 0) << ran.err;
    EXPECT_EQ(ran.out + ran.err, "");
    EXPECT_EQ(firings().size(), 1u);
}

TEST_F(LogVerb, ReplaysAFileToItsEnd) {
    const auto file =
        m_folder.with("past.csv", "time,probe_C,line_V\n2026-03-01T20:00:00Z,1000,231\n"
                                  "2026-03-01T20:01:00Z,1001.5,\n2026-03-01T20:02:00Z,1003,229\n");
    const auto ran = ringholdRuns(logFrom("replay:" + file.string() + "?speed=100000"));
    ASSERT_EQ(ran.status, 0) << ran.err;
    EXPECT_THAT(ran.out, HasSubstr("2026-03-01T20:01:00Z\tprobe\t1001.5\t°C\n"));
    EXPECT_EQ(std::count(ran.out.begin(), ran.out.end(), '\n'), 5);
    const auto all = firings();
    ASSERT_EQ(all.size(), 1u);
    EXPECT_EQ(all[0]["start"], "2026-03-01T20:00:00Z");
    EXPECT_EQ(all[0]["readings"], 5);
    EXPECT_EQ(all[0]["peak_C"], 1003);
}

TEST_F(LogVerb, LogsThePracticeKiln) {
    const auto ran = ringholdRuns(logFrom("practice:?seed=3&speed=1000", {"--seconds", "1"}));
    ASSERT_EQ(ran.status, 0) << ran.err;
    EXPECT_THAT(ran.out, HasSubstr("\tprobe\t"));
    EXPECT_THAT(ran.out, HasSubstr("\tvolts\t"));
    EXPECT_GT(firings()[0]["readings"], 100);
}

} // namespace
} // namespace ringhold
