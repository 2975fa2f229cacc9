#include "core/learn/comparison.h"
#include "core/learn/firing_cost.h"
#include "core/learn/power_trace.h"
#include "tests/core/report/made_up_firing.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace ringhold {
namespace {

using test::madeUpFiring;
using test::minuteIn;

Curve controlOf(const FiringRecord& record, double hotter_C = 0) {
    Curve curve;
    for (const auto& reading : record.readings)
        if (reading.channel == ChannelId{1})
            curve.push_back({reading.at, Temperature::fromCelsius(reading.value + hotter_C)});
    return curve;
}

/// Volts 240 all along, 30 A for the first hour, then 10.
FiringRecord withPower(FiringRecord record) {
    record.channels.push_back({ChannelId{2}, FiringId{23}, Quantity::lineVolts, "V", {}});
    record.channels.push_back({ChannelId{3}, FiringId{23}, Quantity::lineAmps, "A", {}});
    for (int minute = 0; minute <= 1020; ++minute) {
        record.readings.push_back({ChannelId{2}, minuteIn(minute), 240, Origin::instrument});
        record.readings.push_back(
            {ChannelId{3}, minuteIn(minute), minute < 60 ? 30.0 : 10.0, Origin::instrument});
    }
    return record;
}

const FigureRow* rowOf(const Comparison& comparison, Figure figure) {
    const auto row = std::ranges::find(comparison.rows, figure, &FigureRow::figure);
    return row == comparison.rows.end() ? nullptr : &*row;
}

OffsetPrior offset(double mean_C, double sd_C) {
    return {TemperatureDifference::fromCelsius(mean_C), TemperatureDifference::fromCelsius(sd_C), 3};
}

Outcome outcome(std::int64_t piece, double largest_mm) {
    Outcome outcome;
    outcome.piece = PieceId{piece};
    outcome.largest_mm = largest_mm;
    return outcome;
}

TEST(PowerTrace, IsVoltsTimesAmps) {
    const auto power = powerOf(withPower(madeUpFiring()));
    ASSERT_TRUE(power);
    EXPECT_EQ(power->basis, PowerBasis::voltsAndAmps);
    EXPECT_NEAR(meanPower(power->trace, minuteIn(30), minuteIn(90))->watts, 4800, 1e-9);
    EXPECT_NEAR(meanLine(power->trace, minuteIn(30), minuteIn(90))->volts, 240, 1e-9);
    EXPECT_FALSE(powerOf(madeUpFiring()));
}

TEST(PowerTrace, CountsNothingInGapsAndFallsBackOnThePlate) {
    auto record = madeUpFiring();
    record.channels.push_back({ChannelId{4}, FiringId{23}, Quantity::duty, "duty", {}});
    for (const int minute : {0, 5, 10, 60, 65})
        record.readings.push_back({ChannelId{4}, minuteIn(minute), 0.5, Origin::instrument});
    record.readings.push_back({ChannelId{4}, minuteIn(66), 0.9, Origin::hand, true});
    const auto power = powerOf(record);
    ASSERT_TRUE(power);
    EXPECT_EQ(power->basis, PowerBasis::dutyOfRated);
    EXPECT_NEAR(meanPower(power->trace, minuteIn(0), minuteIn(65))->watts, 4500, 1e-9);
    EXPECT_EQ(missingIn(power->trace), std::chrono::minutes(50));
    EXPECT_FALSE(meanLine(power->trace, minuteIn(0), minuteIn(60)));
    record.kiln.ratedPower.reset();
    EXPECT_FALSE(powerOf(record));
}

TEST(Comparison, TellsTheDifferencesThatMatter) {
    auto first = withPower(madeUpFiring());
    first.outcomes = {outcome(1, 20), outcome(2, 10)};
    first.looks = {{LookId{1}, PackId{1}, minuteIn(620), "10", 6}};
    auto second = first;
    second.outcomes[0].largest_mm = 40.0;
    second.looks.push_back({LookId{2}, PackId{1}, minuteIn(1500), "10", 5, true});
    const std::vector<ComparedFiring> firings{{&first, controlOf(first), {}, {}},
                                              {&second, controlOf(second, 5), {}, {}}};
    const auto table = compare(firings);
    EXPECT_FALSE(table.corrected);
    const auto* peak = rowOf(table, Figure::peak_C);
    ASSERT_TRUE(peak);
    EXPECT_DOUBLE_EQ(peak->values[0]->value, 1290);
    EXPECT_DOUBLE_EQ(peak->spread, 5);
    EXPECT_TRUE(peak->matters);
    EXPECT_TRUE(peak->comparable) << "one probe";
    EXPECT_FALSE(peak->values[0]->sd);
    EXPECT_NEAR(rowOf(table, Figure::growthHold_C)->values[1]->value, 1080.8, 0.3);
    EXPECT_FALSE(rowOf(table, Figure::lastClimb_C_per_h)->matters);
    EXPECT_NEAR(rowOf(table, Figure::energy_kWh)->values[0]->value, 7.2 * 59 / 60 + 4.8 / 60 + 2.4 * 16, 1e-9)
        << "7.2 kW for 59 min, a minute of change, 2.4 kW for 16 h";
    EXPECT_DOUBLE_EQ(rowOf(table, Figure::rings)->values[0]->value, 3);
    EXPECT_DOUBLE_EQ(rowOf(table, Figure::coneHour)->values[0]->value, 6);
    EXPECT_DOUBLE_EQ(rowOf(table, Figure::coneHour)->values[1]->value, 5)
        << "the cold pack counts before the spyhole";
    EXPECT_DOUBLE_EQ(rowOf(table, Figure::typical_mm)->values[1]->value, 25);
    EXPECT_TRUE(rowOf(table, Figure::largest_mm)->matters);
}

TEST(Comparison, TakesOffsetsOffAndWarnsWithout) {
    auto first = madeUpFiring();
    auto second = madeUpFiring();
    second.probes[0].id = ProbeId{2};
    second.channels[0].probe = ProbeId{2};
    std::vector<ComparedFiring> firings{{&first, controlOf(first), offset(2, 3), {}},
                                        {&second, controlOf(second, 5), {}, {}}};
    EXPECT_FALSE(compare(firings).corrected);
    EXPECT_FALSE(rowOf(compare(firings), Figure::peak_C)->comparable);
    EXPECT_TRUE(rowOf(compare(firings), Figure::nearPeak_min)->comparable);
    firings[1].offset = offset(7, 4);
    const auto table = compare(firings);
    EXPECT_TRUE(table.corrected);
    EXPECT_TRUE(rowOf(table, Figure::peak_C)->comparable);
    EXPECT_NEAR(rowOf(table, Figure::peak_C)->values[0]->value, 1288, 1e-9);
    EXPECT_NEAR(rowOf(table, Figure::peak_C)->spread, 0, 0.1);
    EXPECT_NEAR(*rowOf(table, Figure::peak_C)->values[1]->sd, 4, 1e-6);
    EXPECT_GT(*rowOf(table, Figure::growthHold_C)->values[1]->sd, 4) << "carried down 200 °C";
}

TEST(Comparison, KeepsToTwenty) {
    const auto record = madeUpFiring();
    const std::vector<ComparedFiring> many(25, ComparedFiring{&record, controlOf(record), {}, {}});
    EXPECT_EQ(compare(many).rows.front().values.size(), mostCompared);
    EXPECT_TRUE(compare({}).rows.empty());
}

TEST(Comparison, FindsTheMomentToAlignAt) {
    auto record = madeUpFiring();
    const auto control = controlOf(record);
    EXPECT_EQ(momentOf(figuresOf(record, control), control, AlignAt::start), minuteIn(0));
    EXPECT_EQ(momentOf(figuresOf(record, control), control, AlignAt::coneDown), std::nullopt);
    record.looks = {{LookId{1}, PackId{1}, minuteIn(620), "10", 6}};
    const auto figures = figuresOf(record, control);
    EXPECT_EQ(momentOf(figures, control, AlignAt::coneDown), minuteIn(620));
    EXPECT_EQ(momentOf(figures, control, AlignAt::growthHold), figures.growthHold->start);
    EXPECT_EQ(momentOf({}, {}, AlignAt::start), std::nullopt);
}

TEST(FiringCost, AddsUpAndIsShared) {
    const auto metered = [](double kWh) { return KnownEnergy{Energy::fromKilowattHours(kWh)}; };
    const auto cost = costOf({metered(80), 0.3, 2.0, 15.0, 4.0});
    EXPECT_NEAR(cost.total(), 24 + 30 + 4, 1e-12);
    EXPECT_TRUE(cost.complete);
    EXPECT_FALSE(costOf({metered(80), {}, {}, {}, {}}).complete);
    EXPECT_TRUE(costOf({{}, 0.3, {}, {}, {}}).complete) << "a price alone";
    EXPECT_THAT(sharesOf(60, {1, 2, 3}), testing::ElementsAre(10, 20, 30));
    EXPECT_THAT(sharesOf(60, {0, 0}), testing::ElementsAre(30, 30));
    EXPECT_TRUE(sharesOf(60, {}).empty());
}

} // namespace
} // namespace ringhold
