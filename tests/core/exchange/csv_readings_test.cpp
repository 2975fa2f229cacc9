#include "core/exchange/csv_readings.h"
#include "tests/core/exchange/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using testing::ElementsAre;
using namespace std::string_literals;

Instant utc(const char* text) {
    return *parseIso8601(text);
}

struct Style {
    const char* name;
    std::string bytes;
    CsvOptions options{};
};

/// The same two readings, 20.5 °C at 06:00 UTC and 1043.25 °C half an hour later, as ever so many writers
/// have them.
class CsvStyles : public testing::TestWithParam<Style> {};

TEST_P(CsvStyles, SayTheSame) {
    const auto readings = parseCsv(GetParam().bytes, GetParam().options);
    ASSERT_TRUE(readings.ok()) << readings.error().text();
    const auto& values = readings->control().values;
    ASSERT_EQ(values.size(), 2u);
    EXPECT_TRUE(readings->absolute);
    EXPECT_EQ(values[0].at, utc("2026-03-01T06:00:00Z"));
    EXPECT_EQ(values[1].at, utc("2026-03-01T06:30:00Z"));
    EXPECT_NEAR(values[0].value, 20.5, 1e-9);
    EXPECT_NEAR(values[1].value, 1043.25, 1e-9);
    EXPECT_EQ(readings->rows, 2u);
    EXPECT_EQ(readings->skipped, 0u);
}

const CsvOptions fromSix{.began = utc("2026-03-01T06:00:00Z")};

INSTANTIATE_TEST_SUITE_P(
    Cells, CsvStyles,
    testing::Values(
        Style{"Own", "time_utc,probe_C\n2026-03-01T06:00:00Z,20.5\n2026-03-01T06:30:00Z,1043.25\n"},
        Style{"NoLastLineEnd", "time_utc,probe_C\n2026-03-01T06:00:00Z,20.5\n2026-03-01T06:30:00Z,1043.25"},
        Style{"CrLf", "time_utc,probe_C\r\n2026-03-01T06:00:00Z,20.5\r\n2026-03-01T06:30:00Z,1043.25\r\n"},
        Style{"Cr", "time_utc,probe_C\r2026-03-01T06:00:00Z,20.5\r2026-03-01T06:30:00Z,1043.25\r"},
        Style{"BlankLines",
              "\n\ntime_utc,probe_C\n\n2026-03-01T06:00:00Z,20.5\n \n2026-03-01T06:30:00Z,1043.25\n\n"},
        Style{"Comments",
              "# kiln 2\n# shed\ntime,probe_C\n2026-03-01T06:00:00Z,20.5\n2026-03-01T06:30:00Z,1043.25\n"},
        Style{"Semicolon", "time;probe_C\n2026-03-01T06:00:00Z;20,5\n2026-03-01T06:30:00Z;1043,25\n"},
        Style{"SemicolonPoint", "time;probe_C\n2026-03-01T06:00:00Z;20.5\n2026-03-01T06:30:00Z;1043.25\n"},
        Style{"Tab", "time\tprobe_C\n2026-03-01T06:00:00Z\t20,5\n2026-03-01T06:30:00Z\t1043,25\n"},
        Style{"Quoted", "\"time\",\"probe_C\"\n\"2026-03-01T06:00:00Z\",\"20,5\"\n\"2026-03-01T06:30:00Z\","
                        "\"1043,25\"\n"},
        Style{"TrailingSeparator",
              "time,probe_C,\n2026-03-01T06:00:00Z,20.5,\n2026-03-01T06:30:00Z,1043.25,,\n"},
        Style{"Blanks", "time , probe_C\n 2026-03-01T06:00:00Z , 20.5 \n2026-03-01T06:30:00Z,\t1043.25\n"},
        Style{"Told", "sep=;\ntime;probe_C\n2026-03-01T06:00:00Z;20,5\n2026-03-01T06:30:00Z;1043,25\n"}),
    [](const auto& each) { return each.param.name; });

INSTANTIATE_TEST_SUITE_P(
    Encodings, CsvStyles,
    testing::Values(
        Style{"Utf8Mark", "\xEF\xBB\xBFtime,°C\n2026-03-01T06:00:00Z,20.5\n2026-03-01T06:30:00Z,1043.25\n"},
        Style{"Latin1", "time,kiln (\xB0"
                        "C)\n2026-03-01T06:00:00Z,20.5\n2026-03-01T06:30:00Z,1043.25\n"},
        Style{
            "Utf16",
            "\xFF\xFEt\0i\0m\0e\0,\0\xB0\0"
            "C\0\n\0002\0000\0002\0006\0-\0000\0003\0-\0000\0001\0T\0000\0006\0:\0000\0000\0Z\0,\0002\0000\0."
            "\0005\0\n\000"
            "2\0000\0002\0006\0-\0000\0003\0-\0000\0001\0T\0000\0006\0:\0003\0000\0Z\0,\0001\0000\0004\0003\0.\0002\0005\0"s}),
    [](const auto& each) { return each.param.name; });

