#include "tests/support/live_climb.h"
#include "ui/spread/hold_card.h"

namespace ringhold::test {
namespace {

/// 1076 °C for 100 min, a reading a minute, but 12 °C under for ten of them.
HoldStatistics sagged() {
    Curve curve;
    for (int minute = 0; minute <= 100; ++minute)
        curve.push_back(
            {LiveClimb::at(minute), Temperature::fromCelsius(minute >= 40 && minute < 50 ? 1064 : 1076)});
    return judgeHold(curve, {Temperature::fromCelsius(1076), TemperatureDifference::fromCelsius(6)},
                     {curve.front().at, curve.back().at});
}

std::string told(const HoldStatistics& held, const Preferences& preferences) {
    return plainWords(holdFigures(held, std::chrono::hours(3), preferences).join(QLatin1Char('\n')));
}

TEST(HoldCardTest, TellsTheFiguresOfTheHold) {
    NotebookOnDisk disk;
    const auto words = told(sagged(), disk->preferences());
    // ramps of one minute from 1076 to 1064: half of each is outside
    EXPECT_NE(words.find("1 h 40 of 3 h 00, in the band 90.0 % of the time. Out once, longest 10 min."),
              std::string::npos)
        << words;
    // nine minutes at 6 °C beyond the edge and two triangles of 1.5 °C min
    EXPECT_NE(words.find("From 1 064 °C to 1 076 °C. 0 °C min above the band, 57 below. Drift "),
              std::string::npos)
        << words;
    EXPECT_NE(words.find("of furnace practice, by this one probe."), std::string::npos) << words;
    EXPECT_EQ(words.find("Known from"), std::string::npos) << "a reading a minute is enough: " << words;
}

TEST(HoldCardTest, SaysHowFewReadingsItKnows) {
    NotebookOnDisk disk;
    auto held = sagged();
    held.readings = 7;
    held.longestGap = std::chrono::minutes(15);
    EXPECT_NE(told(held, disk->preferences()).find("Known from 7 readings only, as far as 15 min apart"),
              std::string::npos);
}

TEST(HoldCardTest, ConvertsEveryFigure) {
    NotebookOnDisk disk;
    ASSERT_TRUE(disk->preferences().setUnit(TemperatureUnit::fahrenheit).ok());
    const auto words = told(sagged(), disk->preferences());
    EXPECT_NE(words.find("0 °F min above the band, 103 below."), std::string::npos) << words;
    EXPECT_EQ(words.find("°C"), std::string::npos) << words;
}

TEST(HoldCardTest, NeverLeftIsSaid) {
    NotebookOnDisk disk;
    auto held = sagged();
    held.excursions.clear();
    EXPECT_NE(told(held, disk->preferences()).find("The band was never left."), std::string::npos);
}

} // namespace
} // namespace ringhold::test
