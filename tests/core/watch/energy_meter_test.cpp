#include "core/watch/energy_meter.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace std::chrono_literals;

const Instant start{std::chrono::hours(492000)};

Channel channel(Quantity quantity, int id) {
    return {ChannelId{id}, FiringId{1}, quantity, "", {}};
}
const Channel volts = channel(Quantity::lineVolts, 1), amps = channel(Quantity::lineAmps, 2),
              duty = channel(Quantity::duty, 3);

TEST(EnergyMeter, AddsUpVoltsTimesAmps) {
    EnergyMeter meter({}, {});
    EXPECT_FALSE(meter.soFar());
    for (int minute = 0; minute <= 60; ++minute) {
        meter.add(volts, start + 1min * minute, 230);
        meter.add(amps, start + 1min * minute, 20);
        meter.add(duty, start + 1min * minute, 1); // not counted twice
    }
    ASSERT_TRUE(meter.soFar());
    EXPECT_NEAR(meter.soFar()->kilowattHours(), 4.6, 1e-9);
}

TEST(EnergyMeter, CorrectsDutyForTheVolts) {
    EnergyMeter meter(Power{11000}, Volts{240});
    meter.add(volts, start, 228); // 5 % less: 9.75 % less power
    meter.add(duty, start, .5);
    meter.add(duty, start + 6min, .5);
    EXPECT_NEAR(meter.soFar()->kilowattHours(), 11 * .9025 * .5 * .1, 1e-9);
}

TEST(EnergyMeter, CountsNothingInAGap) {
    EnergyMeter meter({}, Volts{230});
    meter.add(amps, start, 20);
    meter.add(amps, start + 6min, 20);
    meter.add(amps, start + 3h, 20);
    EXPECT_NEAR(meter.soFar()->kilowattHours(), .46, 1e-9);
}

TEST(EnergyMeter, ReadsMeterStands) {
    const auto stand = [](Duration after, double value, bool struck = false,
                          MeterUnit unit = MeterUnit::kilowattHours) {
        return MeterStand{MeterStandId{1}, FiringId{1}, start + after, value, unit, struck};
    };
    EXPECT_FALSE(energyByMeter({stand(0h, 1200.5)}));
    EXPECT_NEAR(energyByMeter({stand(0h, 1200.5), stand(2h, 1210.25)})->kilowattHours(), 9.75, 1e-9);
    EXPECT_NEAR(energyByMeter({stand(0h, 1200), stand(3h, 1999, true), stand(2h, 1208)})->kilowattHours(), 8,
                1e-9);
    EXPECT_FALSE(energyByMeter({stand(0h, 1200), stand(2h, 1100)}));
    EXPECT_FALSE(energyByMeter({stand(0h, 1200), stand(2h, 1300, false, MeterUnit::cubicMetres)}));
}

TEST(FiringEnergy, CostsWhatTheMeterSays) {
    FiringEnergy energy{Energy::fromKilowattHours(10), Energy::fromKilowattHours(12),
                        Energy::fromKilowattHours(20), 0.25};
    EXPECT_DOUBLE_EQ(*energy.costSoFar(), 3);
    EXPECT_DOUBLE_EQ(*energy.costInAll(), 8);
    energy.byMeter.reset();
    EXPECT_DOUBLE_EQ(*energy.costSoFar(), 2.5);
    energy.pricePerKilowattHour.reset();
    EXPECT_FALSE(energy.costSoFar());
}

TEST(EnergyToCome, GrowsLessAsThePlanGoesOn) {
    const auto C = Temperature::fromCelsius;
    const Plan plan{"p",
                    {Climb{C(1000), Rate::fromCelsiusPerHour(200)},
                     Hold{C(1000), 1h, TemperatureDifference::fromCelsius(6)}}};
    PlanContext context;
    context.start = start;
    StepFollower follower(plan, context);
    follower.add({start, C(20)});
    const auto whole = energyToCome(follower, context, start);
    ASSERT_TRUE(whole);
    EXPECT_NEAR(whole->kilowattHours(), planEnergy(planCurve(plan, context), context).total.kilowattHours(),
                0.01);
    follower.add({start + 2h, C(420)});
    const auto rest = energyToCome(follower, context, start + 2h);
    ASSERT_TRUE(rest);
    EXPECT_LT(rest->kilowattHours(), whole->kilowattHours());
    EXPECT_GT(rest->kilowattHours(), whole->kilowattHours() / 2);
}

} // namespace
} // namespace ringhold
