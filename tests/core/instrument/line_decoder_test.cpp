#include "core/instrument/line_decoder.h"

#include <gtest/gtest.h>

#include <string>

namespace ringhold {
namespace {

const Instant noon(std::chrono::hours(12));

struct Expected {
    const char* label;
    Quantity quantity;
    double value;
};

struct LineCase {
    const char* name;
    std::string line;
    std::vector<Expected> samples;
};

void expectSamples(const DecodedLine& decoded, const std::vector<Expected>& expected,
                   const std::string& line) {
    ASSERT_EQ(decoded.samples.size(), expected.size()) << line;
    for (std::size_t i = 0; i < expected.size(); ++i) {
        const auto& sample = decoded.samples[i];
        EXPECT_EQ(sample.label, expected[i].label) << line;
        EXPECT_EQ(sample.quantity, expected[i].quantity) << line;
        EXPECT_EQ(sample.at, noon) << line;
        ASSERT_TRUE(sample.value) << line;
        EXPECT_NEAR(*sample.value, expected[i].value, 1e-9) << line;
    }
}

constexpr auto C = Quantity::temperature;
constexpr auto V = Quantity::lineVolts;
constexpr auto A = Quantity::lineAmps;

class UnderstoodLine : public testing::TestWithParam<LineCase> {};

TEST_P(UnderstoodLine, GivesItsSamples) {
    const auto decoded = LineDecoder().decode(GetParam().line, noon);
    EXPECT_TRUE(decoded.understood) << GetParam().line;
    expectSamples(decoded, GetParam().samples, GetParam().line);
}

INSTANTIATE_TEST_SUITE_P(
    Line, UnderstoodLine,
    testing::Values(
        LineCase{"Bare", "1043.2", {{"", C, 1043.2}}}, LineCase{"Whole", "1043", {{"", C, 1043}}},
        LineCase{"Signed", "+1043.25", {{"", C, 1043.25}}}, LineCase{"Frost", "-4.5", {{"", C, -4.5}}},
        LineCase{"PointLast", "1043.", {{"", C, 1043}}}, LineCase{"Exponent", "1.0432e3", {{"", C, 1043.2}}},
        LineCase{"LeadingZeros", "0022.0", {{"", C, 22}}},
        LineCase{"Label", "T1=1043.2", {{"T1", C, 1043.2}}},
        LineCase{"LabelAndUnit", "T1=1043.2C", {{"T1", C, 1043.2}}},
        LineCase{"Colon", "kiln top: 1043.2 C", {{"kiln top", C, 1043.2}}},
        LineCase{"Blanks", "  T1 =\t1043.2  C \r", {{"T1", C, 1043.2}}},
        LineCase{"Fahrenheit", "1910 F", {{"", C, (1910.0 - 32) / 1.8}}},
        LineCase{"DegreeUtf8",
                 "1043.2 \xC2\xB0"
                 "C",
                 {{"", C, 1043.2}}},
        LineCase{"DegreeLatin1",
                 "1043.2\xB0"
                 "C",
                 {{"", C, 1043.2}}},
        LineCase{"DegreeBlank", "1910\xC2\xB0 F", {{"", C, (1910.0 - 32) / 1.8}}},
        LineCase{"DegreeWord", "1043.2 degC", {{"", C, 1043.2}}},
        LineCase{"LowerCase", "1043.2 c", {{"", C, 1043.2}}}, LineCase{"Volts", "231.4V", {{"", V, 231.4}}},
        LineCase{"Amps", "I=44.1 A", {{"I", A, 44.1}}},
        LineCase{"Commas", "T1=1043.2,T2=980.1", {{"T1", C, 1043.2}, {"T2", C, 980.1}}},
        LineCase{"Semicolons", "T1=1043.2;T2=980.1;", {{"T1", C, 1043.2}, {"T2", C, 980.1}}},
        LineCase{"Tabs", "T1=1043.2\tT2=980.1", {{"T1", C, 1043.2}, {"T2", C, 980.1}}},
        LineCase{"Spaces", "T1=1043.2 C T2=980.1 C", {{"T1", C, 1043.2}, {"T2", C, 980.1}}},
        LineCase{"ByUnit", "1043.2C 231.4V 44.1A", {{"", C, 1043.2}, {"", V, 231.4}, {"", A, 44.1}}},
        LineCase{"Twins", "1043.2C, 980.1C, 231V", {{"1", C, 1043.2}, {"2", C, 980.1}, {"", V, 231}}},
        LineCase{"OneLabelTwoQuantities", "L=231V L=44A", {{"L", V, 231}, {"L", A, 44}}},
        LineCase{"DecimalComma", "1043,2", {{"", C, 1043.2}}},
        LineCase{"DecimalCommaUnit", "1043,25 C", {{"", C, 1043.25}}},
        LineCase{"DecimalCommas", "T1=1043,2;T2=980,15", {{"T1", C, 1043.2}, {"T2", C, 980.15}}},
        LineCase{"DecimalCommasCommas",
                 "T1=1043,2, T2=980,1,T3=5C",
                 {{"T1", C, 1043.2}, {"T2", C, 980.1}, {"T3", C, 5}}},
        LineCase{"Hottest", "1800", {{"", C, 1800}}}, LineCase{"Coldest", "-50", {{"", C, -50}}},
        LineCase{"Empty", "", {}}, LineCase{"OnlyBlanks", " \t\r", {}}),
    [](const auto& each) { return each.param.name; });

class OpaqueLine : public testing::TestWithParam<std::string> {};

TEST_P(OpaqueLine, IsNotGuessedAt) {
    const auto decoded = LineDecoder().decode(GetParam(), noon);
    EXPECT_FALSE(decoded.understood) << GetParam();
    EXPECT_TRUE(decoded.samples.empty()) << GetParam();
}

INSTANTIATE_TEST_SUITE_P(Form, OpaqueLine,
                         testing::Values("hello", "----", "T1=", "=1043.2", "1043.2 K", "1043.2X",
                                         "1043.2 C C", "1043..2", "10 43.2", "12:30:01 1043.2", "0x413",
                                         "1043.2C T1", "T1 1043.2", "1e", "--5", "+-5", ".5", "1043.2C,,980C",
                                         ",1043.2", "T1==5", "<PV>1043.2</PV>", "1043.2 %", "T1=1043.2 OK",
                                         "1043.2\xC2\xB0", "1043.2\xC2\xB0V",
                                         "\xEF\xBB\xBF"
                                         "1043.2",
                                         std::string("1043.2\0", 7), std::string(513, '1'), "T1=5 T1=6",
                                         std::string(41, 'T') + "=5"));

INSTANTIATE_TEST_SUITE_P(Value, OpaqueLine,
                         testing::Values("nan", "NaN C", "inf", "-inf", "T1=nan", "1e999", "1800.1", "6000 C",
                                         "-50.1", "3300 F", "-1 V", "1001 V", "-0.1 A", "1e300"));

// Two readings are possible, and the wrong one would look like a temperature.
INSTANTIATE_TEST_SUITE_P(Ambiguous, OpaqueLine,
                         testing::Values("1043.2 980.1", "1043.2,980.1", "1043,2,980,1", "1043,980",
                                         "1043,25", "1,043", "1,043 C", "T1=1,043", "1,043.2", "1.043,2",
                                         "T1=1043,2;T2=980.1", "time=600", "Time: 600", "count=12", "F=1700",
                                         "V=231", "C=20", "41.27 mV"));

struct PartCase {
    std::string line;
    std::vector<Expected> samples;
};

class PartlyUnderstood : public testing::TestWithParam<PartCase> {};

TEST_P(PartlyUnderstood, GivesWhatIsCertainAndSaysSo) {
    const auto decoded = LineDecoder().decode(GetParam().line, noon);
    EXPECT_FALSE(decoded.understood) << GetParam().line;
    expectSamples(decoded, GetParam().samples, GetParam().line);
}

INSTANTIATE_TEST_SUITE_P(Line, PartlyUnderstood,
                         testing::Values(PartCase{"T1=1043.2C T2=9999C", {{"T1", C, 1043.2}}},
                                         PartCase{"time=600 T1=1043.2", {{"T1", C, 1043.2}}},
                                         PartCase{"600 1043.2C", {{"", C, 1043.2}}},
                                         PartCase{"T1=1043.2;41.27mV", {{"T1", C, 1043.2}}},
                                         PartCase{"9999C 980C", {{"2", C, 980}}}));

TEST(LineDecoder, TakesOpenForAnOpenProbe) {
    for (const char* line : {"open", "OPEN", " Open\r", "T1=open", "T1: OPEN"}) {
        const auto decoded = LineDecoder().decode(line, noon);
        EXPECT_TRUE(decoded.understood) << line;
        ASSERT_EQ(decoded.samples.size(), 1U) << line;
        EXPECT_FALSE(decoded.samples[0].value) << line;
        EXPECT_EQ(decoded.samples[0].quantity, Quantity::temperature) << line;
    }
    const auto one = LineDecoder().decode("T1=open;T2=980.1", noon);
    ASSERT_EQ(one.samples.size(), 2U);
    EXPECT_FALSE(one.samples[0].value);
    EXPECT_TRUE(one.samples[1].value);
    for (const char* line : {"opened", "open C", "not open", "1043.2 open", "valve open"})
        EXPECT_TRUE(LineDecoder().decode(line, noon).samples.empty()) << line;
}

TEST(LineDecoder, ReadsBareNumbersInTheUnitThatItWasTold) {
    LineFormat format;
    format.bareUnit = BareUnit::fahrenheit;
    const LineDecoder decoder(format);
    EXPECT_NEAR(decoder.decode("1910", noon).samples.at(0).value.value(), 1043.3333, 1e-4);
    EXPECT_NEAR(decoder.decode("T1=1043.2C", noon).samples.at(0).value.value(), 1043.2, 1e-9);
    EXPECT_TRUE(decoder.decode("3000", noon).understood); // 1648.9 °C
}

TEST(LineDecoder, AnnouncedDecimalMarkEndsTheDoubt) {
    LineFormat format;
    format.decimalMark = DecimalMark::comma;
    EXPECT_NEAR(LineDecoder(format).decode("1043,25", noon).samples.at(0).value.value(), 1043.25, 1e-9);
    EXPECT_FALSE(LineDecoder(format).decode("1043.25", noon).understood);
    format.decimalMark = DecimalMark::point;
    EXPECT_FALSE(LineDecoder(format).decode("1043,2", noon).understood);
    EXPECT_TRUE(LineDecoder(format).decode("1043.25", noon).understood);
}

TEST(LineDecoder, TurnsMillivoltsIntoTemperatureByTheirType) {
    LineFormat format;
    format.thermocouple = ThermocoupleType::K;
    // NIST Monograph 175, type K: 41.276 mV at 1000 °C, 1.000 mV at 25 °C, reference junction at 0 °C.
    const auto ice = LineDecoder(format).decode("T1=41.276 mV", noon);
    ASSERT_EQ(ice.samples.size(), 1U);
    EXPECT_EQ(ice.samples[0].label, "T1");
    EXPECT_NEAR(ice.samples[0].value.value(), 1000.0, 0.02);
    format.coldJunction = Temperature::fromCelsius(25);
    const auto room = LineDecoder(format).decode("40.276mV", noon);
    EXPECT_NEAR(room.samples.at(0).value.value(), 1000.0, 0.02);
    EXPECT_FALSE(LineDecoder(format).decode("90 mV", noon).understood); // beyond type K
    EXPECT_FALSE(LineDecoder(format).decode("1.2 V", noon).samples.at(0).quantity == Quantity::temperature);
}

} // namespace
} // namespace ringhold
