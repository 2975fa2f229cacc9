// How good is the cone forecast? Simulated climbs (tests/support/simulated_climb.h) are forecast by the
// program; errors are scaled to a climb of 60 °C/h (times rate / 60). Fixed seeds. Beside each figure stands
// its floor: the error of who knows everything but what no look can tell, that is each cone's own deviation
// and the offset's scatter from firing to firing.
//
// Usage: forecast_study [--firings N] [--seed S] [--threads T] [--without CAUSE]...
// Causes: deviation, activation, exponents, slowdowns, noise, lookError, onHour
#include "tests/support/simulated_climb.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <map>
#include <string>
#include <thread>
#include <vector>

namespace {

using namespace ringhold;
using namespace ringhold::test;

constexpr double kilns_C = 10;  // sd of offsets from kiln to kiln
constexpr double scatter_C = 2; // and of one kiln's from firing to firing
constexpr int pastFirings = 5;
constexpr double ahead_min = 30; // at 60 °C/h, of the forecast without looks

struct Options {
    int firings = 500;
    std::uint64_t seed = 1;
    int threads = 1;
    ErrorCauses causes;
};

TemperatureDifference degrees(double celsius) {
    return TemperatureDifference::fromCelsius(celsius);
}

const OffsetPrior& newKilnPrior() {
    static const auto prior = newProbePrior(ThermocoupleType::K, Temperature::fromCelsius(1260));
    return prior;
}

ConeForecaster watched(const SimulatedClimb& climb, double until_s, const OffsetPrior& prior,
                       const std::vector<WatchedLook>& looks, StudyRandom& random) {
    auto forecaster = ConeForecaster::make({{ConeType::selfSupporting, {"8", "9"}, prior}}).value();
    for (const auto& point : climb.readings(until_s, random))
        forecaster.add(point);
    if (!forecaster.setLooks(looks).ok())
        std::abort();
    return forecaster;
}

/// At the guide cone's 1, 2 and 3 o'clock; or by the clock until it is told to be at 3.
std::vector<WatchedLook> looksAtGuide(const SimulatedClimb& climb, const ErrorCauses& causes,
                                      StudyRandom& random) {
    std::vector<WatchedLook> looks;
    if (causes.looksOnHour) {
        for (const double hour : {1.0, 2.0, 3.0})
            looks.push_back(climb.look(0, climb.reaches_s(0, hour), random));
        return looks;
    }
    const double apart_s = 480 * 60 / climb.rate_C_per_h();
    double second = climb.reaches_s(0, 1) - apart_s * random.uniform(0.5, 1.5);
    for (; second < climb.down_s(1) - 60; second += apart_s) {
        looks.push_back(climb.look(0, std::max(1.0, second), random));
        if (looks.back().hour >= 3)
            break;
    }
    return looks;
}

/// A whole firing's: at the guide cone until it is down, then at the firing cone.
std::vector<WatchedLook> looksUntilDown(const SimulatedClimb& climb, StudyRandom& random) {
    std::vector<WatchedLook> looks;
    for (const double hour : {1.0, 3.0, 5.0, 6.0})
        looks.push_back(climb.look(0, climb.reaches_s(0, hour), random));
    for (const double hour : {1.0, 2.0, 3.0, 5.0, 6.0})
        looks.push_back(climb.look(1, climb.reaches_s(1, hour), random));
    return looks;
}

/// What a firing that was looked at to its end files.
std::optional<OffsetFound> filed(double offset_C, const ErrorCauses& causes, StudyRandom& random) {
    const SimulatedClimb climb(offset_C, causes, random);
    const auto forecaster =
        watched(climb, climb.down_s(1), newKilnPrior(), looksUntilDown(climb, random), random);
    const auto& offset = forecaster.posterior().packs[0].offset;
    return toldByLooks(newKilnPrior(), {degrees(offset.mean_C()), degrees(offset.sd_C())});
}

struct Outcome {
    bool usable = false;
    double error_min = 0; ///< median forecast minus truth, scaled to 60 °C/h
    double width_min = 0;
    bool covered = false;
    double ahead_min = 0;
};

Outcome outcomeOf(const SimulatedClimb& climb, const ConeForecaster& forecaster) {
    const auto forecast = forecaster.forecast().value();
    const auto& down = forecast.packs[0].cones[1].down;
    if (!down.median || !down.p05 || !down.p95)
        return {};
    const double scale = climb.rate_C_per_h() / 60;
    const Instant truth = SimulatedClimb::at(climb.down_s(1));
    return {true, inMinutes(*down.median - truth) * scale, inMinutes(*down.p95 - *down.p05) * scale,
            *down.p05 <= truth && truth <= *down.p95, inMinutes(truth - forecast.asOf) * scale};
}

Outcome withLooks(const SimulatedClimb& climb, const OffsetPrior& prior, const ErrorCauses& causes,
                  StudyRandom& random) {
    const auto looks = looksAtGuide(climb, causes, random);
    const double asked_s = inSeconds(looks.back().at - SimulatedClimb::at(0));
    return outcomeOf(climb, watched(climb, asked_s, prior, looks, random));
}

Outcome withoutLooks(const SimulatedClimb& climb, const OffsetPrior& prior, StudyRandom& random) {
    const double asked_s = climb.down_s(1) - ahead_min * 60 * 60 / climb.rate_C_per_h();
    return outcomeOf(climb, watched(climb, asked_s, prior, {}, random));
}

struct Row {
    Outcome fresh;
    Outcome known;
    Outcome knownNoLook;
};

Row study(const Options& options, int number) {
    StudyRandom random(options.seed * 1'000'003 + static_cast<std::uint64_t>(number));
    const auto& causes = options.causes;
    const double kiln_C = random.normal(kilns_C);
    Row row;
    row.fresh = withLooks(SimulatedClimb(kiln_C, causes, random), newKilnPrior(), causes, random);
    std::vector<OffsetFound> history;
    for (int past = 0; past < pastFirings; ++past)
        if (const auto found = filed(kiln_C + random.normal(scatter_C), causes, random))
            history.push_back(*found);
    const auto prior = priorFromHistory(history, newKilnPrior());
    const SimulatedClimb climb(kiln_C + random.normal(scatter_C), causes, random);
    row.known = withLooks(climb, prior, causes, random);
    row.knownNoLook = withoutLooks(climb, prior, random);
    return row;
}

std::vector<Row> studyAll(const Options& options) {
    std::vector<Row> rows(static_cast<std::size_t>(options.firings));
    std::vector<std::thread> threads;
    for (int t = 0; t < options.threads; ++t)
        threads.emplace_back([&, t] {
            for (int i = t; i < options.firings; i += options.threads)
                rows[static_cast<std::size_t>(i)] = study(options, i);
        });
    for (auto& thread : threads)
        thread.join();
    return rows;
}

double quantile(std::vector<double> values, double share) {
    std::ranges::sort(values);
    return values.empty() ? 0
                          : values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
}

/// Of a normal error with that variance: its median and nine in ten, without sign.
std::string floorOf(double variance_C2) {
    char text[32];
    std::snprintf(text, sizeof text, "%.2f %.2f", 0.6745 * std::sqrt(variance_C2),
                  1.6449 * std::sqrt(variance_C2));
    return text;
}

void print(const char* name, const std::vector<Row>& rows, Outcome Row::*kind, const std::string& floor) {
    std::vector<double> errors, sizes, widths, ahead;
    int covered = 0;
    for (const auto& row : rows) {
        const Outcome& o = row.*kind;
        if (!o.usable)
            continue;
        errors.push_back(o.error_min);
        sizes.push_back(std::abs(o.error_min));
        widths.push_back(o.width_min);
        ahead.push_back(o.ahead_min);
        covered += o.covered;
    }
    std::printf("%-32s %5zu %7.2f %7.2f %11s %7.2f %7.1f %7.1f %7.1f %7.1f\n", name, sizes.size(),
                quantile(sizes, 0.5), quantile(sizes, 0.9), floor.c_str(), quantile(errors, 0.5),
                100.0 * covered / static_cast<double>(sizes.size()), quantile(widths, 0.5),
                quantile(errors, 0.95) - quantile(errors, 0.05), quantile(ahead, 0.5));
}

bool switchOff(ErrorCauses& causes, const std::string& name) {
    const std::map<std::string, std::function<void()>> off{
        {"deviation", [&] { causes.deviation_C = 0; }},   {"activation", [&] { causes.activationShare = 0; }},
        {"exponents", [&] { causes.exponents = false; }}, {"slowdowns", [&] { causes.slowdowns = false; }},
        {"noise", [&] { causes.noise_C = 0; }},           {"lookError", [&] { causes.lookSd_h = 0; }},
        {"onHour", [&] { causes.looksOnHour = false; }}};
    const auto found = off.find(name);
    if (found != off.end())
        found->second();
    return found != off.end();
}

bool read(Options& options, int argc, char** argv) {
    for (int i = 1; i + 1 < argc; i += 2) {
        const std::string name = argv[i];
        if (name == "--firings")
            options.firings = std::max(1, std::atoi(argv[i + 1]));
        else if (name == "--seed")
            options.seed = std::strtoull(argv[i + 1], nullptr, 10);
        else if (name == "--threads")
            options.threads = std::max(1, std::atoi(argv[i + 1]));
        else if (name != "--without" || !switchOff(options.causes, argv[i + 1]))
            return false;
    }
    return argc % 2 == 1;
}

} // namespace

int main(int argc, char** argv) {
    Options options;
    if (!read(options, argc, argv)) {
        std::fprintf(stderr, "usage: forecast_study [--firings N] [--seed S] [--threads T] "
                             "[--without CAUSE]...\n");
        return 2;
    }
    const auto rows = studyAll(options);
    std::printf(
        "Minutes, scaled to 60 °C/h; %d firings, seed %llu. width: of the 90 %% interval; needed: what "
        "the errors span, 5 to 95 %%.\n",
        options.firings, static_cast<unsigned long long>(options.seed));
    std::printf("%-32s %5s %7s %7s %11s %7s %7s %7s %7s %7s\n", "", "n", "median", "9 in 10", "floor", "bias",
                "in 90 %", "width", "needed", "ahead");
    // floors: guide and firing cone deviate by 2 °C each; a known kiln's offset scatters by 2 °C, of which a
    // look at a guide cone that deviates as much leaves half
    print("new kiln, three looks", rows, &Row::fresh, floorOf(4 + 4));
    print("five firings known, three looks", rows, &Row::known, floorOf(2 + 4));
    print("five firings known, no look", rows, &Row::knownNoLook, floorOf(4 + 4));
    return 0;
}
