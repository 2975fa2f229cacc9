#include "core/firing/written_line.h"
#include "core/report/words.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

WritingContext context() {
    return {*parseIso8601("2026-03-01T18:04:00Z"), "Europe/Paris", false, {"9", "10", "11"}};
}

WrittenLine written(std::string_view text, LineKind kind = LineKind::open) {
    const auto line = readWrittenLine(text, kind, context());
    EXPECT_TRUE(line.ok()) << text;
    return line ? *line : WrittenLine{};
}

double minutesAgo(const WrittenLine& line) {
    return inMinutes(context().now - line.at);
}

TEST(WrittenLine, FindsOutWhatItIs) {
    EXPECT_EQ(std::get<WrittenNote>(written("Lid bung in, vent fan on.").what).text,
              "Lid bung in, vent fan on.");
    EXPECT_EQ(std::get<WrittenReading>(written("1201").what).value.celsius(), 1201);
    EXPECT_NEAR(std::get<WrittenReading>(written("2194 °F").what).value.celsius(), 1201.1, 0.05);
    EXPECT_EQ(std::get<WrittenReading>(written("98 C").what).value.celsius(), 98);
    const auto looks = std::get<WrittenLooks>(written("9 4, 10 0.5").what).looks;
    ASSERT_EQ(looks.size(), 2u);
    EXPECT_EQ(looks[0].cone, "9");
    EXPECT_EQ(looks[0].hour, 4);
    EXPECT_EQ(looks[1].hour, 0.5);
    const auto setting = std::get<WrittenSetting>(written("Damper: half open").what);
    EXPECT_EQ(setting.what, "Damper");
    EXPECT_EQ(setting.value, "half open");
    EXPECT_TRUE(std::holds_alternative<WrittenNote>(written("7 3").what)); // no such cone in the pack
    EXPECT_TRUE(std::holds_alternative<WrittenNote>(written("Opened the lid: all is well").what));
    EXPECT_TRUE(std::holds_alternative<WrittenNote>(written("12 pieces on the top shelf").what));
}

TEST(WrittenLine, KnowsWhen) {
    EXPECT_EQ(minutesAgo(written("1201")), 0);
    EXPECT_EQ(minutesAgo(written("1201 3 min ago")), 3);
    EXPECT_EQ(minutesAgo(written("10 3.5 2 min ago")), 2);
    EXPECT_EQ(minutesAgo(written("opened the damper 1 h ago")), 60);
    EXPECT_EQ(minutesAgo(written("19:00 opened the damper")), 4); // 18:04 UTC is 19:04 in Paris
    EXPECT_EQ(minutesAgo(written("opened the damper at 18:34")), 30);
    EXPECT_EQ(minutesAgo(written("23:50 began last night")), 19 * 60 + 14);
    EXPECT_EQ(std::get<WrittenNote>(written("19:00 opened the damper").what).text, "opened the damper");
    EXPECT_EQ(std::get<WrittenReading>(written("18:59 1195").what).value.celsius(), 1195);
}

TEST(WrittenLine, KeepsToTheKindThatIsAskedFor) {
    EXPECT_EQ(std::get<WrittenNote>(written("1201", LineKind::note).what).text, "1201");
    EXPECT_EQ(std::get<WrittenReading>(written("24", LineKind::reading).what).value.celsius(), 24);
    for (const auto& [text, kind] : {std::pair{"warm", LineKind::reading},
                                     {"6000", LineKind::reading},
                                     {"nan", LineKind::reading},
                                     {"10", LineKind::look},
                                     {"8 3", LineKind::look},
                                     {"10 7", LineKind::look},
                                     {"10 3.3", LineKind::look},
                                     {"damper", LineKind::setting},
                                     {"", LineKind::open},
                                     {"   ", LineKind::note}})
        EXPECT_FALSE(readWrittenLine(text, kind, context()).ok()) << text;
}

TEST(WrittenLine, ReadsHoursAsPottersWriteThem) {
    for (const auto& [text, hour] : {std::pair{"3", 3.0},
                                     {"3.5", 3.5},
                                     {"3,5", 3.5},
                                     {"3½", 3.5},
                                     {"½", 0.5},
                                     {"12", 0.0},
                                     {"Standing", 0.0},
                                     {"down", 6.0},
                                     {"6", 6.0},
                                     {"leaning", 0.5},
                                     {"just leaning", 0.5},
                                     {"4 o'clock", 4.0},
                                     {"3½ o’clock", 3.5}}) {
        const auto read = readHour(text);
        ASSERT_TRUE(read.ok()) << text;
        EXPECT_EQ(*read, hour) << text;
    }
    for (const char* text : {"", "7", "-1", "3.25", "bent"})
        EXPECT_FALSE(readHour(text).ok()) << text;
}

// What the log says of a cone can be typed back.
TEST(WrittenLine, ReadsLooksAsTheLogTellsThem) {
    for (double hour = 0; hour <= 6; hour += 0.5) {
        const auto line = readWrittenLine(lookWords({{"10", hour}, {"9", 6}}), LineKind::look, context());
        ASSERT_TRUE(line.ok()) << line.error().text();
        const auto& looks = std::get<WrittenLooks>(line->what).looks;
        ASSERT_EQ(looks.size(), 2u);
        EXPECT_EQ(looks[0].hour, hour);
        EXPECT_EQ(looks[1].cone, "9");
    }
}

TEST(WrittenLine, ReadsTimesOfDay) {
    const auto now = *parseIso8601("2026-03-02T00:10:00Z");
    EXPECT_EQ(readClockTime("23:50", now, "UTC"), *parseIso8601("2026-03-01T23:50:00Z"));
    EXPECT_EQ(readClockTime("0:05", now, "UTC"), *parseIso8601("2026-03-02T00:05:00Z"));
    EXPECT_EQ(readClockTime("01:05", now, "Europe/Berlin"), *parseIso8601("2026-03-02T00:05:00Z"));
    for (const char* text : {"", "tea", "25:00", "18:61", "1803"})
        EXPECT_EQ(readClockTime(text, now, "UTC"), std::nullopt) << text;
}

} // namespace
} // namespace ringhold
