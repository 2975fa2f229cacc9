#include "core/exchange/stamp.h"

#include <gtest/gtest.h>

#include <random>

namespace ringhold {
namespace {

using namespace std::chrono_literals;

Instant utc(const char* text) {
    return *parseIso8601(text);
}

TEST(Stamp, ReadsWhatTheUnitsModuleReads) {
    for (const char* text : {"2026-03-01T20:41:00Z", "2026-03-01 20:41:00.25+01:00", "2026-03-01T20:41-0330",
                             " 2026-03-01t20:41:07z ", "2026-03-01T20:41+01", "2024-02-29T23:59:59.999Z"}) {
        const auto stamp = parseStamp(text);
        ASSERT_TRUE(stamp && stamp->offset) << text;
        EXPECT_EQ(stamp->civil - *stamp->offset, utc(text)) << text;
    }
    const auto civil = parseStamp("2026-03-01T20:41");
    ASSERT_TRUE(civil);
    EXPECT_FALSE(civil->offset);
    EXPECT_EQ(civil->civil, utc("2026-03-01T20:41Z"));
}

TEST(Stamp, RoundsToMilliseconds) {
    EXPECT_EQ(parseStamp("2026-03-01T20:41:00.1Z")->civil, utc("2026-03-01T20:41:00.100Z"));
    EXPECT_EQ(parseStamp("2026-03-01T20:41:00,1234Z")->civil, utc("2026-03-01T20:41:00.123Z"));
    EXPECT_EQ(parseStamp("2026-12-31T23:59:59.9996Z")->civil, utc("2027-01-01T00:00:00Z"));
}

TEST(Stamp, RefusesEverythingElse) {
    for (const char* text :
         {"", "2026-03-01", "2026-03-01T", "2026-3-1T20:41:00Z", "2026-02-29T00:00Z", "2026-13-01T00:00Z",
          "2026-00-01T00:00Z", "2026-03-01T24:00Z", "2026-03-01T20:60Z", "2026-03-01T20:41:60Z",
          "2026-03-01T20:41:00.Z", "2026-03-01T20:41:00Zx", "2026-03-01T20:41:00+1",
          "2026-03-01T20:41:00+25:00", "2026-03-01T20:41:00+01:", "20260301T204100Z", "20:41",
          "01.03.2026 20:41", "+026-03-01T20:41Z"})
        EXPECT_FALSE(parseStamp(text)) << text;
}

TEST(Stamp, IsKnownFromAfar) {
    for (const char* text : {"2026-03-01T20:41:00Z", "2026-03-01", "2026-99-99 x"})
        EXPECT_TRUE(looksLikeStamp(text)) << text;
    for (const char* text : {"", "2026", "20:41:00", "1043.2", "2026/03/01"})
        EXPECT_FALSE(looksLikeStamp(text)) << text;
}

TEST(Stamp, WritesWhatTheUnitsModuleWrites) {
    std::mt19937_64 random(1);
    std::uniform_int_distribution<std::int64_t> milliseconds(-60'000'000'000'000, 250'000'000'000'000);
    for (int i = 0; i < 500; ++i) {
        Instant at{Duration(milliseconds(random))};
        if (i % 3 == 0)
            at = std::chrono::floor<std::chrono::seconds>(at);
        std::string text = "x";
        appendStamp(text, at);
        EXPECT_EQ(text, "x" + formatIso8601(at));
        EXPECT_EQ(parseStamp(text.substr(1))->civil, at);
    }
    std::string far;
    appendStamp(far, Instant(Duration(400'000'000'000'000)));
    EXPECT_EQ(far, formatIso8601(Instant(Duration(400'000'000'000'000)))); // beyond the year 9999
}

TEST(CivilZone, AgreesWithTheUnitsModuleThroughoutTheYears) {
    for (const char* name :
         {"Europe/Paris", "America/St_Johns", "Australia/Lord_Howe", "Asia/Kolkata", "UTC"}) {
        auto zone = CivilZone::named(name);
        ASSERT_TRUE(zone.ok());
        int once = 0;
        for (Instant civil = utc("2024-12-01T00:30Z"); civil < utc("2027-02-01T00:30Z");
             civil += 7h + 13min) {
            const auto instants = zone->instantsOf(civil);
            const std::string text = formatIso8601(civil);
            if (instants.first) {
                EXPECT_EQ(*instants.first, *parseIso8601(text.substr(0, text.size() - 1), name))
                    << name << text;
                once += !instants.second;
            }
        }
        EXPECT_GT(once, 2000);
    }
}

TEST(CivilZone, KnowsSkippedAndRepeatedHours) {
    auto zone =
        CivilZone::named("Europe/Paris"); // clocks change on 29 March and 25 October 2026 at 01:00 UTC
    ASSERT_TRUE(zone.ok());
    EXPECT_FALSE(zone->instantsOf(utc("2026-03-29T02:30Z")).first);
    const auto repeated = zone->instantsOf(utc("2026-10-25T02:30:00.250Z"));
    EXPECT_EQ(repeated.first, utc("2026-10-25T00:30:00.250Z"));
    EXPECT_EQ(repeated.second, utc("2026-10-25T01:30:00.250Z"));
    EXPECT_FALSE(zone->instantsOf(utc("2026-10-25T03:00Z")).second);
}

TEST(CivilZone, RefusesAnUnknownZone) {
    EXPECT_EQ(CivilZone::named("Atlantis/Sunken").error().kind, ErrorKind::badInput);
}

} // namespace
} // namespace ringhold
