#include "core/exchange/csv_rows.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using Cells = std::vector<std::string>;
using testing::ElementsAre;

struct Row {
    long line;
    Cells cells;
    bool operator==(const Row&) const = default;
};

std::vector<Row> rowsOf(const std::string& text, char separator = ',') {
    CsvRows rows(text, separator);
    std::vector<std::string_view> cells;
    std::vector<Row> all;
    while (rows.next(cells))
        all.push_back({rows.line(), Cells(cells.begin(), cells.end())});
    EXPECT_FALSE(rows.error()) << rows.error()->text();
    return all;
}

TEST(CsvRows, CutsCellsAndRows) {
    EXPECT_TRUE(rowsOf("").empty());
    EXPECT_THAT(rowsOf("a,b\n1,2\n"), ElementsAre(Row{1, {"a", "b"}}, Row{2, {"1", "2"}}));
    EXPECT_THAT(rowsOf("a,b\n1,2"), ElementsAre(Row{1, {"a", "b"}}, Row{2, {"1", "2"}}));
    EXPECT_THAT(rowsOf(",\n,,"), ElementsAre(Row{1, {"", ""}}, Row{2, {"", "", ""}}));
    EXPECT_THAT(rowsOf("a;1,5", ';'), ElementsAre(Row{1, {"a", "1,5"}}));
    EXPECT_THAT(rowsOf("a\t b ", '\t'), ElementsAre(Row{1, {"a", " b "}}));
}

TEST(CsvRows, TakesEveryLineEndAndPassesBlankLinesOver) {
    for (const std::string end : {"\n", "\r\n", "\r"})
        EXPECT_THAT(rowsOf("a" + end + end + " \t" + end + "b" + end + end),
                    ElementsAre(Row{1, {"a"}}, Row{4, {"b"}}));
}

TEST(CsvRows, TakesQuotesAsRfc4180Has) {
    // RFC 4180, section 2, rules 5 to 7.
    EXPECT_THAT(rowsOf("\"aaa\",\"b \r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"),
                ElementsAre(Row{1, {"aaa", "b \r\nbb", "ccc"}}, Row{3, {"zzz", "yyy", "xxx"}}));
    EXPECT_THAT(rowsOf("\"aaa\",\"b\"\"bb\",\"ccc\""), ElementsAre(Row{1, {"aaa", "b\"bb", "ccc"}}));
    EXPECT_THAT(rowsOf("\"\",\"\"\"\",\"\"\"\"\"\""), ElementsAre(Row{1, {"", "\"", "\"\""}}));
}

TEST(CsvRows, IsLenientAroundQuotes) {
    EXPECT_THAT(rowsOf("a, \"b,c\" ,d"), ElementsAre(Row{1, {"a", "b,c", "d"}}));
    EXPECT_THAT(rowsOf("6\" shelf,b"), ElementsAre(Row{1, {"6\" shelf", "b"}}));
    EXPECT_THAT(rowsOf("\"\"\nb"), ElementsAre(Row{1, {""}}, Row{2, {"b"}}));
}

TEST(CsvRows, SaysWhereItIsBroken) {
    struct Case {
        std::string text;
        long line;
    };
    for (const auto& [text, line] :
         {Case{"a,b\n\"c,d\ne,f\n", 2}, Case{"a\n\"b\nc\"d\n", 3}, Case{"a\n" + std::string(70'000, 'x'), 2},
          Case{"a\nb\n\"" + std::string(70'000, '\n') + "\"", 3}, Case{std::string(2'000, ','), 1},
          Case{"\"", 1}}) {
        CsvRows rows(text, ',');
        std::vector<std::string_view> cells;
        while (rows.next(cells))
            ;
        ASSERT_TRUE(rows.error()) << text.substr(0, 40);
        EXPECT_EQ(rows.error()->line, line) << rows.error()->text();
    }
}

TEST(CsvLayout, TellsTheSeparator) {
    struct Case {
        const char* text;
        char separator;
    };
    for (const auto& [text, separator] : {
             Case{"time,probe_C\n2026-03-01T20:41:00Z,20\n", ','},
             Case{"time;probe_C\n2026-03-01T20:41:00Z;20,5\n", ';'},
             Case{"time\tprobe_C, upper\n2026-03-01T20:41:00Z\t20,5\n", '\t'},
             Case{"time,probe (°C; mean)\n0,20\n", ','},
             Case{"time;probe, °C;line, V\n0;20,5\n", ';'}, // second row too short
             Case{"\"time\";\"probe, °C\"\n\"0\";\"20\"\n", ';'},
             Case{"\"time;s\",\"probe;C\"\n0,20\n", ','},
             Case{"time;probe_C", ';'},
             Case{"time", ','},
             Case{"", ','},
         })
        EXPECT_EQ(layoutOf(text).separator, separator) << text;
}

TEST(CsvLayout, PassesOverWhatComesBeforeTheHeader) {
    const auto layout = layoutOf("\r\n# kiln 2; north shed\r\n\r\nt;a\r\n");
    EXPECT_EQ(layout.line, 4);
    EXPECT_EQ(layout.text, "t;a\r\n");
    const auto told = layoutOf("sep=|\na|b\n");
    EXPECT_EQ(told.separator, '|');
    EXPECT_EQ(told.line, 2);
    EXPECT_EQ(layoutOf("# nothing but this").text, "");
}

} // namespace
} // namespace ringhold
