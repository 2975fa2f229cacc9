#include "core/exchange/csv_preview.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using Role = PreviewColumn::Role;
using testing::HasSubstr;

CsvPreview preview(const std::string& text, const CsvOptions& options = {}, std::size_t rows = 12) {
    auto made = previewCsv(text, options, rows);
    EXPECT_TRUE(made.ok()) << (made.ok() ? "" : made.error().text());
    return made.ok() ? *made : CsvPreview();
}

TEST(CsvPreview, ShowsRowsAndHowColumnsWouldBeTaken) {
    const auto shown = preview("time;set point (°C);probe (°F);line_V;remark\n"
                               "2026-03-01T20:00:00Z;1000;1830,5;230;hot\n2026-03-01T20:01:00Z;1000\n");
    EXPECT_EQ(shown.separator, ';');
    ASSERT_EQ(shown.columns.size(), 5u);
    EXPECT_EQ(shown.columns[0].role, Role::time);
    EXPECT_EQ(shown.columns[1].role, Role::value);
    EXPECT_EQ(shown.columns[1].meaning, ColumnMeaning::celsius);
    EXPECT_EQ(shown.columns[2].role, Role::control);
    EXPECT_EQ(shown.columns[2].meaning, ColumnMeaning::fahrenheit);
    EXPECT_EQ(shown.columns[3].meaning, ColumnMeaning::volts);
    EXPECT_EQ(shown.columns[4].role, Role::notTaken);
    ASSERT_EQ(shown.rows.size(), 2u);
    EXPECT_EQ(shown.rows[0][2], "1830,5");
    EXPECT_EQ(shown.rows[1], (std::vector<std::string>{"2026-03-01T20:01:00Z", "1000", "", "", ""}));
    EXPECT_FALSE(shown.fault);
}

TEST(CsvPreview, ShowsWhatCannotBeTakenYetAndWhy) {
    const std::string text = "time_utc,temp\n2026-03-01T20:00:00Z,1000\n";
    const auto shown = preview(text);
    ASSERT_TRUE(shown.fault);
    EXPECT_THAT(shown.fault->what, HasSubstr("does not say whether it is °C or °F"));
    EXPECT_EQ(shown.columns[1].header, "temp");
    EXPECT_EQ(shown.columns[1].role, Role::notTaken);
    EXPECT_EQ(shown.rows.size(), 1u);
    CsvOptions options;
    options.columns["temp"] = ColumnMeaning::fahrenheit;
    const auto said = preview(text, options);
    EXPECT_FALSE(said.fault);
    EXPECT_EQ(said.columns[1].role, Role::control);
    EXPECT_EQ(said.columns[1].meaning, ColumnMeaning::fahrenheit);
}

TEST(CsvPreview, FollowsWhatIsSaid) {
    const std::string text = "a,b_C,c_C,elapsed_s\n0,1000,1001,0\n1,1001,1002,60\n";
    CsvOptions options;
    options.time = "A";
    options.control = "c_C";
    options.columns["b_C"] = ColumnMeaning::leftOut;
    const auto shown = preview(text, options);
    EXPECT_FALSE(shown.fault);
    EXPECT_EQ(shown.columns[0].role, Role::time);
    EXPECT_EQ(shown.columns[1].role, Role::notTaken);
    EXPECT_EQ(shown.columns[2].role, Role::control);
    EXPECT_EQ(shown.columns[3].role, Role::notTaken);
    options.columns["d"] = ColumnMeaning::volts;
    EXPECT_THAT(preview(text, options).fault->what, HasSubstr("there is no column \"d\""));
}

TEST(CsvPreview, StopsAfterTheRowsAskedFor) {
    std::string text = "time_utc,probe_C\n";
    for (int i = 0; i < 50; ++i)
        text += "2026-03-01T20:00:00Z,1000\n";
    EXPECT_EQ(preview(text, {}, 5).rows.size(), 5u);
    EXPECT_EQ(preview("time_utc,probe_C\n").rows.size(), 0u);
}

TEST(CsvPreview, RefusesWhatCannotBeShown) {
    EXPECT_THAT(previewCsv("").error().what, HasSubstr("empty"));
    EXPECT_THAT(previewCsv(std::string("\0\1\2\3", 4)).ok(), false);
    EXPECT_FALSE(previewCsv("time_utc,\"probe_C\n1,2\n").ok());
}

} // namespace
} // namespace ringhold
