// What is refused, and how it is said.
#include "core/exchange/csv_readings.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

namespace ringhold {
namespace {

using testing::HasSubstr;
using namespace std::string_literals;

struct Refused {
    const char* name;
    std::string bytes;
    long line;
    const char* what;
    CsvOptions options{};
};

class CsvBadInput : public testing::TestWithParam<Refused> {};

TEST_P(CsvBadInput, IsRefusedWithItsLine) {
    const auto readings = parseCsv(GetParam().bytes, GetParam().options);
    ASSERT_FALSE(readings.ok());
    EXPECT_EQ(readings.error().kind, ErrorKind::badInput);
    EXPECT_EQ(readings.error().line, GetParam().line) << readings.error().text();
    EXPECT_THAT(readings.error().what, HasSubstr(GetParam().what));
    EXPECT_EQ(readings.error().text().find('\n'), std::string::npos);
}

const std::string header = "time_utc,probe_C\n";
const std::string first = header + "2026-03-01T06:00:00Z,20\n";

INSTANTIATE_TEST_SUITE_P(
    Files, CsvBadInput,
    testing::Values(
        Refused{"Empty", "", 1, "is empty"}, Refused{"Blank", "\n \n\r\n", 1, "is empty"},
        Refused{"OnlyMark", "\xEF\xBB\xBF", 1, "is empty"}, Refused{"OnlyComment", "# x", 1, "is empty"},
        Refused{"HeaderOnly", header, 1, "no reading below"},
        Refused{"HeaderAndEmptyRows", header + ",\n,\n", 1, "no reading below"},
        Refused{"Headerless", "2026-03-01T06:00:00Z,20\n2026-03-01T06:01:00Z,21\n", 1, "no header"},
        Refused{"HeaderlessNumbers", "\n0,20\n60,21\n", 2, "no header"},
        Refused{"Binary",
                "\x7F"
                "ELF\x02\x01\x01\0\0\0"s,
                1, "not a text file"},
        Refused{"BinaryLater", first + "\0\0\0\n"s, 3, "not a text file"},
        Refused{"Utf16WithoutMark", "t\0i\0m\0e\0\n\0"s, 1, "not a text file"},
        Refused{"Prose", "A fine firing it was.\nEverything melted.\n", 1, "no time column"},
        Refused{"Json", "{\"readings\": [\n1, 2]}\n", 1, "no time column"},
        Refused{"QuoteNeverClosed", first + "\"2026-03-01T06:01:00Z,21\n2026-03-01T06:02:00Z,22\n", 3,
                "never closed"},
        Refused{"QuoteInHeader", "\"time,probe_C\n1,2\n", 1, "never closed"},
        Refused{"TextBehindQuote", first + "\"2026-03-01T06:01:00Z\"x,21\n", 3, "behind a closing quote"},
        Refused{"OverlongCell", first + std::string(100'000, '1'), 3, "longer than any"},
        Refused{"OverlongHeader", "time," + std::string(100'000, 'x'), 1, "longer than any"},
        Refused{"TooManyColumns", "time" + std::string(2'000, ',') + "\n1\n", 1, "more than 1024 cells"}),
    [](const auto& each) { return each.param.name; });

INSTANTIATE_TEST_SUITE_P(
    Headers, CsvBadInput,
    testing::Values(
        Refused{"NoTemperature", "time,line_V\n2026-03-01T06:00:00Z,230\n", 1, "no temperature column"},
        Refused{"NoTime", "cone,probe_C\n9,20\n", 1, "no time column"},
        Refused{"NoUnit", "time,temp\n2026-03-01T06:00:00Z,20\n", 1,
                "\"temp\" does not say whether it is °C or °F"},
        Refused{"NoSuchControl",
                header + "2026-03-01T06:00:00Z,20\n",
                1,
                "no temperature column \"top\"",
                {.control = "top"}},
        Refused{"ControlWithoutUnit",
                "time,probe_C,muffle\n2026-03-01T06:00:00Z,20,21\n",
                1,
                "°C or °F",
                {.control = "muffle"}},
        Refused{"NoTimeUnit", "time,probe_C\n0,20\n60,21\n", 2, "seconds (s), minutes (min) or hours (h)"},
        Refused{"TimeOfDay", "time,probe_C\n20:41:00,20\n", 2, "without a date"},
        Refused{"ColonsUnsaid", "elapsed,probe_C\n0:30,20\n", 2, "not an elapsed time"},
        Refused{
            "UnknownZone", "time,probe_C\n2026-03-01T06:00:00,20\n", 2, "Atlantis", {.zone = "Atlantis"}}),
    [](const auto& each) { return each.param.name; });

INSTANTIATE_TEST_SUITE_P(
    Times, CsvBadInput,
    testing::Values(
        Refused{"Backwards", first + "2026-03-01T05:59:59Z,21\n", 3, "runs backwards"},
        Refused{"BackwardsByAMillisecond", first + "2026-03-01T06:00:01Z,21\n2026-03-01T06:00:00.999Z,21\n",
                4, "runs backwards"},
        Refused{"BackwardsWithoutValue", first + "2026-03-01T05:00:00Z,\n2026-03-01T06:01Z,", 3,
                "runs backwards"},
        Refused{"BackwardsElapsed", "elapsed_s,probe_C\n0,20\n10,21\n9,22\n", 4, "runs backwards"},
        Refused{"TwoValuesAtOnce", first + "2026-03-01T06:00:00Z,21\n", 3, "two different values"},
        Refused{"Missing", first + ",21\n", 3, "time is missing"},
        Refused{"MissingFirst", header + ",21\n", 2, "time is missing"},
        Refused{"NotATime", first + "later,21\n", 3, "\"later\" is not an ISO 8601"},
        Refused{"NoSuchDay", first + "2026-02-30T06:00:00Z,21\n", 3, "not an ISO 8601"},
        Refused{"DateOnly", header + "2026-03-01,21\n", 2, "not an ISO 8601"},
        Refused{"ElapsedAmongDates", first + "60,21\n", 3, "not an ISO 8601"},
        Refused{"DateAmongElapsed", "elapsed_s,probe_C\n0,20\n2026-03-01T06:00:00Z,21\n", 3,
                "not an elapsed time"},
        Refused{"ElapsedNan", "elapsed_s,probe_C\nnan,20\n", 2, "not an elapsed time"},
        Refused{"ElapsedEndless", "elapsed_s,probe_C\n0,20\n1e300,21\n", 3, "longer than any firing"}),
    [](const auto& each) { return each.param.name; });

INSTANTIATE_TEST_SUITE_P(
    Values, CsvBadInput,
    testing::Values(
        Refused{"TooHot", first + "2026-03-01T06:01:00Z,6000\n", 3,
                "6000 °C is hotter than any kiln, in column \"probe_C\""},
        Refused{"JustTooHot", header + "2026-03-01T06:01:00Z,1800.01\n", 2, "hotter"},
        Refused{"TooHotInFahrenheit", "time,probe_F\n2026-03-01T06:01:00Z,3300\n", 2, "3300 °F is hotter"},
        Refused{"TooCold", first + "2026-03-01T06:01:00Z,-50.5\n", 3, "colder than any kiln"},
        Refused{"Nan", first + "2026-03-01T06:01:00Z,NaN\n", 3, "\"NaN\" is no reading"},
        Refused{"Infinite", first + "2026-03-01T06:01:00Z,-inf\n", 3, "no reading"},
        Refused{"Huge", first + "2026-03-01T06:01:00Z,1e400\n", 3, "not a number"},
        Refused{"Text", first + "2026-03-01T06:01:00Z,open\n", 3,
                "\"open\" is not a number, in column \"probe_C\""},
        Refused{"TextInAnotherColumn", "time,probe_C,line_V\n2026-03-01T06:01:00Z,20,low\n", 2,
                "in column \"line_V\""},
        Refused{"UnitInCell", first + "2026-03-01T06:01:00Z,21 °C\n", 3, "not a number"},
        Refused{"TooManyCells", first + "2026-03-01T06:01:00Z,21,22\n", 3, "more cells than the header"},
        Refused{"DecimalCommaUnquoted", first + "2026-03-01T06:01:00Z,21,5\n", 3,
                "more cells than the header"},
        Refused{"Thousand", "time,probe_F\n2026-03-01T06:01:00Z,\"1,904\"\n", 2,
                "may be a decimal or a thousand"},
        Refused{"MixedDecimals", "time;probe_C\n2026-03-01T06:01Z;21,5\n2026-03-01T06:02Z;21.5\n", 3,
                "decimal point"},
        Refused{"NoValueInTheControlColumn",
                "time,probe_C,top_C\n2026-03-01T06:01Z,,20\n2026-03-01T06:02Z,,21\n", 3,
                "no value in any row"},
        Refused{"DutyBeyondFull", "time,probe_C,duty\n2026-03-01T06:01Z,20,50\n", 2, "more than full power"},
        Refused{"LineOfAnEmbeddedBreak",
                "time,probe_C,note\n2026-03-01T06:00Z,20,\"a\n\nb\"\n2026-03-01T06:01Z,x,\n", 5,
                "\"x\" is not"}),
    [](const auto& each) { return each.param.name; });

/// Any file does one of two things: it is read, or it is refused with a line.
void expectReadOrRefused(const std::string& bytes) {
    const auto readings = parseCsv(bytes, {.zone = "Europe/Paris"});
    if (!readings) {
        EXPECT_EQ(readings.error().kind, ErrorKind::badInput);
        EXPECT_TRUE(readings.error().line) << readings.error().text();
        EXPECT_LE(*readings.error().line, 1 + std::count_if(bytes.begin(), bytes.end(),
                                                            [](char c) { return c == '\n' || c == '\r'; }));
        return;
    }
    for (const auto& channel : readings->channels)
        for (std::size_t i = 1; i < channel.values.size(); ++i)
            ASSERT_LT(channel.values[i - 1].at, channel.values[i].at);
    for (const auto& value : readings->control().values) {
        ASSERT_GE(value.value, -50.0);
        ASSERT_LE(value.value, 1800.0);
    }
}

class CsvMutations : public testing::TestWithParam<const char*> {};

TEST_P(CsvMutations, NeverBreakTheReader) {
    const std::string good = GetParam();
    ASSERT_TRUE(parseCsv(good, {.zone = "Europe/Paris"}).ok()) << parseCsv(good).error().text();
    const std::vector<std::string> pieces{",",    ";",    "\t",      "\"",       "\"\"",
                                          "\n",   "\r",   "\r\n",    "\0"s,      "\xFF",
                                          "\xB0", "\xC2", "nan",     "-",        "1e9",
                                          "9999", ":",    "T",       "Z",        "°F",
                                          "'",    "#",    "sep=;\n", "\xFF\xFE", "2026-10-25T02:30",
                                          "time", "_C",   " "};
    std::mt19937 random(20260301);
    const auto upTo = [&](std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n)(random); };
    int read = 0;
    for (int round = 0; round < 4'000; ++round) {
        std::string bytes = good;
        for (std::size_t changes = 1 + upTo(3); changes > 0; --changes) {
            const std::size_t at = upTo(bytes.size());
            const std::size_t length = std::min(upTo(8), bytes.size() - at);
            switch (upTo(3)) {
            case 0:
                bytes.erase(at, length);
                break;
            case 1:
                bytes.insert(at, pieces[upTo(pieces.size() - 1)]);
                break;
            case 2:
                bytes.insert(at, bytes.substr(upTo(bytes.size()), 1 + upTo(40)));
                break;
            default:
                if (at < bytes.size())
                    bytes[at] = static_cast<char>(upTo(255));
            }
        }
        SCOPED_TRACE(bytes);
        expectReadOrRefused(bytes);
        read += parseCsv(bytes, {.zone = "Europe/Paris"}).ok();
        if (testing::Test::HasFailure())
            return;
    }
    EXPECT_GT(read, 100); // the mutations are gentle enough to get past the header
    EXPECT_LT(read, 3'900);
}

INSTANTIATE_TEST_SUITE_P(
    Seeds, CsvMutations,
    testing::Values("time_utc,probe_C,line_V,note\n2026-03-01T06:00:00Z,20.5,231,\"lit, \"\"slow\"\"\"\n"
                    "2026-03-01T06:30:00.250Z,1043.25,,\n2026-03-01T07:00:00Z,1100,228.5,\"two\nlines\"\n",
                    "# shed\r\nelapsed (min);temp (°F);duty (%)\r\n0;68,5;100\r\n10;200;50,5\r\n20,5;;0\r\n",
                    "time\tT1 °C\n2026-10-25 01:30\t1000\n2026-10-25 02:30\t1001\n2026-10-25 02:30\t1002\n"));

TEST(CsvFuzz, BytesWithoutSenseAreRefused) {
    std::mt19937 random(7);
    std::uniform_int_distribution<int> byte(0, 255);
    for (int round = 0; round < 500; ++round) {
        std::string bytes(static_cast<std::size_t>(round), '\0');
        for (char& c : bytes)
            c = static_cast<char>(byte(random));
        EXPECT_FALSE(parseCsv(bytes).ok());
        expectReadOrRefused(bytes);
    }
}

} // namespace
} // namespace ringhold
