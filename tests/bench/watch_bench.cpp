// What it costs to watch: 20 kilns of 4 probes, volts and amps, read every second. One iteration is one
// second of all of them, so its CPU time in per cent of a second is the share of one core. The second bench
// is the time from one reading to the alarms' answer.
#include "tests/support/watched_practice.h"

#include <benchmark/benchmark.h>

#include <algorithm>
#include <ctime>

namespace ringhold {
namespace {

constexpr int kilns = 20;
const Instant began{std::chrono::hours(492000)};

/// A kiln in the growth hold or in the climb, whose readings go straight to its watch.
class WatchedKiln : private LiveFiringListener {
  public:
    explicit WatchedKiln(int number) : m_noise(static_cast<std::uint64_t>(number)) {
        FiringRecord record;
        record.firing = {FiringId{number}, KilnId{number}, "bench", began, {}, practicePlan(), {}};
        record.kiln = {KilnId{number}, "bench", Fuel::electric, {}, Power{11000}, Volts{240}, {}, {}};
        record.packs = {
            {PackId{1}, FiringId{number}, "middle", ConeType::selfSupporting, {"8", "9", "10"}, false}};
        m_firing = std::make_unique<LiveFiring>(std::move(record), m_journal, m_log);
        m_watch =
            std::move(FiringWatch::make({m_firing.get(), {offsetPriorFor(nullptr, "middle", {})}}).value());
        m_firing->setListener(this);
    }

    /// The kiln's next second.
    std::size_t second() {
        const Instant at = began + std::chrono::seconds(++m_second);
        const double kiln_C = std::min(1262.0, 600 + 180.0 * m_second / 3600);
        for (const char* label : {"control", "top", "middle", "bottom"})
            take(at, label, Quantity::temperature, kiln_C + 0.3 * m_noise.normal());
        take(at, "volts", Quantity::lineVolts, 239 + 0.5 * m_noise.normal());
        take(at, "amps", Quantity::lineAmps, 30 + 0.5 * m_noise.normal());
        return m_watch->check(at).size();
    }

  private:
    void take(Instant at, const char* label, Quantity quantity, double value) {
        benchmark::DoNotOptimize(m_firing->take({at, label, quantity, value}).ok());
    }
    void onReading(const Channel& channel, const Reading& reading) override {
        m_watch->onReading(channel, reading);
    }
    void onLinesChanged(Instant from) override { m_watch->onLinesChanged(from); }

    Chance m_noise;
    test::ForgetfulJournal m_journal;
    test::ForgetfulLog m_log;
    std::unique_ptr<LiveFiring> m_firing;
    std::unique_ptr<FiringWatch> m_watch;
    int m_second = 0;
};

void twentyKilnsASecond(benchmark::State& state) {
    std::vector<std::unique_ptr<WatchedKiln>> all;
    for (int i = 1; i <= kilns; ++i)
        all.push_back(std::make_unique<WatchedKiln>(i));
    std::size_t alarms = 0;
    for (auto _ : state)
        for (auto& kiln : all)
            alarms += kiln->second();
    benchmark::DoNotOptimize(alarms);
}
BENCHMARK(twentyKilnsASecond)->Iterations(1200)->Unit(benchmark::kMillisecond);

/// The slowest of 20 min: with a forecast in it.
void oneReadingToItsAlarms(benchmark::State& state) {
    WatchedKiln kiln(1);
    for (int i = 0; i < 1200; ++i)
        kiln.second();
    std::clock_t slowest = 0;
    for (auto _ : state) {
        const std::clock_t from = std::clock(); // of the processor: other programs do not count
        benchmark::DoNotOptimize(kiln.second());
        slowest = std::max(slowest, std::clock() - from);
    }
    state.counters["slowest_ms"] = 1000.0 * static_cast<double>(slowest) / CLOCKS_PER_SEC;
}
BENCHMARK(oneReadingToItsAlarms)->Iterations(1200)->Unit(benchmark::kMicrosecond);

} // namespace
} // namespace ringhold

BENCHMARK_MAIN();
