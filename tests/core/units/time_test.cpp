#include "core/units/time.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

TEST(Iso8601, ReadsAndWritesUtc) {
    const auto at = parseIso8601("2026-03-01T20:41:00Z");
    ASSERT_TRUE(at.ok());
    EXPECT_EQ(formatIso8601(*at), "2026-03-01T20:41:00Z");
    EXPECT_EQ(inSeconds(at->time_since_epoch()), 1772397660.0); // date -u -d 2026-03-01T20:41:00Z +%s
}

TEST(Iso8601, ReadsOffsetsMillisecondsAndMissingSeconds) {
    const Instant noon = *parseIso8601("2026-03-01T12:00:00Z");
    for (const char* text : {"2026-03-01T13:00:00+01:00", "2026-03-01 13:00:00+0100", "2026-03-01T07:00-05",
                             "2026-03-01T12:00Z", " 2026-03-01t12:00:00z "}) {
        const auto at = parseIso8601(text);
        ASSERT_TRUE(at.ok()) << text;
        EXPECT_EQ(*at, noon) << text;
    }
    EXPECT_EQ(formatIso8601(*parseIso8601("2026-03-01T12:00:00.250Z")), "2026-03-01T12:00:00.250Z");
}

TEST(Iso8601, ReadsCivilTimeInItsZone) {
    EXPECT_EQ(formatIso8601(*parseIso8601("2026-07-01T12:00", "Europe/Paris")), "2026-07-01T10:00:00Z");
    // 02:30 is skipped on 29 March 2026 and comes twice on 25 October: the earlier instant is meant.
    EXPECT_EQ(formatIso8601(*parseIso8601("2026-03-29T02:30", "Europe/Paris")), "2026-03-29T01:00:00Z");
    EXPECT_EQ(formatIso8601(*parseIso8601("2026-10-25T02:30", "Europe/Paris")), "2026-10-25T00:30:00Z");
}

TEST(Iso8601, RefusesWhatIsNoTime) {
    for (const char* text : {"", "yesterday", "2026-13-01T00:00Z", "2026-02-30T00:00Z", "2026-03-01T25:00Z",
                             "2026-03-01", "2026-3-1T20:41:00Z", "2026-03-01T20:41:00Zx", "20:41"})
        EXPECT_FALSE(parseIso8601(text).ok()) << text;
    EXPECT_FALSE(parseIso8601("2026-03-01T20:41", "Atlantis/Sunken").ok());
}

} // namespace
} // namespace ringhold