INSTANTIATE_TEST_SUITE_P(
    Times, CsvStyles,
    testing::Values(
        Style{"Offset", "time,probe_C\n2026-03-01T07:00:00+01:00,20.5\n2026-03-01 01:30-0500,1043.25\n"},
        Style{"Zone",
              "time,probe_C\n2026-03-01T07:00:00,20.5\n2026-03-01 07:30,1043.25\n",
              {.zone = "Europe/Paris"}},
        Style{"UtcInHeader",
              "time_utc,probe_C\n2026-03-01T06:00:00,20.5\n2026-03-01 06:30,1043.25\n",
              {.zone = "Europe/Paris"}},
        Style{"Milliseconds",
              "time,probe_C\n2026-03-01T06:00:00.000Z,20.5\n2026-03-01T06:30:00.0001Z,1043.25\n"},
        Style{"Seconds", "elapsed_s,probe_C\n0,20.5\n1800,1043.25\n", fromSix},
        Style{"SecondsWithFraction", "elapsed_s,probe_C\n0.0,20.5\n1.8e3,1043.25\n", fromSix},
        Style{"Minutes", "time_min,probe_C\n0,20.5\n30,1043.25\n", fromSix},
        Style{"Hours", "hours,probe_C\n0,20.5\n0.5,1043.25\n", fromSix},
        Style{"HoursComma", "t_h;probe_C\n0;20,5\n0,5;1043,25\n", fromSix},
        Style{"Bracket", "elapsed (min),probe_C\n0,20.5\n30,1043.25\n", fromSix},
        Style{"Colons", "elapsed,probe_C\n0:00:00,20.5\n0:30:00,1043.25\n", fromSix},
        Style{"ColonsFromZero", "time,probe_C\n00:00:00,20.5\n00:30:00,1043.25\n", fromSix},
        Style{"ColonsInHeader", "h:mm:ss,probe_C\n0:00:00,20.5\n0:30:00,1043.25\n", fromSix},
        Style{"ColonsHoursMinutes", "elapsed (h:mm),probe_C\n0:00,20.5\n0:30,1043.25\n", fromSix},
        Style{"ColonsMinutesSeconds", "time (mm:ss),probe_C\n0:00,20.5\n30:00,1043.25\n", fromSix},
        Style{"BeforeTheBeginning",
              "elapsed_min,probe_C\n-10,20.5\n20,1043.25\n",
              {.began = utc("2026-03-01T06:10:00Z")}},
        Style{"TimeLast", "probe_C,time\n20.5,2026-03-01T06:00Z\n1043.25,2026-03-01T06:30Z\n"},
        Style{"TimeByItsLook", "when,probe_C\n2026-03-01T06:00Z,20.5\n2026-03-01T06:30Z,1043.25\n"}),
    [](const auto& each) { return each.param.name; });

INSTANTIATE_TEST_SUITE_P(
    Units, CsvStyles,
    testing::Values(
        Style{"Fahrenheit", "time,temp (°F)\n2026-03-01T06:00Z,68.9\n2026-03-01T06:30Z,1909.85\n"},
        Style{"FahrenheitTold",
              "time,temp\n2026-03-01T06:00Z,68.9\n2026-03-01T06:30Z,1909.85\n",
              {.unit = TemperatureUnit::fahrenheit}},
        Style{"CelsiusTold",
              "time,T1\n2026-03-01T06:00Z,20.5\n2026-03-01T06:30Z,1043.25\n",
              {.unit = TemperatureUnit::celsius}},
        Style{"ControlNamed",
              "time,top_C,low_F\n2026-03-01T06:00Z,1,68.9\n2026-03-01T06:30Z,2,1909.85\n",
              {.control = "low"}},
        Style{"ControlFirst",
              "time,line_V,kiln_C,top_C\n2026-03-01T06:00Z,231,20.5,5\n2026-03-01T06:30Z,230,1043.25,6\n"},
        Style{"SetPointAside", "time,set_C,kiln_C\n2026-03-01T06:00Z,5,20.5\n2026-03-01T06:30Z,6,1043.25\n"},
        Style{"Notes", "time,probe_C,note\n2026-03-01T06:00Z,20.5,\"lit, at "
                       "last\n\"\"slowly\"\"\"\n2026-03-01T06:30Z,1043.25,\n"}),
    [](const auto& each) { return each.param.name; });

TEST(CsvReadings, KeepsEveryChannel) {
    const auto readings = parseCsv("time_utc,line_V,probe_C,line_A,top_F,flue_oxygen_mV,relay_duty,note\n"
                                   "2026-03-01T06:00:00Z,231.5,20,,32,-12.5,0.5,lit\n"
                                   "2026-03-01T06:01:00Z,,21,40,50,,100e-2,\n");
    ASSERT_TRUE(readings.ok()) << readings.error().text();
    std::vector<std::string> seen;
    for (const auto& channel : readings->channels)
        seen.push_back(channel.label + " " + std::to_string(static_cast<int>(channel.quantity)) + " " +
                       std::to_string(channel.values.size()));
    EXPECT_THAT(seen, ElementsAre("probe 0 2", "line 1 1", "line 2 1", "top 0 2", "flue 3 1", "relay 4 2"));
    EXPECT_THAT(readings->ignored, ElementsAre("note"));
    EXPECT_EQ(readings->channels[2].values[0], (TimedValue{utc("2026-03-01T06:01:00Z"), 40}));
    EXPECT_NEAR(readings->channels[3].values[1].value, 10, 1e-12);
    const Curve curve = readings->curve();
    ASSERT_EQ(curve.size(), 2u);
    EXPECT_EQ(curve[1].at, utc("2026-03-01T06:01:00Z"));
    EXPECT_EQ(curve[1].temperature.celsius(), 21);
}

