// What the cone forecast costs: three packs of three cones, in the last hour before the firing cone is down,
// two looks told. The program forecasts every 15 s of the kiln's time at the soonest; the amortised cost is
// that of fifteen readings at 1 Hz and the forecast that they share, over fifteen.
#include "core/cones/advice.h"
#include "core/cones/forecast.h"

#include <benchmark/benchmark.h>

namespace ringhold {
namespace {

const Instant began{std::chrono::hours(492000)};
constexpr double climb_C_per_h = 60;
constexpr double first_C = 600;
constexpr int readingsAForecast = 15;

OffsetPrior knownKiln() {
    return {TemperatureDifference::fromCelsius(4), TemperatureDifference::fromCelsius(3), 5};
}

OffsetPrior newKiln() {
    return newProbePrior(ThermocoupleType::K, Temperature::fromCelsius(1260));
}

CurvePoint reading(int second) {
    return {
        began + std::chrono::seconds(second),
        Temperature::fromCelsius(first_C + climb_C_per_h * second / 3600 + (second * 7919 % 13 - 6) * 0.1)};
}

int secondAt(double celsius) {
    return static_cast<int>((celsius - first_C) / climb_C_per_h * 3600);
}

/// At 1255 °C, an hour's climb and the beginning before it read each second.
ConeForecaster watched(const OffsetPrior& prior, bool looked) {
    const WatchedPack pack{ConeType::selfSupporting, {"8", "9", "10"}, prior};
    auto forecaster = ConeForecaster::make({pack, pack, pack}).value();
    for (int second = 0; second < secondAt(1255); ++second)
        forecaster.add(reading(second));
    if (looked)
        benchmark::DoNotOptimize(forecaster
                                     .setLooks({{0, "8", began + std::chrono::seconds(secondAt(1250)), 2.0},
                                                {1, "8", began + std::chrono::seconds(secondAt(1253)), 2.5}})
                                     .ok());
    return forecaster;
}

void forecastOfNewKiln(benchmark::State& state) {
    const auto forecaster = watched(newKiln(), false);
    for (auto _ : state)
        benchmark::DoNotOptimize(forecaster.forecast());
}
BENCHMARK(forecastOfNewKiln)->Unit(benchmark::kMicrosecond);

void forecastOfKnownKilnWithLooks(benchmark::State& state) {
    const auto forecaster = watched(knownKiln(), true);
    for (auto _ : state)
        benchmark::DoNotOptimize(forecaster.forecast());
}
BENCHMARK(forecastOfKnownKilnWithLooks)->Unit(benchmark::kMicrosecond);

/// One iteration is one reading.
void readingWithItsShareOfForecasts(benchmark::State& state, OffsetPrior prior) {
    auto forecaster = watched(prior, true);
    int second = secondAt(1255);
    for (auto _ : state) {
        forecaster.add(reading(++second));
        if (second % readingsAForecast == 0)
            benchmark::DoNotOptimize(forecaster.forecast());
    }
}
BENCHMARK_CAPTURE(readingWithItsShareOfForecasts, newKiln, newKiln())
    ->Iterations(2000)
    ->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(readingWithItsShareOfForecasts, knownKiln, knownKiln())
    ->Iterations(2000)
    ->Unit(benchmark::kMicrosecond);

void readingAlone(benchmark::State& state) {
    auto forecaster = watched(newKiln(), true);
    int second = secondAt(1255);
    for (auto _ : state)
        forecaster.add(reading(++second));
}
BENCHMARK(readingAlone)->Iterations(3000)->Unit(benchmark::kMicrosecond);

void twoLooks(benchmark::State& state) {
    auto forecaster = watched(newKiln(), false);
    const std::vector<WatchedLook> looks{{0, "8", began + std::chrono::seconds(secondAt(1250)), 2.0},
                                         {1, "8", began + std::chrono::seconds(secondAt(1253)), 2.5}};
    for (auto _ : state) {
        benchmark::DoNotOptimize(forecaster.setLooks(looks).ok());
        benchmark::DoNotOptimize(forecaster.posterior());
    }
}
BENCHMARK(twoLooks)->Unit(benchmark::kMicrosecond);

} // namespace
} // namespace ringhold

BENCHMARK_MAIN();
