// Numbers, times and text of single CSV cells.
#include "core/exchange/csv_clock.h"
#include "core/exchange/csv_number.h"
#include "core/exchange/csv_rows.h"
#include "core/exchange/csv_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using testing::HasSubstr;

TEST(CsvNumbers, ReadsPointOrComma) {
    struct Case {
        const char* cell;
        double value;
    };
    for (const auto& [cell, value] :
         {Case{"1043.2", 1043.2}, Case{"1043,2", 1043.2}, Case{"-5", -5}, Case{"+20,5", 20.5},
          Case{"1e3", 1000}, Case{".5", 0.5}, Case{"20.", 20}, Case{"1,043", 1.043}, Case{"0", 0}}) {
        const auto read = CsvNumbers(false).read(cell);
        ASSERT_TRUE(read.ok()) << cell;
        EXPECT_EQ(*read, value) << cell;
    }
}

TEST(CsvNumbers, RefusesEverythingElse) {
    for (const char* cell :
         {"abc",      "12a",  "1 043", "1,043.5", "1.043,5", "--5", "+-5", "nan", "NaN", "-nan", "inf",
          "Infinity", "-inf", "1e999", "0x20",    "20 °C",   "20C", ",",   ".",   "-",   "1,2,3"}) {
        const auto read = CsvNumbers(false).read(cell);
        ASSERT_FALSE(read.ok()) << cell;
        EXPECT_THAT(read.error().what, HasSubstr(cell));
    }
}

TEST(CsvNumbers, GuessNoThousandWhereCommasPartTheCells) {
    EXPECT_FALSE(CsvNumbers(true).read("1,904").ok());
    CsvNumbers decimal(true);
    EXPECT_EQ(*decimal.read("20,5"), 20.5);
    EXPECT_EQ(*decimal.read("1,904"), 1.904); // the file is known by now
}

TEST(CsvNumbers, DoNotMixPointAndComma) {
    CsvNumbers commas(false);
    EXPECT_TRUE(commas.read("20,5").ok());
    EXPECT_TRUE(commas.read("20").ok());
    EXPECT_FALSE(commas.read("20.5").ok());
    CsvNumbers points(false);
    EXPECT_TRUE(points.read("998.5").ok());
    EXPECT_FALSE(points.read("1,043").ok());
}

TEST(ColonTime, ReadsHoursMinutesSeconds) {
    struct Case {
        const char* text;
        ColonForm form;
        std::optional<double> seconds;
    };
    constexpr auto unsaid = ColonForm::unsaid;
    for (const auto& [text, form, seconds] :
         {Case{"0:00:00", unsaid, 0}, Case{"1:02:03", unsaid, 3723}, Case{"17:59:59.5", unsaid, 64799.5},
          Case{"00:00:01,25", unsaid, 1.25}, Case{"100:00:00", unsaid, 360'000},
          Case{"1:30", ColonForm::hoursMinutes, 5400}, Case{"90:30", ColonForm::minutesSeconds, 5430},
          Case{"1:30", unsaid, {}}, Case{"1:60:00", unsaid, {}}, Case{"1:00:60", unsaid, {}},
          Case{"1:2:3", unsaid, {}}, Case{":00:00", unsaid, {}}, Case{"1:00:", unsaid, {}},
          Case{"1:00:00:00", unsaid, {}}, Case{"-1:00:00", unsaid, {}}, Case{"1:0x:00", unsaid, {}},
          Case{"13", unsaid, {}}, Case{"1:00.5:00", unsaid, {}}}) {
        const auto time = parseColonTime(text, form);
        EXPECT_EQ(time ? std::optional(inSeconds(*time)) : std::nullopt, seconds) << text;
    }
}

TEST(CsvText, DisarmsFormulasAndGivesTheTextBack) {
    for (const std::string text : {"probe", "=1+1", "+5", "-5", "@x", "'", "'quoted'", "'=1", "''=1", "a=b",
                                   "", "a,b", "say \"x\"", "two\nlines", "semi;colon", " blank "}) {
        const std::string cell = textCell(text);
        EXPECT_FALSE(looksLikeFormula(cell)) << text;
        CsvRows rows(cell, ',');
        std::vector<std::string_view> cells;
        rows.next(cells);
        ASSERT_FALSE(rows.error()) << cell;
        EXPECT_EQ(cells.size(), cell.empty() ? 0u : 1u) << cell;
        EXPECT_EQ(cells.empty() ? "" : plainText(cells[0]), text);
    }
    EXPECT_EQ(textCell("=cmd()"), "'=cmd()");
    EXPECT_EQ(textCell("say \"x\""), "\"say \"\"x\"\"\"");
    EXPECT_EQ(textCell("\t=1"), "\"'\t=1\"");
}

TEST(CsvText, ShowsACellOnOneShortLine) {
    EXPECT_EQ(shownCell("a\nb"), "\"a b\"");
    EXPECT_EQ(shownCell(std::string(39, 'x') + "°°"), "\"" + std::string(39, 'x') + "…\"");
    EXPECT_EQ(trimmedCell("\u00A0 \t a b \u00A0"), "a b");
    EXPECT_EQ(trimmedCell(" \t"), "");
}

} // namespace
} // namespace ringhold
