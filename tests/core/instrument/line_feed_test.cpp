#include "core/instrument/line_feed.h"
#include "tests/core/instrument/heard.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <string>

namespace ringhold {
namespace {

struct ChunkCase {
    const char* name;
    std::vector<std::string> chunks;
    std::vector<std::string> lines;
};

class Chunks : public testing::TestWithParam<ChunkCase> {};

TEST_P(Chunks, BecomeLines) {
    LineAssembler assembler(StreamStart::lineStart);
    std::vector<std::string> lines;
    for (const auto& chunk : GetParam().chunks)
        for (const auto& line : assembler.feed(chunk)) {
            EXPECT_TRUE(line.whole);
            lines.push_back(line.text);
        }
    EXPECT_EQ(lines, GetParam().lines);
}

INSTANTIATE_TEST_SUITE_P(Feed, Chunks,
                         testing::Values(ChunkCase{"Lf", {"1\n2\n"}, {"1", "2"}},
                                         ChunkCase{"CrLf", {"1\r\n2\r\n"}, {"1", "2"}},
                                         ChunkCase{"Cr", {"1\r2\r"}, {"1", "2"}},
                                         ChunkCase{"SplitCrLf", {"1\r", "\n2\r", "\n"}, {"1", "2"}},
                                         ChunkCase{"Fragments", {"10", "4", "3.2", "\n98"}, {"1043.2"}},
                                         ChunkCase{"Empty", {"\n\n", "", "\r\n1\n\n"}, {"1"}}),
                         [](const auto& each) { return each.param.name; });

TEST(LineAssembler, DistrustsALineThatItHeardTheEndOfOnly) {
    LineAssembler assembler(StreamStart::midLine);
    const auto lines = assembler.feed("43.2\n1043.2\n");
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_FALSE(lines[0].whole);
    EXPECT_TRUE(lines[1].whole);
}

TEST(LineAssembler, CutsALineThatNeverEnds) {
    LineAssembler assembler(StreamStart::lineStart, 100);
    std::size_t lines = 0;
    for (int i = 0; i < 1000; ++i)
        for (const auto& line : assembler.feed(std::string(999, 'x'))) {
            EXPECT_EQ(line.text.size(), 100U);
            EXPECT_FALSE(line.whole);
            ++lines;
        }
    EXPECT_EQ(lines, 1U); // told once, however long it goes on
    const auto after = assembler.feed("xx\n1043.2\n");
    ASSERT_EQ(after.size(), 1U);
    EXPECT_EQ(after[0].text, "1043.2");
    EXPECT_TRUE(after[0].whole);
}

TEST(LineAssembler, TakesALineOfExactlyTheLongest) {
    LineAssembler assembler(StreamStart::lineStart, 6);
    const auto lines = assembler.feed("1043.2\n1043.25\n");
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_TRUE(lines[0].whole);
    EXPECT_FALSE(lines[1].whole);
}

TEST(LineAssembler, ForgetsAFragmentWhenTheStreamIsCut) {
    LineAssembler assembler(StreamStart::lineStart);
    EXPECT_TRUE(assembler.feed("10").empty());
    assembler.restart(StreamStart::lineStart);
    EXPECT_EQ(assembler.feed("980.1\n").at(0).text, "980.1"); // not 10980.1
}

TEST(LineFeed, TellsOfEveryLineAndSample) {
    LineFeed feed({}, StreamStart::midLine);
    Heard heard;
    const Instant at(std::chrono::seconds(5));
    feed.feed("43.2\r\n1043.2\r\nhello\r\nT1=98", at, heard);
    feed.feed("0.1\r\n", at + std::chrono::seconds(1), heard);
    EXPECT_EQ(heard.lines, (std::vector<std::string>{"43.2", "1043.2", "hello", "T1=980.1"}));
    EXPECT_EQ(heard.understoodLines, 2U);
    ASSERT_EQ(heard.samples.size(), 2U);
    EXPECT_EQ(heard.samples[0].value, 1043.2);
    EXPECT_EQ(heard.samples[1].at, at + std::chrono::seconds(1));
}

/// Bytes that are random, or a good line with bytes of it changed, dropped or doubled.
std::string noise(std::mt19937_64& random) {
    static const std::vector<std::string> good{"1043.2\r\n",
                                               "T1=1043.2C,T2=980.1C\n",
                                               "1910 \xC2\xB0"
                                               "F\n",
                                               "41.27 mV\n",
                                               "T1=1043,2; 231.4 V\t44.1 A\n",
                                               "open\n",
                                               "1e308\n"};
    std::string bytes;
    if (random() % 2 == 0) {
        for (auto left = random() % 64; left > 0; --left)
            bytes.push_back(static_cast<char>(random() % 256));
        return bytes;
    }
    bytes = good[random() % good.size()];
    for (auto changes = random() % 4; changes > 0; --changes) {
        const auto at = random() % bytes.size();
        switch (random() % 3) {
        case 0:
            bytes[at] = static_cast<char>(random() % 256);
            break;
        case 1:
            bytes.insert(at, 1, bytes[at]);
            break;
        default:
            if (bytes.size() > 1)
                bytes.erase(at, 1);
        }
    }
    return bytes;
}

void expectSound(const Sample& sample) {
    if (!sample.value)
        return;
    ASSERT_TRUE(std::isfinite(*sample.value));
    const bool temperature = sample.quantity == Quantity::temperature;
    ASSERT_GE(*sample.value, temperature ? -50.0 : 0.0);
    ASSERT_LE(*sample.value, temperature ? 1800.0 : 1000.0);
    ASSERT_LE(sample.label.size(), 40U);
    for (const char c : sample.label)
        ASSERT_TRUE(c >= ' ' && c <= '~');
}

TEST(LineFeed, SurvivesNoiseWithoutAnImpossibleValue) {
    std::size_t samples = 0;
    std::size_t opaque = 0;
    for (std::uint64_t seed = 0; seed < 40; ++seed) {
        std::mt19937_64 random(seed);
        LineFormat format;
        format.decimalMark = static_cast<DecimalMark>(seed % 3);
        if (seed % 2 == 0)
            format.thermocouple = ThermocoupleType::K;
        LineFeed feed(format, seed % 4 ? StreamStart::lineStart : StreamStart::midLine);
        Heard heard;
        for (int i = 0; i < 1000; ++i)
            feed.feed(noise(random), Instant{}, heard);
        for (const auto& sample : heard.samples)
            expectSound(sample);
        for (const auto& line : heard.lines)
            ASSERT_LE(line.size(), LineDecoder::longestLine);
        samples += heard.samples.size();
        opaque += heard.lines.size() - heard.understoodLines;
    }
    EXPECT_GT(samples, 1000U); // the noise does reach both ends
    EXPECT_GT(opaque, 1000U);
}

} // namespace
} // namespace ringhold
