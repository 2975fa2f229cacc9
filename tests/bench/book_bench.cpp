// What a thick book costs: 500 firings of 14,400 instants on three probes each (21.6 million readings).
// Listed and searched under 50 ms, one opened under 100 ms, twenty laid over each other under 200 ms, in
// under 200 MB. The book is made once, in the folder that RINGHOLD_BENCH_BOOK names or else the temporary
// one, which takes some minutes, and is used again.
#include "core/book/book.h"
#include "core/book/reader.h"
#include "core/book/transaction.h"
#include "core/book/writer.h"
#include "core/kiln/practice_firing.h"
#include "ui/past/laid_over.h"

#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <map>

namespace ringhold {
namespace {

constexpr int firings = 500;
constexpr int instants = 14'400;
constexpr std::chrono::seconds spacing{5};
constexpr int laidOver = 20;
const Instant firstLit = *parseIso8601("2016-01-02T06:00:00Z");

template <class T>
T good(Result<T> result) {
    if (result)
        return std::move(*result);
    std::fprintf(stderr, "%s\n", result.error().text().c_str());
    std::exit(1);
}

void good(const Status& status) {
    if (status)
        return;
    std::fprintf(stderr, "%s\n", status.error().text().c_str());
    std::exit(1);
}

/// Climb, soak, drop, hold, out.
double courseAt(double hour) {
    if (hour < 7)
        return 20 + 176 * hour;
    if (hour < 8.5)
        return 1252 + 14 * (hour - 7);
    if (hour < 9)
        return 1273 - 370 * (hour - 8.5);
    return hour < 13 ? 1088 + 2 * std::sin(9 * hour) : 1088 - 80 * (hour - 13);
}

void writeReadings(BookWriter& writer, const std::vector<ChannelId>& channels, Instant lit, int number) {
    std::vector<Reading> readings;
    readings.reserve(channels.size() * instants);
    for (std::size_t probe = 0; probe < channels.size(); ++probe)
        for (int i = 0; i < instants; ++i) {
            const double wobble = std::sin(0.37 * i + number) + 4.0 * static_cast<double>(probe);
            readings.push_back({channels[probe], lit + i * spacing,
                                std::round(10 * (courseAt(inHours(i * spacing)) + wobble)) / 10});
        }
    good(writer.add(readings));
}

void writeFiring(const Book& book, BookWriter& writer, int number, const Kiln& kiln,
                 const std::vector<ProbeId>& probes) {
    static const char* const glazes[] = {"Frost fern", "Lichen gold", "Deep water",
                                         "Frost fern + Deep water"};
    auto transaction = good(WriteTransaction::begin(book));
    const Instant lit = firstLit + std::chrono::hours(24 * 7) * number;
    const auto firing = good(writer.add(Firing{
        {}, kiln.id, "Firing " + std::to_string(number), lit, lit + instants * spacing, practicePlan(), {}}));
    std::vector<ChannelId> channels;
    for (const auto probe : probes)
        channels.push_back(good(writer.add(Channel{{}, firing, Quantity::temperature, "T", probe})));
    writeReadings(writer, channels, lit, number);
    Pack pack{{}, firing, "middle shelf", ConeType::selfSupporting, {"8", "9", "10"}, false};
    pack.id = good(writer.add(pack));
    for (int look = 0; look < 12; ++look)
        good(writer.add(Look{{}, pack.id, lit + std::chrono::minutes(420 + 8 * look), "9", look / 2.0}));
    for (int note = 0; note < 10; ++note)
        good(writer.add(Note{{},
                             firing,
                             lit + std::chrono::minutes(30 * note),
                             "wind from the north, damper a thumb wider " + std::to_string(number * note)}));
    for (int piece = 0; piece < 20; ++piece) {
        const auto id = good(writer.add(
            Piece{{}, firing, "bottle " + std::to_string(piece), glazes[(number + piece) % 4], "top", true}));
        Outcome outcome;
        outcome.piece = id;
        outcome.largest_mm = 10 + piece;
        outcome.grade = piece % 5 == 0 ? "A" : "B";
        outcome.note = number % 50 == 7 ? "an owl in the glaze" : "even";
        good(writer.set(outcome));
    }
    good(transaction.commit());
}

std::filesystem::path madeBook() {
    const char* named = std::getenv("RINGHOLD_BENCH_BOOK");
    const auto folder = named ? std::filesystem::path(named) : std::filesystem::temp_directory_path();
    const auto file = folder / "bench-500.ringhold";
    if (std::filesystem::exists(file))
        return file;
    const auto unfinished = folder / "bench-500.part.ringhold";
    std::filesystem::remove(unfinished);
    {
        const Book book = good(Book::open(unfinished, Access::create));
        BookWriter writer(book);
        Kiln kiln;
        kiln.name = "Heron";
        kiln.id = good(writer.add(kiln));
        std::vector<ProbeId> probes;
        for (const char* label : {"top", "middle", "bottom"})
            probes.push_back(good(writer.add(Probe{{}, kiln.id, label, ThermocoupleType::S, label, {}, {}})));
        for (int number = 0; number < firings; ++number)
            writeFiring(book, writer, number, kiln, probes);
    }
    std::filesystem::rename(unfinished, file);
    return file;
}

/// MB that this process has in memory now, or at the most so far.
double memory_MB(const char* what) {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);)
        if (line.starts_with(what))
            return std::stod(line.substr(line.find(':') + 1)) / 1024;
    return 0;
}

const Book& book() {
    static const Book open = good(Book::open(madeBook(), Access::read));
    return open;
}

void list(benchmark::State& state) {
    std::size_t found = 0;
    for (auto _ : state)
        found = good(BookReader(book()).firings()).size();
    state.counters["found"] = static_cast<double>(found);
}

void search(benchmark::State& state, const FiringFilter& filter) {
    std::size_t found = 0;
    for (auto _ : state)
        found = good(BookReader(book()).firings(filter)).size();
    state.counters["found"] = static_cast<double>(found);
}

void openOne(benchmark::State& state) {
    int next = 0;
    for (auto _ : state)
        benchmark::DoNotOptimize(good(openFiring(book(), FiringId{1 + next++ * 37 % firings})));
}

/// None of them is in hand yet.
void overlay(benchmark::State& state) {
    int next = 0;
    for (auto _ : state) {
        std::vector<std::shared_ptr<const OpenedFiring>> opened;
        for (int i = 0; i < laidOver; ++i)
            opened.push_back(
                good(openFiring(book(), FiringId{1 + next++ * 37 % firings}, OpenedFor::comparing)));
        benchmark::DoNotOptimize(layOver(std::move(opened), Alignment::growthHold));
    }
    state.counters["now_MB"] = memory_MB("VmRSS");
    state.counters["most_MB"] = memory_MB("VmHWM");
}

BENCHMARK(list)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(search, word, FiringFilter{.words = "owl glaze"})->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(search, beginning, FiringFilter{.words = "damp wind nor"})->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(search, glaze, FiringFilter{.glaze = "lichen"})->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(search, cone, FiringFilter{.cone = "9"})->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(search, grade, FiringFilter{.grade = "A"})->Unit(benchmark::kMillisecond);
BENCHMARK(openOne)->Unit(benchmark::kMillisecond);
BENCHMARK(overlay)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace ringhold

BENCHMARK_MAIN();
