#include "core/exchange/csv_header.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

struct Column {
    const char* heading;
    Quantity quantity;
    Scale scale;
    const char* label;
};

class ValueColumns : public testing::TestWithParam<Column> {};

TEST_P(ValueColumns, AreKnownByTheirUnit) {
    const auto& expected = GetParam();
    const auto column = valueColumn(ColumnHeading(expected.heading));
    ASSERT_TRUE(column) << expected.heading;
    EXPECT_EQ(column->quantity, expected.quantity) << expected.heading;
    EXPECT_EQ(column->scale, expected.scale) << expected.heading;
    EXPECT_EQ(column->label, expected.label) << expected.heading;
}

constexpr auto temperature = Quantity::temperature;
constexpr auto volts = Quantity::lineVolts;
constexpr auto amps = Quantity::lineAmps;
constexpr auto asIs = Scale::asIs;
constexpr auto fahrenheit = Scale::fahrenheit;

INSTANTIATE_TEST_SUITE_P(
    Celsius, ValueColumns,
    testing::Values(
        Column{"probe_C", temperature, asIs, "probe"}, Column{"T1 °C", temperature, asIs, "T1"},
        Column{"Temperature [C]", temperature, asIs, "Temperature"},
        Column{"Temperature[°C]", temperature, asIs, "Temperature"},
        Column{"temp (° C)", temperature, asIs, "temp"}, Column{"temp/°C", temperature, asIs, "temp"},
        Column{"temp in °C", temperature, asIs, "temp in"}, Column{"°C", temperature, asIs, ""},
        Column{"C", temperature, asIs, ""}, Column{"T_C", temperature, asIs, "T"},
        Column{"tempC", temperature, asIs, "temp"}, Column{"T1C", temperature, asIs, "T1"},
        Column{"temp, deg C", temperature, asIs, "temp"}, Column{"temp_degC", temperature, asIs, "temp"},
        Column{"temp degc", temperature, asIs, "temp"},
        Column{"Temperature Celsius", temperature, asIs, "Temperature"},
        Column{"Celsius (top)", temperature, asIs, "Celsius (top)"},
        Column{"T (°C) top", temperature, asIs, "T (°C) top"}, Column{"kiln ℃", temperature, asIs, "kiln"},
        Column{"kiln ºC", temperature, asIs, "kiln"}, Column{"kiln\u00A0°C", temperature, asIs, "kiln"},
        Column{"top (left)_C", temperature, asIs, "top (left)"},
        Column{"temp (°F)_C", temperature, asIs, "temp (°F)"}, Column{"time_C", temperature, asIs, "time"},
        Column{"four °C", temperature, asIs, "four"},
        Column{"Température (°C)", temperature, asIs, "Température"}));

INSTANTIATE_TEST_SUITE_P(Fahrenheit, ValueColumns,
                         testing::Values(Column{"probe_F", temperature, fahrenheit, "probe"},
                                         Column{"temp (°F)", temperature, fahrenheit, "temp"},
                                         Column{"temp_F", temperature, fahrenheit, "temp"},
                                         Column{"TempF", temperature, fahrenheit, "Temp"},
                                         Column{"kiln ℉", temperature, fahrenheit, "kiln"},
                                         Column{"F", temperature, fahrenheit, ""},
                                         Column{"temp Fahrenheit", temperature, fahrenheit, "temp"},
                                         Column{"temp (°F) of zone C", temperature, fahrenheit,
                                                "temp (°F) of zone C"}));

INSTANTIATE_TEST_SUITE_P(
    Others, ValueColumns,
    testing::Values(Column{"line_V", volts, asIs, "line"}, Column{"volts (V)", volts, asIs, "volts (V)"},
                    Column{"lineV", volts, asIs, "line"}, Column{"V", volts, asIs, ""},
                    Column{"volts", volts, asIs, ""}, Column{"mains V", volts, asIs, "mains"},
                    Column{"line voltage", volts, asIs, "line"}, Column{"line_A", amps, asIs, "line"},
                    Column{"current [A]", amps, asIs, "current"}, Column{"amps", amps, asIs, ""},
                    Column{"°C_A", amps, asIs, "°C"}, Column{"volts_A", amps, asIs, "volts"},
                    Column{"flue_oxygen_mV", Quantity::oxygenMillivolts, asIs, "flue"},
                    Column{"O2 (mV)", Quantity::oxygenMillivolts, asIs, "O2 (mV)"},
                    Column{"relay_duty", Quantity::duty, asIs, "relay"},
                    Column{"duty", Quantity::duty, asIs, "duty"},
                    Column{"duty (%)", Quantity::duty, Scale::percent, "duty (%)"}));

