// What the program says to input that makes no sense: one line on standard error that names file and line,
// the right exit status, and nothing written.
#include "tests/app/program.h"
#include "tests/core/exchange/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace ringhold {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

/// Stands for the path of the file that a case is about.
const std::string given = "{given}";

struct Bad {
    const char* name;
    std::vector<std::string> arguments; ///< `given` stands for the file with `content`
    std::string content;
    std::string says; ///< `given` is the file again
    int status = 2;
};

void PrintTo(const Bad& bad, std::ostream* out) {
    *out << bad.name;
}

std::string filledIn(std::string text, const std::string& path) {
    if (const auto at = text.find(given); at != std::string::npos)
        text.replace(at, given.size(), path);
    return text;
}

class BadInput : public testing::TestWithParam<Bad> {};

TEST_P(BadInput, GetsOneClearLine) {
    const ScratchFolder folder;
    const auto path = folder.with("given.csv", GetParam().content).string();
    auto arguments = GetParam().arguments;
    for (auto& argument : arguments)
        argument = filledIn(argument, path);
    const auto ran = ringholdRuns(arguments);
    EXPECT_EQ(ran.status, GetParam().status) << ran.err;
    EXPECT_EQ(ran.errorLines(), 1) << ran.err;
    EXPECT_THAT(ran.err, StartsWith("ringhold: "));
    EXPECT_THAT(ran.err, HasSubstr(filledIn(GetParam().says, path)));
    EXPECT_EQ(ran.out, "");
    EXPECT_EQ(folder.files(), 1); // nothing half-written beside it
    EXPECT_EQ(ScratchFolder::bytesOf(path), GetParam().content);
}

std::string nameOf(const testing::TestParamInfo<Bad>& info) {
    return info.param.name;
}

const std::vector<std::string> holds{"holds", given, "--target", "1080", "--band", "5"};
std::vector<std::string> heatwork(const std::vector<std::string>& more = {}) {
    std::vector<std::string> all{"heatwork", given};
    all.insert(all.end(), more.begin(), more.end());
    return all;
}

const std::string header = "time,probe_C\n";
const std::string good = header + "2026-03-01T20:00:00Z,1000\n2026-03-01T20:01:00Z,1001\n"
                                  "2026-03-01T20:02:00Z,1002\n";
const std::string elapsed = "elapsed_s,probe_C\n0,1000\n60,1001\n120,1002\n";

INSTANTIATE_TEST_SUITE_P(
    Csv, BadInput,
    testing::Values(Bad{"Empty", holds, "", given}, Bad{"HeaderOnly", holds, header, given},
                    Bad{"Headerless", holds, "2026-03-01T20:00:00Z,1000\n2026-03-01T20:01:00Z,1001\n", given},
                    Bad{"Binary", holds,
                        std::string("\x7f"
                                    "ELF\0\1\2\3\0\0\xff\xfe\n\0",
                                    14),
                        given},
                    Bad{"TimeBackwards", holds,
                        header + "2026-03-01T20:01:00Z,1000\n2026-03-01T20:00:00Z,1001\n", given + ":3"},
                    Bad{"NotANumber", holds, header + "2026-03-01T20:00:00Z,1000\n2026-03-01T20:01:00Z,NaN\n",
                        given + ":3"},
                    Bad{"TooHot", holds, header + "2026-03-01T20:00:00Z,1000\n2026-03-01T20:01:00Z,6000\n",
                        given + ":3"},
                    Bad{"TextInACell", holds,
                        header + "2026-03-01T20:00:00Z,hot\n2026-03-01T20:01:00Z,1000\n", given + ":2"},
                    Bad{"TextForATime", holds, header + "tonight,1000\n", given + ":2"},
                    Bad{"NoTemperature", holds, "time,mood\n2026-03-01T20:00:00Z,good\n", given}),
    nameOf);

INSTANTIATE_TEST_SUITE_P(
    Files, BadInput,
    testing::Values(
        Bad{"Missing",
            {"holds", "/nowhere/at/all.csv", "--target", "1080", "--band", "5"},
            "",
            "/nowhere/at/all.csv"},
        Bad{"Folder", {"holds", "/tmp", "--target", "1080", "--band", "5"}, "", "/tmp"},
        Bad{"Unreadable",
            {"holds", "/proc/self/mem", "--target", "1080", "--band", "5"},
            "",
            "/proc/self/mem"},
        Bad{"FolderForABook", {"list", "--book", "/tmp"}, "", "/tmp"},
        Bad{"NoBook", {"list", "--book", "/nowhere/at/all.ringhold"}, "", "/nowhere/at/all.ringhold"},
        Bad{"TextForABook", {"list", "--book", given}, "dear diary", given},
        Bad{"EmptyForABook", {"check", "--book", given}, "", given},
        Bad{"BringIntoNoBook", {"bring", given, "--book", given, "--kiln", "big"}, good, given},
        Bad{"LogIntoNoBook", {"log", "--book", given, "--kiln", "big", "--source", "practice:"}, good, given},
        Bad{"FolderForThePlan",
            {"bring", given, "--book", "/nowhere/b", "--kiln", "big", "--plan", "/tmp"},
            good,
            "/tmp"}),
    nameOf);

