#include "core/report/words.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

const WordStyle celsius{TemperatureScale::celsius, "Europe/Paris"};
const WordStyle fahrenheit{TemperatureScale::fahrenheit, "Europe/Paris"};

Instant at(const char* text) {
    return parseIso8601(text).value();
}

TEST(Words, TellTemperaturesInTheScaleWanted) {
    EXPECT_EQ(temperatureWords(Temperature::fromCelsius(1076), celsius), "1076 °C");
    EXPECT_EQ(temperatureWords(Temperature::fromCelsius(1075.64), celsius, 1), "1075.6 °C");
    EXPECT_EQ(temperatureWords(Temperature::fromCelsius(1076), fahrenheit), "1969 °F"); // 1968.8
    EXPECT_EQ(differenceWords(TemperatureDifference::fromCelsius(-7.2), celsius), "− 7 °C");
    EXPECT_EQ(differenceWords(TemperatureDifference::fromCelsius(5), fahrenheit, 0, true), "+ 9 °F");
    EXPECT_EQ(rateWords(Rate::fromCelsiusPerHour(60), fahrenheit), "108 °F/h");
}

TEST(Words, TellADriftWithItsInterval) {
    const auto drift = Rate::fromCelsiusPerHour(-0.2);
    EXPECT_EQ(driftWords(drift, Rate::fromCelsiusPerHour(0.3), celsius), "− 0.2 ± 0.3 °C/h");
    EXPECT_EQ(driftWords(drift, std::nullopt, celsius), "− 0.2 °C/h");
}

TEST(Words, HaveNoMinusBeforeNothing) {
    EXPECT_EQ(figure(-0.04, 1), "0.0");
    EXPECT_EQ(figure(-0.06, 1), "− 0.1");
    EXPECT_EQ(percentWords(0.9624), "96.2 %");
    EXPECT_EQ(energyWords(Energy::fromKilowattHours(71.3)), "71 kWh");
    EXPECT_EQ(energyWords(Energy::fromKilowattHours(7.13)), "7.1 kWh");
}

struct LengthCase {
    double seconds;
    const char* words;
};

class Lengths : public testing::TestWithParam<LengthCase> {};

TEST_P(Lengths, AreToldToTheMinute) {
    EXPECT_EQ(durationWords(durationFromSeconds(GetParam().seconds)), GetParam().words);
}

INSTANTIATE_TEST_SUITE_P(Words, Lengths,
                         testing::Values(LengthCase{8, "8 s"}, LengthCase{59.7, "1 min"},
                                         LengthCase{2520, "42 min"}, LengthCase{3599, "1 h 00"},
                                         LengthCase{12660, "3 h 31"}));

TEST(Words, TellTimesInTheirZone) {
    EXPECT_EQ(clockWords(at("2026-03-01T20:14:59Z"), celsius), "21:14");
    EXPECT_EQ(dateWords(at("2026-03-01T23:30:00Z"), celsius, true), "Monday 2 March 2026");
    EXPECT_EQ(spanWords(at("2026-03-01T08:00:00Z"), at("2026-03-02T01:40:00Z"), celsius),
              "Sunday 1 March 2026, 09:00 to Monday 02:40 CET");
    EXPECT_EQ(spanWords(at("2026-03-01T08:00:00Z"), at("2026-03-01T16:00:00Z"), celsius),
              "Sunday 1 March 2026, 09:00 to 17:00 CET");
    // The clocks go forward on 29 March 2026 at 02:00.
    EXPECT_EQ(spanWords(at("2026-03-28T20:00:00Z"), at("2026-03-29T06:00:00Z"), celsius),
              "Saturday 28 March 2026, 21:00 CET to Sunday 08:00 CEST");
}

TEST(Words, TellAForecastWithItsInterval) {
    const auto nine = at("2026-03-01T20:08:00Z");
    const TimeInterval known{nine, nine + std::chrono::minutes(6), nine + std::chrono::minutes(13)};
    EXPECT_EQ(whenWords(known, celsius), "21:14 (21:08 to 21:21)");
    EXPECT_EQ(whenWords({nine, nine + std::chrono::minutes(6), {}}, celsius), "21:14 (21:08 or later)");
    EXPECT_EQ(whenWords({nine, {}, {}}, celsius), "not before 21:08");
    EXPECT_EQ(whenWords({}, celsius), "–");
}

TEST(Words, TellWhereConesPoint) {
    EXPECT_EQ(hourWords(0), "standing");
    EXPECT_EQ(hourWords(0.5), "just leaning");
    EXPECT_EQ(hourWords(1.5), "at 1½ o’clock");
    EXPECT_EQ(hourWords(2.1), "at 2 o’clock");
    EXPECT_EQ(hourWords(5.8), "nearly down");
    EXPECT_EQ(hourWords(6), "down");
    EXPECT_EQ(lookWords({{"9", 3}, {"10", 0}}), "9 at 3 o’clock, 10 standing");
    EXPECT_EQ(standingWords({{"9", 6}, {"10", 2}}), "9 is down, 10 at 2 o’clock");
    EXPECT_EQ(standingWords({{"8", 1}, {"9", 0}}), "8 is at 1 o’clock, 9 is standing");
    EXPECT_EQ(countWords(3), "three");
    EXPECT_EQ(countWords(13), "13");
}

} // namespace
} // namespace ringhold
