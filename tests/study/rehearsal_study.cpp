// How well is a kiln known from its past firings, and how well is a plan rehearsed? Practice kilns with
// constants drawn about the sound one are fired, fitted and given another plan; what comes true is compared
// with the rehearsal. Fixed seeds. Usage: rehearsal_study [kilns]
#include "core/kiln/practice_firing.h"
#include "core/learn/kiln_fit.h"
#include "core/learn/rehearsal.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace {

double kilowattHoursOf(const PowerTrace& power) {
    const Instant from = power.front().at, to = power.back().at;
    return meanPower(power, from, to)->kilowatts() * inHours(to - from);
}

using namespace ringhold;

const Instant lit{std::chrono::hours(490000)};

Temperature celsius(double degrees) {
    return Temperature::fromCelsius(degrees);
}

KilnConstants drawnKiln(Chance& chance) {
    KilnConstants kiln;
    for (double* value : {&kiln.chamber_J_per_K, &kiln.brick_J_per_K, &kiln.chamberToBrick_W_per_K,
                          &kiln.brickLoss_W_per_K, &kiln.chamberLoss_W_per_K, &kiln.radiatingArea_m2})
        *value *= std::exp(0.2 * chance.normal());
    return kiln;
}

Plan past() {
    return {"",
            {Climb{celsius(1000), Rate::fromCelsiusPerHour(200)},
             Climb{celsius(1220), Rate::fromCelsiusPerHour(80)}, Drop{celsius(1090), {}},
             Hold{celsius(1090), std::chrono::hours(3), TemperatureDifference::fromCelsius(5)},
             Cool{celsius(800), {}}}};
}

Plan wanted() {
    return {"",
            {Climb{celsius(1235), Rate::fromCelsiusPerHour(250)}, Drop{celsius(1070), {}},
             Hold{celsius(1070), std::chrono::hours(4), TemperatureDifference::fromCelsius(5)},
             Rings{3, celsius(1040), std::chrono::minutes(10), celsius(1070), std::chrono::minutes(10)}}};
}

struct Came {
    KilnHistory history;
    std::vector<double> end_h; ///< of each step that was done
};

Came fired(const Plan& plan, const KilnConstants& kiln, std::uint64_t seed, double offset_C) {
    PracticeSettings settings;
    settings.plan = plan;
    settings.seed = seed;
    settings.kiln = kiln;
    settings.probeOffset = TemperatureDifference::fromCelsius(offset_C);
    PracticeKiln practice(settings);
    Came came;
    while (!practice.finished() && practice.elapsed() < std::chrono::hours(40)) {
        const auto reading = practice.reading();
        came.history.control.push_back({lit + practice.elapsed(), *reading.probe});
        came.history.power.push_back(
            {lit + practice.elapsed(), {reading.line.volts * reading.amps.amps}, reading.line});
        practice.advance(std::chrono::seconds(20));
        while (came.end_h.size() < practice.step())
            came.end_h.push_back(inHours(practice.elapsed()));
    }
    return came;
}

struct Tally {
    int held = 0;
    int tried = 0;
    double error = 0; ///< sum of squares
    void add(double truth, double low, double likely, double high) {
        held += low <= truth && truth <= high;
        ++tried;
        error += (likely / truth - 1) * (likely / truth - 1);
    }
};

void print(const char* what, const Tally& tally) {
    std::printf("  %-22s held by 90 %% range %5.1f%% of %d, likely value off by %.2f %%\n", what,
                100.0 * tally.held / std::max(tally.tried, 1), tally.tried,
                100 * std::sqrt(tally.error / std::max(tally.tried, 1)));
}

} // namespace

int main(int argc, char** argv) {
    const int kilns = argc > 1 ? std::atoi(argv[1]) : 40;
    for (const int firings : {1, 3}) {
        Tally holding, first, last, energy;
        int stalls = 0, foreseen = 0;
        for (int k = 0; k < kilns; ++k) {
            Chance chance(static_cast<std::uint64_t>(k), 9);
            const KilnConstants kiln = drawnKiln(chance);
            const double offset_C = 6 * chance.normal();
            std::vector<KilnHistory> histories;
            for (int f = 0; f < firings; ++f)
                histories.push_back(
                    fired(past(), kiln, static_cast<std::uint64_t>(100 * k + f), offset_C).history);
            const auto fit = fitKiln(histories, KilnConstants::sound());
            if (!fit)
                continue;
            std::vector<double> powers;
            for (const auto& draw : fit->draws)
                powers.push_back(holdingPower(draw, celsius(1080)).watts);
            std::ranges::sort(powers);
            holding.add(holdingPower(kiln, celsius(1080)).watts, powers[powers.size() / 20],
                        holdingPower(fit->likely, celsius(1080)).watts,
                        powers[powers.size() - 1 - powers.size() / 20]);
            const auto came = fired(wanted(), kiln, static_cast<std::uint64_t>(100 * k + 50), offset_C);
            const auto rehearsal =
                rehearse(wanted(), *fit, {.load_kg = {}, .start = came.history.control.front().temperature});
            if (came.end_h.size() < 4) {
                ++stalls;
                foreseen += rehearsal.stalledShare > 0.5;
                continue;
            }
            const auto& climb = rehearsal.steps.front().end_h;
            const auto& whole = rehearsal.length_h;
            const auto& kWh = rehearsal.energy_kWh;
            if (!climb.p95 || !whole.p95 || !kWh.p95)
                continue;
            first.add(came.end_h[0], *climb.p05, *climb.median, *climb.p95);
            last.add(came.end_h[3], *whole.p05, *whole.median, *whole.p95);
            energy.add(kilowattHoursOf(came.history.power), *kWh.p05, *kWh.median, *kWh.p95);
        }
        std::printf("%d kilns, %d past firing(s); %d could not do the plan, foreseen for %d\n", kilns,
                    firings, stalls, foreseen);
        print("power to hold 1080 °C", holding);
        print("end of the climb", first);
        print("length of the plan", last);
        print("energy", energy);
    }
    return 0;
}
