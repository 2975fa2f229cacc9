// How long it takes to read a firing of 20 hours at a reading a second.
#include "core/exchange/csv_readings.h"
#include "core/exchange/stamp.h"

#include <benchmark/benchmark.h>

namespace ringhold {
namespace {

std::string longFiring(bool withZone) {
    std::string text = "time;probe_C;top_C;line_V;line_A\n";
    Instant at = *parseIso8601("2026-03-01T06:00:00Z");
    for (int i = 0; i < 72'000; ++i, at += Duration(1'000)) {
        appendStamp(text, at);
        if (!withZone)
            text.pop_back();
        const std::string value = std::to_string(20 + i % 12'000 / 10) + "." + std::to_string(i % 10);
        text += ";" + value + ";" + value + ";238.5;41.25\n";
    }
    return text;
}

void readCsvText(benchmark::State& state) {
    const std::string text = longFiring(state.range(0) != 0);
    for (auto _ : state)
        benchmark::DoNotOptimize(parseCsv(text, {.zone = "Europe/Paris"}).ok());
}
BENCHMARK(readCsvText)->ArgName("with_zone")->Arg(1)->Arg(0)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace ringhold

BENCHMARK_MAIN();
