#include "core/learn/firing_cost.h"
#include "core/learn/firing_energy.h"
#include "core/learn/power_trace.h"
#include "tests/core/report/made_up_firing.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using test::madeUpFiring;
using test::minuteIn;

/// A channel that reads the same every minute of the first ten hours.
void addSteady(FiringRecord& record, std::int64_t id, Quantity quantity, double value, int minutes = 600) {
    record.channels.push_back({ChannelId{id}, FiringId{23}, quantity, "", {}});
    for (int minute = 0; minute <= minutes; ++minute)
        record.readings.push_back({ChannelId{id}, minuteIn(minute), value, Origin::instrument});
}

void addMeter(FiringRecord& record, double from_kWh, double to_kWh) {
    record.meterStands.push_back({{}, FiringId{23}, minuteIn(0), from_kWh, MeterUnit::kilowattHours});
    record.meterStands.push_back({{}, FiringId{23}, minuteIn(1000), to_kWh, MeterUnit::kilowattHours});
}

std::vector<EnergySource> sourcesOf(const FiringRecord& record) {
    std::vector<EnergySource> sources;
    for (const auto& known : energiesKnown(record))
        sources.push_back(known.source);
    return sources;
}

TEST(FiringEnergy, IsToldByEverySourceInTheOrderOfTrust) {
    auto record = madeUpFiring();
    EXPECT_FALSE(electricityOf(record));
    addSteady(record, 2, Quantity::duty, 0.5);
    EXPECT_EQ(sourcesOf(record), std::vector{EnergySource::dutyAndRatedPower});
    addSteady(record, 3, Quantity::lineAmps, 20);
    EXPECT_THAT(sourcesOf(record),
                testing::ElementsAre(EnergySource::ratedVoltsAndAmps, EnergySource::dutyAndRatedPower));
    addSteady(record, 4, Quantity::lineVolts, 228);
    addMeter(record, 100, 147);
    const auto known = energiesKnown(record);
    ASSERT_EQ(known.size(), 3u);
    EXPECT_EQ(known[0].source, EnergySource::meterStands);
    EXPECT_NEAR(known[0].energy.kilowattHours(), 47, 1e-9);
    EXPECT_EQ(known[1].source, EnergySource::voltsAndAmps);
    EXPECT_NEAR(known[1].energy.kilowattHours(), 0.228 * 20 * 10, 1e-9);
    EXPECT_EQ(known[2].source, EnergySource::dutyAndRatedPower);
    EXPECT_NEAR(known[2].energy.kilowattHours(), 4.5 * 0.9025 * 10, 1e-9) << "5 % less volts";
    EXPECT_EQ(electricityOf(record)->source, EnergySource::meterStands);
    EXPECT_EQ(useOf(record).electricity->source, EnergySource::meterStands);
    for (std::size_t i = 1; i < known.size(); ++i)
        EXPECT_GT(known[i].relativeError(), known[i - 1].relativeError());
}

TEST(FiringEnergy, AddsUpThePhasesAsTheTraceDoes) {
    auto record = madeUpFiring();
    addSteady(record, 2, Quantity::lineVolts, 230);
    addSteady(record, 3, Quantity::lineAmps, 12);
    addSteady(record, 4, Quantity::lineAmps, 13);
    addSteady(record, 5, Quantity::lineAmps, 15);
    std::ranges::stable_sort(record.readings, {}, &Reading::at);
    EXPECT_NEAR(electricityOf(record)->energy.kilowattHours(), 0.230 * 40 * 10, 1e-9);
    EXPECT_NEAR(meanPower(powerOf(record)->trace, minuteIn(0), minuteIn(600))->watts, 230 * 40, 1e-9);
}

TEST(FiringEnergy, LeavesOutGapsAndStruckLines) {
    auto record = madeUpFiring();
    addSteady(record, 2, Quantity::duty, 0.5);
    std::erase_if(record.readings, [](const Reading& r) {
        return r.channel == ChannelId{2} && r.at > minuteIn(120) && r.at < minuteIn(180);
    });
    record.readings.push_back({ChannelId{2}, minuteIn(300.5), 100, Origin::hand, true});
    EXPECT_NEAR(electricityOf(record)->energy.kilowattHours(), 4.5 * 9, 1e-9);
    addMeter(record, 100, 147);
    record.meterStands.back().struck = true;
    EXPECT_EQ(electricityOf(record)->source, EnergySource::dutyAndRatedPower) << "one stand tells nothing";
}

} // namespace
} // namespace ringhold
