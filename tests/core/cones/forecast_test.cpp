#include "core/cones/bending.h"
#include "core/cones/forecast.h"

#include <gtest/gtest.h>

#include <cmath>

namespace ringhold {
namespace {

const Instant start{std::chrono::hours(492000)};

TemperatureDifference degrees(double celsius) {
    return TemperatureDifference::fromCelsius(celsius);
}

OffsetPrior belief(double mean_C, double sd_C) {
    return {degrees(mean_C), degrees(sd_C)};
}

Instant minute(double minutes) {
    return start + durationFromMinutes(minutes);
}

/// A climb at 60 °C/h, a degree a minute, from 900 °C; minute m reads 900 + m.
void climb(ConeForecaster& forecaster, double toMinute, double from = 0) {
    for (double m = from; m <= toMinute; m += 0.5)
        forecaster.add({minute(m), Temperature::fromCelsius(900 + m)});
}

ConeForecaster makePack(const OffsetPrior& prior, std::vector<std::string> cones = {"8", "9", "10"}) {
    return ConeForecaster::make({{ConeType::selfSupporting, std::move(cones), prior}}).value();
}

double endMinute(const char* cone) {
    return ConeTable::builtIn().find(cone)->law.endPoint(Rate::fromCelsiusPerHour(60)).celsius() - 900;
}

double minutesOf(const std::optional<Instant>& at) {
    return at ? inMinutes(*at - start) : NAN;
}

TEST(Forecast, EndsConesWhereTheTableSaysWhenTheProbeIsRight) {
    auto forecaster = makePack(belief(0, 0.5));
    climb(forecaster, 330);
    const auto forecast = forecaster.forecast();
    ASSERT_TRUE(forecast.ok());
    for (const auto& cone : forecast->packs[0].cones)
        EXPECT_NEAR(minutesOf(cone.down.median), endMinute(cone.cone.c_str()), 0.5) << cone.cone;
}

TEST(Forecast, AProbeThatReadsHighMakesConesLate) {
    auto forecaster = makePack(belief(12, 0.5));
    climb(forecaster, 330);
    const auto nine = forecaster.forecast()->packs[0].cones[1];
    EXPECT_NEAR(minutesOf(nine.down.median), endMinute("9") + 12, 0.7);
    // work and hour are told for the probe's own curve, uncorrected
    const auto& law = ConeTable::builtIn().find("9")->law;
    EXPECT_NEAR(nine.work, law.gained(1173.15, 1503.15, 330 * 60), 1e-6);
}

TEST(Forecast, ALookAtTheGuideConeMovesAndNarrowsIt) {
    auto forecaster = makePack(belief(0, 10));
    const double late_min = 9; // the probe reads 9 °C high
    const auto& guide = ConeTable::builtIn().find("8")->law;
    climb(forecaster, endMinute("8") + late_min);
    const auto before = *forecaster.forecast();
    // true hour 3 comes when W reaches its share, a few minutes before the end
    const double three_min =
        endMinute("8") + late_min + std::log(BendingLaw().workAt(3)) / guide.sensitivity_per_C(1520);
    ASSERT_TRUE(forecaster.setLooks({{0, "8", minute(three_min), 3.0}}).ok());
    const auto after = *forecaster.forecast();
    EXPECT_NEAR(after.packs[0].offsetMean.celsius(), 9, 1.5);
    EXPECT_LT(after.packs[0].offsetSd.celsius(), 0.4 * before.packs[0].offsetSd.celsius());
    const auto& nine = after.packs[0].cones[1];
    EXPECT_NEAR(minutesOf(nine.down.median), endMinute("9") + late_min, 2);
    EXPECT_LT(minutesOf(nine.down.p05), minutesOf(nine.down.median));
    EXPECT_LT(minutesOf(nine.down.median), minutesOf(nine.down.p95));
}

TEST(Forecast, TenLooksAtOneConeAreNotTenTimesAsSure) {
    const auto sdAfter = [](int looks) {
        auto forecaster = makePack(belief(0, 10));
        climb(forecaster, endMinute("8"));
        std::vector<WatchedLook> told;
        for (int i = 0; i < looks; ++i)
            told.push_back({0, "8", minute(endMinute("8") - 8), 2.0});
        EXPECT_TRUE(forecaster.setLooks(told).ok());
        return forecaster.forecast()->packs[0].offsetSd.celsius();
    };
    // the cone's own deviation of 2 °C stays, however often it is looked at
    EXPECT_GT(sdAfter(10), 1.9);
    EXPECT_LT(sdAfter(10), sdAfter(1));
    EXPECT_GT(sdAfter(10), 0.7 * sdAfter(1));
}

TEST(Forecast, PointsOutAWrongLook) {
    auto forecaster = makePack(belief(0, 2));
    climb(forecaster, endMinute("8"));
    ASSERT_TRUE(forecaster
                    .setLooks({{0, "8", minute(endMinute("8") - 30), 5.5}, // it stands straight then
                               {0, "8", minute(endMinute("8") - 9), 2.5}})
                    .ok());
    const auto forecast = *forecaster.forecast();
    ASSERT_EQ(forecast.packs[0].wrongLook.size(), 2u);
    EXPECT_GT(forecast.packs[0].wrongLook[0], 0.9);
    EXPECT_LT(forecast.packs[0].wrongLook[1], 0.1);
    EXPECT_NEAR(forecast.packs[0].offsetMean.celsius(), 0, 2);
}

TEST(Forecast, OnePacksLooksTellLessOfAnother) {
    const auto make = [] {
        return ConeForecaster::make({{ConeType::selfSupporting, {"8", "9"}, belief(0, 10)},
                                     {ConeType::selfSupporting, {"8", "9"}, belief(0, 10)}})
            .value();
    };
    auto forecaster = make();
    climb(forecaster, endMinute("8") + 12);
    ASSERT_TRUE(forecaster.setLooks({{0, "8", minute(endMinute("8") + 3), 2.0}}).ok());
    const auto forecast = *forecaster.forecast();
    const double own = forecast.packs[0].offsetMean.celsius();
    const double other = forecast.packs[1].offsetMean.celsius();
    EXPECT_GT(own, 5);
    EXPECT_NEAR(other, own / 2, 1.5); // half of the prior's variance is common
    EXPECT_GT(forecast.packs[1].offsetSd.celsius(), 6);
}

TEST(Forecast, SaysWhatIsDownAlreadyAndWhenItWent) {
    auto forecaster = makePack(belief(0, 1));
    climb(forecaster, endMinute("8") + 20);
    const auto eight = forecaster.forecast()->packs[0].cones[0];
    EXPECT_TRUE(eight.isDown);
    EXPECT_GT(eight.probabilityDown, 0.99);
    EXPECT_NEAR(minutesOf(eight.down.median), endMinute("8"), 0.5);
    EXPECT_EQ(eight.hour, 6);
}

TEST(Forecast, OnlyALookOrNearCertaintyMakesAConeDown) {
    auto forecaster = makePack(belief(0, 10));
    climb(forecaster, endMinute("8") + 2);
    EXPECT_FALSE(forecaster.forecast()->packs[0].cones[0].isDown);
    ASSERT_TRUE(forecaster.setLooks({{0, "8", minute(endMinute("8") + 1), 6.0}}).ok());
    EXPECT_TRUE(forecaster.forecast()->packs[0].cones[0].isDown);
}

TEST(Forecast, DoesNotCallAConeDownAgainstANewerLook) {
    auto forecaster = makePack(belief(0, 2), {"8"});
    climb(forecaster, endMinute("8") + 25);
    EXPECT_TRUE(forecaster.forecast()->packs[0].cones[0].isDown);
    ASSERT_TRUE(forecaster.setLooks({{0, "8", minute(endMinute("8") + 24), 3.0}}).ok());
    const auto told = forecaster.forecast()->packs[0];
    EXPECT_FALSE(told.cones[0].isDown);
    EXPECT_TRUE(told.cones[0].contradicted);
    EXPECT_GT(told.wrongLook[0], 0.5);
}

TEST(Forecast, ANewerLookPutsAnEarlierOneInDoubt) {
    auto forecaster = makePack(belief(0, 10), {"8"});
    climb(forecaster, endMinute("8"));
    const WatchedLook down{0, "8", minute(endMinute("8") - 12), 6.0};
    ASSERT_TRUE(forecaster.setLooks({down}).ok());
    EXPECT_TRUE(forecaster.forecast()->packs[0].cones[0].isDown);
    ASSERT_TRUE(forecaster.setLooks({down, {0, "8", minute(endMinute("8") - 2), 2.0}}).ok());
    const auto eight = forecaster.forecast()->packs[0].cones[0];
    EXPECT_FALSE(eight.isDown);
    EXPECT_TRUE(eight.contradicted);
}

TEST(Forecast, AColdPackTellsTheOffsetTheCoolingIncluded) {
    const double offset_C = 7;
    const double top = endMinute("9") + offset_C - 6;
    const auto& ten = ConeTable::builtIn().find("10")->law;
    const double top_K = 900 + top - offset_C + 273.15;
    const double work =
        ten.gained(1173.15, top_K, top * 60) + ten.gained(top_K, top_K - 300, 3600); // 300 °C/h down
    const double hour = std::round(BendingLaw().hourAt(work) * 2) / 2;
    const auto told = [&](bool readingsOfTheCooling) {
        auto forecaster = makePack(belief(0, 10));
        climb(forecaster, top);
        if (readingsOfTheCooling)
            for (double m = 1; m <= 120; ++m)
                forecaster.add({minute(std::floor(top) + m), Temperature::fromCelsius(900 + top - 5 * m)});
        const Instant nextDay = minute(24 * 60);
        EXPECT_TRUE(forecaster.setLooks({{0, "10", nextDay, hour, true}, {0, "8", nextDay, 6, true}}).ok());
        return forecaster.forecast()->packs[0];
    };
    const auto read = told(true);
    EXPECT_NEAR(read.offsetMean.celsius(), offset_C, 4);
    EXPECT_LT(read.offsetSd.celsius(), 6.5); // of 10 before
    EXPECT_NEAR(told(false).offsetMean.celsius(), read.offsetMean.celsius(), 0.7);
}

TEST(Forecast, SaysNothingOfWhatNeverComes) {
    auto forecaster = makePack(belief(0, 3));
    climb(forecaster, 200); // 1100 °C
    const auto future = climbOn(minute(200), Temperature::fromCelsius(1100), Rate::fromCelsiusPerHour(60),
                                Rate::fromCelsiusPerHour(1), Temperature::fromCelsius(1120));
    const auto nine = forecaster.forecast(future)->packs[0].cones[1];
    EXPECT_FALSE(nine.down.median);
    EXPECT_FALSE(nine.down.p95);
    EXPECT_FALSE(nine.isDown);
}

TEST(Forecast, ASoakBringsTheConeDownLater) {
    auto forecaster = makePack(belief(0, 0.5), {"9"});
    const double short_C = 20;
    climb(forecaster, endMinute("9") - short_C);
    const Instant now = forecaster.curve().back().at;
    const auto future = climbOn(now, forecaster.curve().back().temperature, Rate::fromCelsiusPerHour(60),
                                Rate::fromCelsiusPerHour(0), forecaster.curve().back().temperature);
    const auto nine = forecaster.forecast(future)->packs[0].cones[0];
    EXPECT_NEAR(inMinutes(*nine.down.median - now), 30, 3); // own study: 20 °C below takes about 30 min
}

TEST(Forecast, CorrectedReadingsGiveWhatTheyWouldHaveGivenAtFirst) {
    auto fresh = makePack(belief(0, 10));
    climb(fresh, 350);
    auto corrected = makePack(belief(0, 10));
    climb(corrected, 300);
    for (double m = 300.5; m <= 340; m += 0.5)
        corrected.add({minute(m), Temperature::fromCelsius(1300)}); // a probe knocked against an element
    corrected.forgetFrom(minute(300.5));
    climb(corrected, 350, 300.5);
    const auto a = *fresh.forecast();
    const auto b = *corrected.forecast();
    for (std::size_t c = 0; c < 3; ++c) {
        EXPECT_NEAR(b.packs[0].cones[c].work / a.packs[0].cones[c].work, 1, 1e-9);
        EXPECT_EQ(b.packs[0].cones[c].down.median, a.packs[0].cones[c].down.median);
    }
}

TEST(Forecast, SparseReadingsGiveTheSameWithALittleLessCertainty) {
    const auto run = [](double spacing_min) {
        auto forecaster = makePack(belief(0, 4));
        for (double m = 0; m <= 345; m += spacing_min)
            forecaster.add({minute(m), Temperature::fromCelsius(900 + m)});
        return *forecaster.forecast();
    };
    const auto dense = run(0.25).packs[0].cones[1];
    const auto sparse = run(15).packs[0].cones[1];
    EXPECT_NEAR(sparse.work / dense.work, 1, 0.004); // 0.1 °C-equivalent
    EXPECT_NEAR(minutesOf(sparse.down.median), minutesOf(dense.down.median), 0.5);
    EXPECT_GE(minutesOf(sparse.down.p95) - minutesOf(sparse.down.p05),
              minutesOf(dense.down.p95) - minutesOf(dense.down.p05));
}

/// Of what a curve may have done inside a gap nothing is known; it was asked before the gap, too.
TEST(Forecast, AGapWidensItAndHeatWorkAfterItNarrowsItAgain) {
    const auto widthAfterGap = [](double gap_min, double last_min) {
        auto forecaster = makePack(belief(0, 1), {"9"});
        climb(forecaster, 345 - gap_min);
        EXPECT_TRUE(forecaster.forecast().ok());
        climb(forecaster, last_min, 345);
        const auto down = forecaster.forecast()->packs[0].cones[0].down;
        return minutesOf(down.p95) - minutesOf(down.p05);
    };
    EXPECT_GT(widthAfterGap(60, 346), widthAfterGap(0.5, 346) + 0.2);
    EXPECT_GT(widthAfterGap(120, 346), widthAfterGap(60, 346) + 0.5);
    EXPECT_LT(widthAfterGap(120, 357) - widthAfterGap(0.5, 357),
              widthAfterGap(120, 346) - widthAfterGap(0.5, 346));
}

TEST(Forecast, RefusesWhatMakesNoSense) {
    EXPECT_FALSE(ConeForecaster::make({}).ok());
    EXPECT_FALSE(ConeForecaster::make({{ConeType::selfSupporting, {}, belief(0, 10)}}).ok());
    EXPECT_FALSE(ConeForecaster::make({{ConeType::selfSupporting, {"99"}, belief(0, 10)}}).ok());
    auto forecaster = makePack(belief(0, 10));
    EXPECT_FALSE(forecaster.forecast().ok());
    climb(forecaster, 300);
    EXPECT_FALSE(forecaster.setLooks({{0, "7", minute(200), 0}}).ok());
    EXPECT_FALSE(forecaster.setLooks({{0, "8", minute(200), 7}}).ok());
    EXPECT_FALSE(forecaster.setLooks({{0, "8", minute(200), 1.3}}).ok());
    EXPECT_FALSE(forecaster.setLooks({{0, "8", minute(-1), 0}}).ok());
    EXPECT_FALSE(forecaster.setLooks({{0, "8", minute(321), 0}}).ok());
    EXPECT_TRUE(forecaster.setLooks({{0, "8", minute(305), 0}}).ok()); // a little after the last reading
    EXPECT_TRUE(forecaster.forecast().ok());
}

} // namespace
} // namespace ringhold