TEST(CsvHeading, LeavesAloneWhatNamesNothing) {
    for (const char* heading : {"note", "segment", "phase A", "sensor V", "thermocouple mV", "power (kW)",
                                "kWh", "rate °C/h", "climb (°C per h)", "ramp (F)", "", "V2 state", "alarm"})
        EXPECT_FALSE(valueColumn(ColumnHeading(heading))) << heading;
}

struct Time {
    const char* heading;
    std::optional<double> unit_s;
    ColonForm colons;
};

TEST(CsvHeading, KnowsTimes) {
    for (const auto& [heading, unit_s, colons] :
         {Time{"elapsed_s", 1, ColonForm::unsaid}, Time{"time_min", 60, ColonForm::minutesSeconds},
          Time{"hours", 3600, ColonForm::hoursMinutes}, Time{"elapsed (min)", 60, ColonForm::minutesSeconds},
          Time{"t_h", 3600, ColonForm::hoursMinutes}, Time{"Time [s]", 1, ColonForm::unsaid},
          Time{"seconds", 1, ColonForm::unsaid}, Time{"time, hr", 3600, ColonForm::hoursMinutes},
          Time{"seconds since start", 1, ColonForm::unsaid},
          Time{"elapsedMin", 60, ColonForm::minutesSeconds}, Time{"h:mm:ss", {}, ColonForm::unsaid},
          Time{"elapsed (h:mm)", {}, ColonForm::hoursMinutes},
          Time{"elapsed (mm:ss)", {}, ColonForm::minutesSeconds}, Time{"time", {}, ColonForm::unsaid},
          Time{"time_utc", {}, ColonForm::unsaid}, Time{"Date/Time", {}, ColonForm::unsaid},
          Time{"t", {}, ColonForm::unsaid}}) {
        const ColumnHeading parsed(heading);
        EXPECT_TRUE(isTime(parsed)) << heading;
        const TimeColumn column = timeColumn(parsed);
        EXPECT_EQ(column.unit ? std::optional(inSeconds(*column.unit)) : std::nullopt, unit_s) << heading;
        EXPECT_EQ(column.colons, colons) << heading;
        EXPECT_EQ(column.utc, std::string(heading) == "time_utc") << heading;
    }
    for (const char* heading : {"T", "T1", "temp", "note", "temp_min", "segment 3"})
        EXPECT_FALSE(isTime(ColumnHeading(heading))) << heading;
}

TEST(CsvHeading, EveryLabelSurvivesTheWay) {
    for (const auto quantity : {Quantity::temperature, Quantity::lineVolts, Quantity::lineAmps,
                                Quantity::oxygenMillivolts, Quantity::duty})
        for (const std::string label :
             {"probe", "T1 °C", "volts (V)", "by hand", "a_F", "°", "time", "elapsed_s", "x\ny", "%"}) {
            const auto column = valueColumn(ColumnHeading(csvHeaderFor(quantity, label)));
            ASSERT_TRUE(column) << label;
            EXPECT_EQ(column->quantity, quantity) << label;
            EXPECT_EQ(column->label, label);
            EXPECT_EQ(column->scale, Scale::asIs) << label;
        }
}

using Row = std::vector<std::string_view>;

std::vector<std::string> headers(const CsvHeader& header) {
    std::vector<std::string> all;
    for (const auto& value : header.values)
        all.push_back(value.header);
    return all;
}

