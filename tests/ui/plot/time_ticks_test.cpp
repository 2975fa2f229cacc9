#include "ui/plot/time_ticks.h"

#include <QStringList>
#include <gtest/gtest.h>

using namespace ringhold;

namespace {

Instant utc(const char* text) {
    return *parseIso8601(text);
}

QString joined(const std::vector<TimeTick>& ticks) {
    QStringList labels;
    for (const auto& tick : ticks)
        labels << (tick.day.isEmpty() ? tick.label : tick.label + u'|' + tick.day);
    return labels.join(u", ");
}

QString joined(const std::vector<HourTick>& ticks) {
    QStringList labels;
    for (const auto& tick : ticks)
        labels << tick.label;
    return labels.join(u", ");
}

struct Case {
    const char* name;
    const char* from;
    const char* to;
    const char* zone;
    int most;
    const char* labels;
};

void PrintTo(const Case& c, std::ostream* out) {
    *out << c.name;
}

} // namespace

class TimeTicks : public testing::TestWithParam<Case> {};

TEST_P(TimeTicks, StandAtRoundTimesOfTheZone) {
    const auto& c = GetParam();
    EXPECT_EQ(joined(timeTicks(utc(c.from), utc(c.to), c.zone, c.most)).toStdString(), c.labels);
}

// Clock changes: Europe/Berlin goes from 02:00 to 03:00 on 29 March 2026 and from 03:00 back to 02:00 on
// 25 October 2026, both at 01:00 UTC (Directive 2000/84/EC: last Sundays of March and October).
INSTANTIATE_TEST_SUITE_P(
    Zones, TimeTicks,
    testing::Values(Case{"an evening", "2026-03-01T17:10:00Z", "2026-03-01T20:10:00Z", "UTC", 6,
                         "18:00|Sun 1 Mar, 19:00, 20:00"},
                    Case{"zone ahead of UTC", "2026-03-01T17:10:00Z", "2026-03-01T20:10:00Z", "Europe/Berlin",
                         6, "19:00|Sun 1 Mar, 20:00, 21:00"},
                    Case{"a day tells its name once", "2026-03-01T20:00:00Z", "2026-03-02T08:00:00Z", "UTC",
                         7, "20:00|Sun 1 Mar, 22:00, 00:00|Mon 2 Mar, 02:00, 04:00, 06:00, 08:00"},
                    Case{"half-hour zone", "2026-03-01T12:00:00Z", "2026-03-01T14:00:00Z", "Asia/Kolkata", 4,
                         "18:00|Sun 1 Mar, 19:00"},
                    Case{"clocks go forward", "2026-03-28T23:00:00Z", "2026-03-29T03:00:00Z", "Europe/Berlin",
                         8, "00:00|Sun 29 Mar, 01:00, 03:00, 04:00, 05:00"},
                    Case{"clocks go back", "2026-10-24T23:00:00Z", "2026-10-25T03:00:00Z", "Europe/Berlin", 8,
                         "01:00|Sun 25 Oct, 02:00 CEST, 02:00 CET, 03:00, 04:00"},
                    Case{"clocks go back, wide steps", "2026-10-24T20:00:00Z", "2026-10-25T07:00:00Z",
                         "Europe/Berlin", 7,
                         "22:00|Sat 24 Oct, 00:00|Sun 25 Oct, 02:00 CEST, 04:00, 06:00, 08:00"},
                    Case{"minutes", "2026-03-01T21:14:10Z", "2026-03-01T21:18:10Z", "UTC", 6,
                         "21:15|Sun 1 Mar, 21:16, 21:17, 21:18"},
                    Case{"seconds", "2026-03-01T21:14:05Z", "2026-03-01T21:14:32Z", "UTC", 4,
                         "21:14:10|Sun 1 Mar, 21:14:20, 21:14:30"},
                    Case{"days", "2026-02-26T12:00:00Z", "2026-03-02T12:00:00Z", "UTC", 6,
                         "27 Feb, 28 Feb, 1 Mar, 2 Mar"},
                    Case{"unknown zone is UTC", "2026-03-01T17:10:00Z", "2026-03-01T19:10:00Z",
                         "Nowhere/Land", 6, "17:30|Sun 1 Mar, 18:00, 18:30, 19:00"}));

TEST(TimeTicksSpacing, AnHourStaysAnHourAcrossTheChange) {
    const auto ticks =
        timeTicks(utc("2026-10-24T22:00:00Z"), utc("2026-10-25T05:00:00Z"), "Europe/Berlin", 9);
    ASSERT_EQ(ticks.size(), 8U);
    for (std::size_t i = 1; i < ticks.size(); ++i)
        EXPECT_EQ(ticks[i].at - ticks[i - 1].at, std::chrono::hours(1));
}

TEST(TimeTicksSpacing, NeverMoreThanAsked) {
    const Instant from = utc("2026-03-01T17:10:00Z");
    for (const int minutes : {1, 7, 50, 333, 1400, 9000, 100000, 3000000})
        for (const int most : {2, 5, 12}) {
            const auto ticks = timeTicks(from, from + std::chrono::minutes(minutes), "Europe/Berlin", most);
            EXPECT_LE(ticks.size(), static_cast<std::size_t>(most)) << minutes << " min";
        }
}

TEST(HourTicks, AreWholeHoursOrTheirParts) {
    EXPECT_EQ(joined(hourTicks(0, 5.2, 6)).toStdString(), "0 h, 1 h, 2 h, 3 h, 4 h, 5 h");
    EXPECT_EQ(joined(hourTicks(-0.6, 1.1, 5)).toStdString(), "−0:30 h, 0 h, 0:30 h, 1 h");
    EXPECT_EQ(joined(hourTicks(-13, 13, 6)).toStdString(), "−12 h, −6 h, 0 h, 6 h, 12 h");
    EXPECT_EQ(joined(hourTicks(0, 0.001, 6)).toStdString(), "0 h");
}
