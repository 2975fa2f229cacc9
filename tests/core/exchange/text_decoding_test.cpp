#include "core/exchange/text_decoding.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace std::string_literals;

struct Decoding {
    const char* name;
    std::string bytes;
    std::string text;
};

class Decodes : public testing::TestWithParam<Decoding> {};

TEST_P(Decodes, ToUtf8) {
    const auto text = decodeText(GetParam().bytes);
    ASSERT_TRUE(text.ok()) << text.error().text();
    EXPECT_EQ(*text, GetParam().text);
}

INSTANTIATE_TEST_SUITE_P(All, Decodes,
                         testing::Values(Decoding{"Empty", "", ""}, Decoding{"Ascii", "t,a\r\n", "t,a\r\n"},
                                         Decoding{"Utf8", "t,°C €\n", "t,°C €\n"},
                                         Decoding{"Utf8Mark", "\xEF\xBB\xBFt,°C\n", "t,°C\n"},
                                         Decoding{"FourBytes", "🔥", "🔥"},
                                         Decoding{"Latin1",
                                                  "t,\xB0"
                                                  "C\n",
                                                  "t,°C\n"},
                                         Decoding{"Latin1Unassigned",
                                                  "\x93"
                                                  "a\x94",
                                                  "\uFFFDa\uFFFD"},
                                         Decoding{"Utf8CutShort", "a\xC2", "aÂ"},
                                         Decoding{"Utf8Overlong", "\xC0\xAF", "À¯"},
                                         Decoding{"Utf16Little", "\xFF\xFEt\0\xB0\0\n\0"s, "t°\n"},
                                         Decoding{"Utf16Big", "\xFE\xFF\0t\0\xB0\0\n"s, "t°\n"},
                                         Decoding{"Utf16Pair", "\xFE\xFF\xD8\x3D\xDD\x25"s, "🔥"},
                                         Decoding{"Utf16HalfPair", "\xFE\xFF\xD8\x3D\0a"s, "\uFFFDa"}),
                         [](const auto& each) { return each.param.name; });

TEST(DecodeText, RefusesWhatIsNoTextAndNamesTheLine) {
    struct Case {
        std::string bytes;
        long line;
    };
    for (const auto& [bytes, line] :
         {Case{"\0"s, 1}, Case{"t,a\n1,\0\n"s, 2}, Case{"t,a\r\n\r\n\x01"s, 3}, Case{"t\ra\rb\x7F"s, 3},
          Case{"t\0,\0a\0"s, 1}, // UTF-16 without its mark
          Case{"\xFF\xFE"
               "a\0\n\0b"s,
               2}}) {
        const auto text = decodeText(bytes);
        ASSERT_FALSE(text.ok()) << bytes;
        EXPECT_EQ(text.error().kind, ErrorKind::badInput);
        EXPECT_EQ(text.error().line, line) << bytes;
    }
}

TEST(LineAt, CountsEveryKindOfLineEnd) {
    const std::string text = "a\nb\r\nc\rd";
    const std::vector<long> lines{1, 1, 2, 2, 2, 3, 3, 4, 4};
    for (std::size_t i = 0; i <= text.size(); ++i)
        EXPECT_EQ(lineAt(text, i), lines[i]) << i;
}

} // namespace
} // namespace ringhold