TEST(CsvHeader, PutsTheControlProbeFirst) {
    const Row cells{"time_utc", "note", "line_V", "probe_C", "top_F"};
    const auto first = readCsvHeader(cells, {}, {});
    ASSERT_TRUE(first.ok());
    EXPECT_THAT(headers(*first), ElementsAre("probe_C", "line_V", "top_F"));
    EXPECT_THAT(first->ignored, ElementsAre("note"));
    EXPECT_EQ(first->columns, 5u);
    EXPECT_EQ(first->values[0].index, 3u);
    for (const char* control : {"top", "TOP_F", " top_f "})
        EXPECT_THAT(headers(*readCsvHeader(cells, {}, {.control = control})),
                    ElementsAre("top_F", "line_V", "probe_C"));
    for (const char* control : {"bottom", "line_V"})
        EXPECT_THAT(readCsvHeader(cells, {}, {.control = control}).error().what,
                    HasSubstr("only \"probe_C\", \"top_F\""));
}

TEST(CsvHeader, TakesNoSetPointForTheControlProbeUnlessTold) {
    const Row cells{"time", "set point (°C)", "kiln (°C)"};
    EXPECT_THAT(headers(*readCsvHeader(cells, {}, {})), ElementsAre("kiln (°C)", "set point (°C)"));
    EXPECT_EQ(readCsvHeader(cells, {}, {.control = "set point"})->values[0].header, "set point (°C)");
    EXPECT_TRUE(readCsvHeader({"time", "target_C"}, {}, {}).ok());
}

TEST(CsvHeader, TakesDatesBeforeElapsedTimes) {
    EXPECT_EQ(
        readCsvHeader({"elapsed_s", "when", "probe_C"}, {"0", "2026-03-01T00:00Z", "20"}, {})->time.index,
        1u);
    EXPECT_EQ(
        readCsvHeader({"elapsed_s", "time", "probe_C"}, {"0", "2026-03-01T00:00Z", "20"}, {})->time.index,
        1u);
    EXPECT_EQ(
        readCsvHeader({"time", "elapsed_s", "probe_C"}, {"2026-03-01T00:00Z", "0", "20"}, {})->time.index,
        0u);
    EXPECT_EQ(readCsvHeader({"probe_C", "elapsed_s"}, {"20", "0"}, {})->time.index, 1u);
}

TEST(CsvHeader, NeedsAUnitFromSomewhere) {
    for (const char* heading :
         {"temp", "Temperature", "T", "T1", "probe", "Probe 2", "thermocouple", "TC1", "pyrometer"}) {
        const auto bare = readCsvHeader({"time", heading}, {}, {});
        ASSERT_FALSE(bare.ok()) << heading;
        EXPECT_THAT(bare.error().what, HasSubstr("°C or °F")) << heading;
        const auto told = readCsvHeader({"time", heading}, {}, {.unit = TemperatureUnit::fahrenheit});
        ASSERT_TRUE(told.ok()) << heading;
        EXPECT_EQ(told->values[0].scale, Scale::fahrenheit);
    }
    // What says its own unit keeps it.
    const auto mixed = readCsvHeader({"time", "probe_C", "temp"}, {}, {.unit = TemperatureUnit::fahrenheit});
    ASSERT_TRUE(mixed.ok());
    EXPECT_EQ(mixed->values[0].scale, Scale::asIs);
    EXPECT_EQ(mixed->values[1].scale, Scale::fahrenheit);
    // A column of any name, once it is named and its unit given.
    const auto named =
        readCsvHeader({"time", "muffle"}, {}, {.unit = TemperatureUnit::celsius, .control = "muffle"});
    ASSERT_TRUE(named.ok());
    EXPECT_EQ(named->values[0].label, "muffle");
}

TEST(CsvHeader, SaysWhatIsMissing) {
    EXPECT_THAT(readCsvHeader({"2026-03-01T00:00Z", "20"}, {}, {}).error().what, HasSubstr("no header"));
    EXPECT_THAT(readCsvHeader({"0", "20.5", "1e3", ""}, {}, {}).error().what, HasSubstr("no header"));
    EXPECT_THAT(readCsvHeader({"0:00:00", "20,5"}, {}, {}).error().what, HasSubstr("no header"));
    EXPECT_THAT(readCsvHeader({"cone", "probe_C"}, {}, {}).error().what, HasSubstr("no time column"));
    EXPECT_THAT(readCsvHeader({"time", "line_V"}, {}, {}).error().what, HasSubstr("no temperature column"));
    EXPECT_THAT(readCsvHeader({"time"}, {}, {}).error().what, HasSubstr("no temperature column"));
}

} // namespace
} // namespace ringhold
