#include "core/exchange/csv_export.h"
#include "core/exchange/csv_readings.h"
#include "tests/core/exchange/scratch_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <clocale>
#include <cmath>
#include <limits>
#include <random>

namespace ringhold {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

Instant utc(const char* text) {
    return *parseIso8601(text);
}

Channel channel(int id, Quantity quantity, const std::string& label) {
    return {ChannelId{id}, FiringId{1}, quantity, label, std::nullopt};
}

Reading reading(int channel, const char* at, double value, bool struck = false) {
    return {ChannelId{channel}, utc(at), value, Origin::instrument, struck};
}

TEST(CsvExport, WritesARowForEachInstant) {
    FiringRecord record;
    record.channels = {channel(7, Quantity::temperature, "probe"), channel(3, Quantity::lineVolts, "line"),
                       channel(9, Quantity::temperature, "by hand")};
    record.readings = {reading(7, "2026-03-01T06:00:00Z", 20.1), reading(3, "2026-03-01T06:00:00Z", 231),
                       reading(7, "2026-03-01T06:00:10.25Z", 0.1 + 0.2),
                       reading(9, "2026-03-01T06:01:00Z", 1e-7)};
    EXPECT_EQ(formatCsv(record), "time_utc,probe_C,line_V,by hand_C\n"
                                 "2026-03-01T06:00:00Z,20.1,231,\n"
                                 "2026-03-01T06:00:10.250Z,0.30000000000000004,,\n"
                                 "2026-03-01T06:01:00Z,,,1e-07\n");
}

TEST(CsvExport, LeavesOutWhatDoesNotCount) {
    FiringRecord record;
    record.channels = {channel(1, Quantity::temperature, "probe")};
    record.readings = {
        reading(1, "2026-03-01T06:00:00Z", 6000, true),   reading(1, "2026-03-01T06:00:00Z", 600),
        reading(1, "2026-03-01T06:01:00Z", std::nan("")), reading(2, "2026-03-01T06:02:00Z", 5),
        reading(1, "2026-03-01T06:03:00Z", 610),          reading(1, "2026-03-01T06:03:00Z", 611)};
    EXPECT_EQ(formatCsv(record), "time_utc,probe_C\n2026-03-01T06:00:00Z,600\n2026-03-01T06:03:00Z,611\n");
    EXPECT_EQ(formatCsv({}), "time_utc\n");
}

TEST(CsvExport, NamesEveryColumnOnce) {
    FiringRecord record;
    Probe upper;
    upper.id = ProbeId{5};
    upper.label = "upper";
    record.probes = {upper};
    record.channels = {channel(1, Quantity::temperature, ""), channel(2, Quantity::temperature, ""),
                       channel(3, Quantity::temperature, "probe 2"), channel(4, Quantity::lineVolts, ""),
                       channel(5, Quantity::temperature, "")};
    record.channels[4].probe = upper.id;
    EXPECT_EQ(formatCsv(record), "time_utc,probe_C,probe 2_C,probe 2 2_C,line_V,upper_C\n");
}

TEST(CsvExport, IsNoFormulaAndNoTrap) {
    FiringRecord record;
    record.channels = {channel(1, Quantity::temperature, "=1+1"), channel(2, Quantity::temperature, "@x"),
                       channel(3, Quantity::temperature, "a,\"b\"\nc")};
    EXPECT_THAT(formatCsv(record), StartsWith("time_utc,'=1+1_C,'@x_C,\"a,\"\"b\"\"\nc_C\"\n"));
}

TEST(CsvExport, DoesNotHeedTheLocale) {
    const std::string before = std::setlocale(LC_ALL, nullptr);
    const bool german = std::setlocale(LC_ALL, "de_DE.UTF-8") != nullptr;
    FiringRecord record;
    record.channels = {channel(1, Quantity::temperature, "probe")};
    record.readings = {reading(1, "2026-03-01T06:00:00Z", 1234.5)};
    const std::string text = formatCsv(record);
    const auto back = parseCsv(text);
    std::setlocale(LC_ALL, before.c_str());
    EXPECT_THAT(text, HasSubstr(",1234.5\n"));
    EXPECT_EQ(back->control().values[0].value, 1234.5) << german;
}

/// Values with all their bits, several channels that speak at different times.
FiringRecord randomRecord(unsigned seed) {
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> value(-50, 1800);
    std::uniform_int_distribution<int> step_ms(0, 3'000);
    FiringRecord record;
    record.channels = {
        channel(1, Quantity::temperature, "T1 °C"),     channel(2, Quantity::temperature, "-top, left"),
        channel(3, Quantity::lineVolts, "volts (A)"),   channel(4, Quantity::lineAmps, "phase V"),
        channel(5, Quantity::oxygenMillivolts, "flue"), channel(6, Quantity::duty, "relay")};
    Instant at = utc("2026-03-01T06:00:00Z");
    for (int i = 0; i < 400; ++i, at += Duration(step_ms(random))) {
        const int id = 1 + static_cast<int>(random() % 6);
        const bool twice = !record.readings.empty() && record.readings.back().at == at;
        if (!twice)
            record.readings.push_back({ChannelId{id}, at,
                                       id == 6 ? (value(random) + 50) / 1850 : value(random),
                                       Origin::instrument, false});
    }
    return record;
}

TEST(CsvExport, ComesBackUnchanged) {
    for (const unsigned seed : {1u, 2u, 3u, 4u, 5u}) {
        const FiringRecord record = randomRecord(seed);
        const auto back = parseCsv(formatCsv(record));
        ASSERT_TRUE(back.ok()) << back.error().text();
        ASSERT_EQ(back->channels.size(), record.channels.size());
        EXPECT_EQ(back->skipped, 0u);
        EXPECT_TRUE(back->ignored.empty());
        EXPECT_TRUE(back->absolute);
        std::size_t values = 0;
        for (std::size_t i = 0; i < record.channels.size(); ++i) {
            EXPECT_EQ(back->channels[i].label, record.channels[i].label);
            EXPECT_EQ(back->channels[i].quantity, record.channels[i].quantity);
            std::vector<TimedValue> expected;
            for (const auto& each : record.readings)
                if (each.channel == record.channels[i].id)
                    expected.push_back({each.at, each.value});
            EXPECT_EQ(back->channels[i].values, expected);
            values += expected.size();
        }
        EXPECT_EQ(values, record.readings.size());
        EXPECT_GT(values, 350u);
    }
}

TEST(CsvExport, WritesItsFileWholeOrNotAtAll) {
    const ScratchFolder folder;
    const FiringRecord record = randomRecord(1);
    ASSERT_TRUE(writeCsv(folder / "out.csv", record).ok());
    EXPECT_EQ(ScratchFolder::bytesOf(folder / "out.csv"), formatCsv(record));
    EXPECT_TRUE(readCsv(folder / "out.csv").ok());
    EXPECT_EQ(writeCsv("/dev/full", record).error().kind, ErrorKind::unwritable);
    EXPECT_EQ(writeCsv(folder.path(), record).error().kind, ErrorKind::unwritable);
    EXPECT_EQ(folder.files(), 1);
}

} // namespace
} // namespace ringhold
