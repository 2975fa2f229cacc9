#include "core/firing/paper_log.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

Instant at(const char* text) {
    return *parseIso8601(text);
}

/// Lit at 18:00:20 in Paris, typed in the next noon.
PaperContext paris() {
    return {at("2026-03-01T17:00:20Z"), at("2026-03-02T11:00:00Z"), "Europe/Paris", false, {"9", "10"}};
}

TEST(PaperLog, GoesDownTheSheetOverMidnight) {
    const PaperRow rows[] = {
        {"21:14", "1076", ""}, {"23:50", "1041,5", ""}, {"0:20", "980", ""}, {"7:05", "310", ""}};
    const auto read = readPaperLog(rows, paris());
    ASSERT_EQ(read.size(), 4u);
    EXPECT_EQ(read[0].at, at("2026-03-01T20:14:00Z"));
    EXPECT_EQ(read[1].at, at("2026-03-01T22:50:00Z"));
    EXPECT_EQ(read[2].at, at("2026-03-01T23:20:00Z"));
    EXPECT_EQ(read[3].at, at("2026-03-02T06:05:00Z"));
    EXPECT_DOUBLE_EQ(std::get<WrittenReading>(read[1].lines.at(0).what).value.celsius(), 1041.5);
}

TEST(PaperLog, TakesReadingSettingLookAndNoteOfOneRow) {
    const PaperRow rows[] = {{"19:00", "400 C", "damper: half open"},
                             {"", "", "10 3.5, 9 down"},
                             {"19:30", "", "power back at last"}};
    auto context = paris();
    context.fahrenheit = true;
    const auto read = readPaperLog(rows, context);
    ASSERT_EQ(read[0].lines.size(), 2u);
    EXPECT_DOUBLE_EQ(std::get<WrittenReading>(read[0].lines[0].what).value.celsius(), 400);
    EXPECT_EQ(std::get<WrittenSetting>(read[0].lines[1].what).value, "half open");
    EXPECT_EQ(read[1].at, read[0].at);
    EXPECT_EQ(std::get<WrittenLooks>(read[1].lines.at(0).what).looks.size(), 2u);
    EXPECT_EQ(std::get<WrittenNote>(read[2].lines.at(0).what).text, "power back at last");
}

TEST(PaperLog, TheMinuteOfLightingIsNotTheNextDay) {
    const PaperRow rows[] = {{"18:00", "20", ""}};
    EXPECT_EQ(readPaperLog(rows, paris())[0].at, paris().from);
}

TEST(PaperLog, SaysWhatIsNotUnderstood) {
    const PaperRow rows[] = {{"", "1076", ""},     {"quarter past", "1076", ""},
                             {"19:00", "hot", ""}, {"20:00", "9999", ""},
                             {"", "", ""},         {"19:00", "900", ""}};
    auto context = paris();
    const auto read = readPaperLog(rows, context);
    for (const int row : {0, 1, 2, 3}) {
        EXPECT_FALSE(read[row].fault.empty()) << row;
        EXPECT_TRUE(read[row].lines.empty()) << row;
    }
    EXPECT_TRUE(read[4].fault.empty());
    EXPECT_FALSE(read[4].at);
    // after 20:00 a 19:00 is of the next evening, which is still to come
    EXPECT_FALSE(read[5].fault.empty());
}

} // namespace
} // namespace ringhold