INSTANTIATE_TEST_SUITE_P(
    Usage, BadInput,
    testing::Values(
        Bad{"UnknownVerb", {"glaze"}, "", "glaze"},
        Bad{"UnknownOption", {"emf", "--type", "K", "--celsius", "1", "--warm"}, "", "--warm"},
        Bad{"UnknownOptionWithoutVerb", {"--warm"}, "", "--warm"}, Bad{"NothingGiven", {"emf"}, "", "--type"},
        Bad{"BothGiven", {"emf", "--type", "K", "--celsius", "1", "--millivolts", "1"}, "", "--celsius"},
        Bad{"UnknownType", {"emf", "--type", "Q", "--celsius", "1"}, "", "Q"},
        Bad{"NoNumber", {"emf", "--type", "K", "--celsius", "warm"}, "", "warm"},
        Bad{"NotFinite", {"emf", "--type", "K", "--celsius", "nan"}, "", "nan"},
        Bad{"OutOfRange", {"emf", "--type", "K", "--celsius", "6000"}, "", "6000"},
        Bad{"MillivoltsOutOfRange", {"emf", "--type", "K", "--millivolts", "90"}, "", "90"},
        Bad{"BandBelowZero", {"holds", given, "--target", "1080", "--band", "-5"}, good, "--band"},
        Bad{"RingsUpsideDown", {"rings", given, "--high", "1050", "--low", "1080"}, good, "--high"},
        Bad{"UnknownScheme",
            {"log", "--book", "/nowhere/b", "--kiln", "big", "--source", "smoke:signal"},
            "",
            "smoke"},
        Bad{"UnknownParameter",
            {"log", "--book", "/nowhere/b", "--kiln", "big", "--source", "serial:/dev/null?bawd=9600"},
            "",
            "bawd"},
        Bad{"ImpossibleParameter",
            {"log", "--book", "/nowhere/b", "--kiln", "big", "--source", "serial:/dev/null?baud=fast"},
            "",
            "fast"},
        Bad{"PortBeyond",
            {"log", "--book", "/nowhere/b", "--kiln", "big", "--source", "tcp:here:99999"},
            "",
            "99999"},
        Bad{"ReplayOfNothing",
            {"log", "--book", "/nowhere/b", "--kiln", "big", "--source", "replay:/nowhere/a.csv"},
            "",
            "/nowhere/a.csv"}),
    nameOf);

INSTANTIATE_TEST_SUITE_P(
    HeatWork, BadInput,
    testing::Values(Bad{"UnknownCone", heatwork({"--cones", "8,99"}), good, "99"},
                    Bad{"LookAtUnknownCone", heatwork({"--look", "99@2026-03-01T20:01:00Z=2"}), good, "99"},
                    Bad{"ImpossibleHour", heatwork({"--look", "8@2026-03-01T20:01:00Z=7"}), good, "7"},
                    Bad{"HourInWords", heatwork({"--look", "8@2026-03-01T20:01:00Z=bent"}), good, "bent"},
                    Bad{"LookWithoutTime", heatwork({"--look", "8=2"}), good, "8=2"},
                    Bad{"LookTooEarly", heatwork({"--look", "8@2026-03-01T19:59:00Z=2"}), good, "19:59"},
                    Bad{"LookWithoutDate", heatwork({"--look", "8@2026-03-01T20:01:00Z=2"}), elapsed,
                        "--began"}),
    nameOf);

/// A disk that is full or only to be read, as far as a test can make one without changing the computer.
INSTANTIATE_TEST_SUITE_P(Disk, BadInput,
                         testing::Values(Bad{"BringOntoReadOnly",
                                             {"bring", given, "--book", "/proc/b.ringhold", "--kiln", "big"},
                                             good,
                                             "/proc/b.ringhold",
                                             1},
                                         Bad{"LogOntoReadOnly",
                                             {"log", "--book", "/proc/b.ringhold", "--kiln", "big",
                                              "--source", "practice:"},
                                             "",
                                             "/proc/b.ringhold",
                                             1},
                                         Bad{"PracticeOntoReadOnly",
                                             {"practice", "--headless", "--book", "/proc/b.ringhold"},
                                             "",
                                             "/proc/b.ringhold",
                                             1}),
                         nameOf);

TEST(LostOutput, FailsAVerbWhoseOutputIsLost) {
    const auto ran = ringholdRuns({"emf", "--type", "K", "--celsius", "1000"}, "/dev/full");
    EXPECT_EQ(ran.status, 1);
    EXPECT_EQ(ran.errorLines(), 1) << ran.err;
}

} // namespace
} // namespace ringhold