TEST(CsvReadings, CountsWhatGaveNothing) {
    const auto readings = parseCsv("time,probe_C,line_V\n"
                                   ",,\n"                     // empty
                                   "2026-03-01T06:00Z,20,\n"  // a reading
                                   "2026-03-01T06:00Z,20,\n"  // once more
                                   "2026-03-01T06:00Z,,230\n" // the same instant's volts
                                   "2026-03-01T06:01Z,,\n"    // nothing at that time
                                   "2026-03-01T06:02Z\n"      // cut short
                                   "2026-03-01T06:03Z,21\n");
    ASSERT_TRUE(readings.ok()) << readings.error().text();
    EXPECT_EQ(readings->rows, 3u);
    EXPECT_EQ(readings->skipped, 4u);
    EXPECT_EQ(readings->control().values.size(), 2u);
    EXPECT_EQ(readings->channels[1].values.size(), 1u);
}

TEST(CsvReadings, SaysWhenThereIsNoBeginning) {
    const auto readings = parseCsv("elapsed_min,probe_C\n0,20\n90,500\n");
    ASSERT_TRUE(readings.ok());
    EXPECT_FALSE(readings->absolute);
    EXPECT_EQ(inMinutes(readings->control().values[1].at - readings->control().values[0].at), 90);
}

TEST(CsvReadings, FollowsTheClocksThroughAutumn) {
    // On 25 October 2026 the clocks of Paris go from 03:00 back to 02:00, at 01:00 UTC.
    const auto readings =
        parseCsv("time,probe_C\n2026-10-25T01:40,1\n2026-10-25T02:20,2\n2026-10-25T02:50,3\n"
                 "2026-10-25T02:20,4\n2026-10-25T02:50,5\n2026-10-25T03:10,6\n",
                 {.zone = "Europe/Paris"});
    ASSERT_TRUE(readings.ok()) << readings.error().text();
    std::vector<std::string> times;
    for (const auto& value : readings->control().values)
        times.push_back(formatIso8601(value.at).substr(11, 5));
    EXPECT_THAT(times, ElementsAre("23:40", "00:20", "00:50", "01:20", "01:50", "02:10"));
    const auto hourly = parseCsv("time,probe_C\n2026-10-25T02:00,1\n2026-10-25T02:00,2\n2026-10-25T03:00,3\n",
                                 {.zone = "Europe/Paris"});
    ASSERT_TRUE(hourly.ok()) << hourly.error().text();
    EXPECT_EQ(hourly->control().values[1].at, utc("2026-10-25T01:00Z"));
    // Twice back is not the clocks' doing.
    EXPECT_EQ(parseCsv("time,probe_C\n2026-10-25T02:30,1\n2026-10-25T02:20,2\n2026-10-25T02:10,3\n",
                       {.zone = "Europe/Paris"})
                  .error()
                  .line,
              4);
}

TEST(CsvReadings, FollowsTheClocksThroughSpring) {
    const std::string before = "time,probe_C\n2026-03-29T01:59,1\n";
    const auto readings = parseCsv(before + "2026-03-29T03:01,2\n", {.zone = "Europe/Paris"});
    ASSERT_TRUE(readings.ok());
    EXPECT_EQ(inMinutes(readings->control().values[1].at - readings->control().values[0].at), 2);
    const auto skipped = parseCsv(before + "2026-03-29T02:30,2\n", {.zone = "Europe/Paris"});
    EXPECT_EQ(skipped.error().text(),
              "line 3: there was no \"2026-03-29T02:30\" in the zone Europe/Paris: the "
              "clocks went forward over it");
}

TEST(CsvReadings, ReadsAFile) {
    const ScratchFolder folder;
    const auto good = folder.with("good.csv", "time,probe_C\n2026-03-01T06:00Z,20\n");
    EXPECT_EQ(readCsv(good)->control().label, "probe");
    const auto hot = folder.with("hot.csv", "time,probe_C\n\n2026-03-01T06:00Z,6000\n");
    EXPECT_EQ(readCsv(hot).error().text(),
              hot.string() + ":3: 6000 °C is hotter than any kiln, in column \"probe_C\"");
    EXPECT_EQ(readCsv(folder.path()).error().kind, ErrorKind::unreadable);
    EXPECT_EQ(readCsv(folder / "none.csv").error().kind, ErrorKind::notFound);
}

} // namespace
} // namespace ringhold
