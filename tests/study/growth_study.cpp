// How well is a glaze's growth rate found from its crystals? Invented glazes with a rate of their own grow
// crystals in invented firings; crystals are measured and the rate is fitted. Prints how often the 90 %
// intervals hold the truth and how wide they are, with diameters only and with rings. Fixed seeds. Usage:
// growth_study [glazes]
#include "core/kiln/chance.h"
#include "core/learn/growth_fit.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace {

using namespace ringhold;

GrowthRate drawnGlaze(Chance& chance) {
    GrowthRate rate = publishedGrowthRate();
    const auto C = TemperatureDifference::fromCelsius;
    const auto& w = rate.window;
    const auto best = w.best + C(20 * chance.normal());
    const double cold = std::exp(0.25 * chance.normal()), hot = std::exp(0.25 * chance.normal());
    rate.window = {best + (w.coldest - w.best) * cold, best + (w.halfCold - w.best) * cold, best,
                   best + (w.halfHot - w.best) * hot, best + (w.hottest - w.best) * hot};
    rate.best_um_per_min = 38.7 * std::exp(0.6 * chance.normal());
    return rate;
}

struct Fired {
    GrownFiring firing;
    Instant began; ///< of its first crystal
};

Fired fired(const GrowthRate& glaze, bool rings, Chance& chance) {
    const Instant start{std::chrono::hours(490000)};
    double minute = 0;
    Curve truth;
    const auto goTo = [&](double minutes, double celsius) {
        minute += minutes;
        truth.push_back({start + durationFromMinutes(minute), Temperature::fromCelsius(celsius)});
    };
    const double hold_C = 1085 + 18 * chance.normal();
    goTo(0, 1000);
    goTo(270, 1270);
    goTo(30, hold_C);
    goTo(120 + 180 * chance.uniform(), hold_C);
    std::vector<Instant> turns;
    for (int i = 0; i < 5; ++i) {
        goTo(6, hold_C - 35);
        goTo(10, hold_C - 35);
        turns.push_back(truth.back().at);
        goTo(5, hold_C);
        goTo(10, hold_C);
    }
    goTo(120, 700);
    Fired result;
    constexpr double offsetSd_C = 4;
    const auto error = TemperatureDifference::fromCelsius(offsetSd_C * chance.normal());
    result.firing = {truth, offsetSd_C, {}};
    for (auto& point : result.firing.curve)
        point.temperature = point.temperature + error;
    const CrystalGrowth growth(truth, glaze);
    const double firing = std::exp(0.1 * chance.normal());
    for (int c = 0; c < 3; ++c) {
        const Instant began = *growth.began() + durationFromMinutes(10 * std::exp(0.8 * chance.normal()));
        const double factor = firing * std::exp(0.12 * chance.normal());
        const auto measured = [&](Instant at) {
            return factor * (growth.radiusAt(at).likely_mm - growth.radiusAt(began).likely_mm) +
                   0.3 * chance.normal();
        };
        MeasuredCrystal crystal;
        crystal.radius_mm = std::max(0.2, measured(truth.back().at));
        if (rings)
            for (const Instant turn : turns)
                crystal.rings.push_back({turn, measured(turn)});
        if (c == 0)
            result.began = began;
        result.firing.crystals.push_back(crystal);
    }
    return result;
}

struct Tally {
    int held = 0, tried = 0;
    double lnWidth = 0;
    int bestHeld = 0, bestTried = 0;
    double bestWidth_C = 0;
    int beganHeld = 0, beganTried = 0;
    double beganWidth_min = 0;
};

void take(Tally& tally, const GrowthFit& fit, const GrowthRate& glaze, Instant began) {
    for (const double celsius : {1050.0, 1080.0, 1110.0}) {
        const auto at = Temperature::fromCelsius(celsius);
        const double truth = glaze.at_um_per_min(at);
        const auto [low, high] = fit.rate90_um_per_min(at);
        tally.held += low <= truth && truth <= high;
        ++tally.tried;
        tally.lnWidth += std::log(high / std::max(low, 0.5));
    }
    const auto [low, high] = fit.best90_C();
    const double best = glaze.window.best.celsius();
    tally.bestHeld += low <= best && best <= high;
    ++tally.bestTried;
    tally.bestWidth_C += (high - low) / 2;
    if (fit.began().empty())
        return;
    const auto& first = fit.began().front();
    tally.beganHeld += first.earliest <= began && began <= first.latest;
    ++tally.beganTried;
    tally.beganWidth_min += inMinutes(first.latest - first.earliest) / 2;
}

} // namespace

int main(int argc, char** argv) {
    const int glazes = argc > 1 ? std::atoi(argv[1]) : 200;
    std::printf("firings  measured   rate holds  times or over  best holds  +-°C  began holds  +-min\n");
    for (const bool rings : {false, true})
        for (const int firings : {1, 2, 4, 8}) {
            Tally tally;
            for (int g = 0; g < glazes; ++g) {
                Chance chance(static_cast<std::uint64_t>(g), static_cast<std::uint64_t>(firings));
                const GrowthRate glaze = drawnGlaze(chance);
                std::vector<GrownFiring> grown;
                Instant began;
                for (int f = 0; f < firings; ++f) {
                    const auto one = fired(glaze, rings, chance);
                    if (f == 0)
                        began = one.began;
                    grown.push_back(one.firing);
                }
                if (const auto fit = fitGrowth(grown))
                    take(tally, *fit, glaze, began);
            }
            const auto percent = [](int part, int whole) { return whole > 0 ? 100.0 * part / whole : 0.0; };
            std::printf("%7d  %-9s %9.1f%% %13.2f %10.1f%% %6.1f %10.1f%% %7.1f\n", firings,
                        rings ? "rings" : "diameters", percent(tally.held, tally.tried),
                        std::exp(tally.lnWidth / tally.tried / 2), percent(tally.bestHeld, tally.bestTried),
                        tally.bestWidth_C / tally.bestTried, percent(tally.beganHeld, tally.beganTried),
                        tally.beganTried > 0 ? tally.beganWidth_min / tally.beganTried : 0.0);
        }
    return 0;
}
