// How good is the cone forecast? Simulated climbs whose truth is drawn at random (probe offset, each cone's
// deviation, activation energy, bending exponent, rate, sags and stalls, reading noise, looks read with error
// and rounded) are forecast by the program; errors are scaled to a climb of 60 °C/h (times rate / 60). Fixed
// seeds. The truth is integrated here, step by step, apart from the program's own code. Usage: forecast_study
// [firings] [seed]
#include "core/cones/bending.h"
#include "core/cones/forecast.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <numbers>
#include <random>
#include <string>
#include <vector>

namespace {

using namespace ringhold;

class Random {
  public:
    explicit Random(std::uint64_t seed) : m_engine(seed) {}
    double uniform(double low, double high) { return low + (high - low) * unit(); }
    double normal(double sd) {
        return sd * std::sqrt(-2 * std::log(1 - unit())) * std::cos(2 * std::numbers::pi * unit());
    }

  private:
    double unit() { return static_cast<double>(m_engine() >> 11) * 0x1p-53; }
    std::mt19937_64 m_engine;
};

/// A cone as it really is in this firing.
struct TrueCone {
    double theta_K;
    double lnA;
    double deviation_C;
    double exponent;
    double work = 0;
    double hour() const { return BendingLaw(exponent).hourAt(work); }
};

TrueCone drawCone(const char* name, double exponent, Random& random) {
    const auto& law = ConeTable::builtIn().find(name)->law;
    const double end60_K = law.endPoint(Rate::fromCelsiusPerHour(60)).kelvin();
    const double theta_K = law.activation_J_per_mol() / gasConstant_J_per_mol_K * (1 + random.normal(0.06));
    // the wrong E turns about the end point at 60 °C/h
    return {theta_K, std::log(60.0 / 3600) - lnTemperatureIntegral(theta_K, end60_K), random.normal(2),
            exponent};
}

struct Scenario {
    double rate_C_per_h;
    double offset_C;
    std::vector<std::pair<double, double>> slowdowns_s; ///< from, to
    std::vector<double> factors;
};

Scenario drawScenario(double offset_C, Random& random) {
    Scenario s{random.uniform(30, 150), offset_C, {}, {}};
    const double climb_s = 300 / s.rate_C_per_h * 3600; // the last 300 °C
    for (int i = 0; i < 2; ++i)
        if (random.uniform(0, 1) < 0.4) {
            const double from = random.uniform(0, climb_s);
            s.slowdowns_s.emplace_back(from, from + random.uniform(300, 2400));
            s.factors.push_back(random.uniform(0, 1) < 0.3 ? 0.0
                                                           : random.uniform(0.7, 0.95)); // stall, or sag
        }
    return s;
}

struct Told {
    Interval<std::optional<Instant>> down;
    Instant at;
};

struct Outcome {
    double error_min = 0; ///< median forecast minus truth, scaled to 60 °C/h
    double width_min = 0;
    bool covered = false;
    double ahead_min = 0;
    double foundOffset_C = 0;
    double foundSd_C = 0;
    bool usable = false;
};

enum class Looks { none, guide };

/// One firing through to the firing cone's end; the forecast is taken after the guide cone's third look, or
/// 30 min before the end.
Outcome fire(const Scenario& s, const OffsetPrior& prior, Looks looks, Random& random) {
    const double exponent = random.uniform(1.15, 1.6);
    TrueCone guide = drawCone("8", exponent, random);
    TrueCone firing = drawCone("9", exponent, random);
    auto forecaster = ConeForecaster::make({{ConeType::selfSupporting, {"8", "9"}, prior}}).value();
    const Instant start{std::chrono::hours(490000)};
    const auto at = [&](double t_s) { return start + durationFromSeconds(t_s); };

    // truth first, second by second
    std::vector<double> true_C{960 + s.offset_C};
    std::vector<double> looks_s;
    double guideDown_s = 0;
    while (firing.work < 1 && true_C.size() < 60 * 3600) {
        const auto t = static_cast<double>(true_C.size());
        double rate = s.rate_C_per_h;
        for (std::size_t i = 0; i < s.factors.size(); ++i)
            if (t > s.slowdowns_s[i].first && t < s.slowdowns_s[i].second)
                rate *= s.factors[i];
        const double next_C = true_C.back() + rate / 3600;
        for (TrueCone* cone : {&guide, &firing}) {
            const double felt_K = (true_C.back() + next_C) / 2 - s.offset_C - cone->deviation_C + 273.15;
            cone->work += std::exp(cone->lnA - cone->theta_K / felt_K);
        }
        true_C.push_back(next_C);
        if (looks_s.size() < 3 && guide.hour() >= static_cast<double>(looks_s.size() + 1))
            looks_s.push_back(t);
        if (guideDown_s == 0 && guide.work >= 1)
            guideDown_s = t;
    }
    const auto down_s = static_cast<double>(true_C.size()) - 1;
    double asked_s = down_s - 1800 * 60 / s.rate_C_per_h;
    if (looks == Looks::guide) {
        if (looks_s.size() < 3)
            return {};
        asked_s = looks_s.back();
    }

    const bool lively = random.uniform(0, 1) < 0.5;
    const double spacing_s = lively ? 10 : 60;
    for (double t = 0; t <= asked_s; t += spacing_s)
        forecaster.add(
            {at(t), Temperature::fromCelsius(true_C[static_cast<std::size_t>(t)] + random.normal(0.7))});
    std::vector<WatchedLook> told;
    if (looks == Looks::guide)
        for (std::size_t i = 0; i < looks_s.size(); ++i) {
            const double read = static_cast<double>(i + 1) + random.normal(0.3);
            told.push_back({0, "8", at(looks_s[i]), std::clamp(std::round(read * 2) / 2, 0.0, 6.0)});
        }
    if (!forecaster.setLooks(told).ok())
        return {};
    const auto forecast = forecaster.forecast().value();
    const auto& nine = forecast.packs[0].cones[1];
    Outcome outcome;
    outcome.foundOffset_C = forecast.packs[0].offsetMean.celsius();
    outcome.foundSd_C = forecast.packs[0].offsetSd.celsius();
    if (!nine.down.median || !nine.down.p05 || !nine.down.p95)
        return outcome;
    const double scale = s.rate_C_per_h / 60;
    outcome.usable = true;
    outcome.error_min = inMinutes(*nine.down.median - at(down_s)) * scale;
    outcome.width_min = inMinutes(*nine.down.p95 - *nine.down.p05) * scale;
    outcome.covered = *nine.down.p05 <= at(down_s) && at(down_s) <= *nine.down.p95;
    outcome.ahead_min = (down_s - asked_s) / 60 * scale;
    return outcome;
}

double quantile(std::vector<double> values, double share) {
    std::ranges::sort(values);
    return values.empty() ? 0
                          : values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
}

void print(const char* name, const std::vector<Outcome>& outcomes, const char* floor) {
    std::vector<double> errors;
    std::vector<double> signedErrors;
    std::vector<double> widths;
    std::vector<double> ahead;
    int covered = 0;
    for (const auto& o : outcomes) {
        if (!o.usable)
            continue;
        errors.push_back(std::abs(o.error_min));
        signedErrors.push_back(o.error_min);
        widths.push_back(o.width_min);
        ahead.push_back(o.ahead_min);
        covered += o.covered;
    }
    std::printf("%-34s %5zu %7.2f %7.2f %7.2f %8.1f %8.1f %8.1f   %s\n", name, errors.size(),
                quantile(errors, 0.5), quantile(errors, 0.9), quantile(signedErrors, 0.5),
                100.0 * covered / static_cast<double>(errors.size()), quantile(widths, 0.5),
                quantile(ahead, 0.5), floor);
}

} // namespace

int main(int argc, char** argv) {
    const int firings = argc > 1 ? std::atoi(argv[1]) : 600;
    const std::uint64_t seed = argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 1;
    const OffsetPrior fresh = newProbePrior(ThermocoupleType::K, Temperature::fromCelsius(1260));
    std::vector<Outcome> newKiln;
    std::vector<Outcome> known;
    std::vector<Outcome> knownNoLooks;
    for (int i = 0; i < firings; ++i) {
        Random random(seed * 1'000'003 + static_cast<std::uint64_t>(i));
        const double kiln_C = random.normal(10);
        newKiln.push_back(fire(drawScenario(kiln_C, random), fresh, Looks::guide, random));
        // five firings of the same kiln, its offset scattering by 2 °C
        std::vector<OffsetFound> history;
        for (int past = 0; past < 5; ++past) {
            const auto prior = priorFromHistory(history, fresh);
            const auto o = fire(drawScenario(kiln_C + random.normal(2), random), prior, Looks::guide, random);
            if (o.foundSd_C > 0)
                history.push_back({TemperatureDifference::fromCelsius(o.foundOffset_C),
                                   TemperatureDifference::fromCelsius(o.foundSd_C)});
        }
        const auto prior = priorFromHistory(history, fresh);
        const auto scenario = drawScenario(kiln_C + random.normal(2), random);
        known.push_back(fire(scenario, prior, Looks::guide, random));
        knownNoLooks.push_back(fire(scenario, prior, Looks::none, random));
    }
    std::printf("Minutes, scaled to 60 °C/h. floor: two cones that deviate on their own by 2 °C, nothing "
                "else unknown.\n");
    std::printf("%-34s %5s %7s %7s %7s %8s %8s %8s   %s\n", "", "n", "median", "9 in 10", "bias", "in 90 %",
                "width", "ahead", "floor");
    print("new kiln, three looks", newKiln, "1.9 and 4.7");
    print("five firings known, three looks", known, "1.9 and 4.7 by the looks alone");
    print("five firings known, no look", knownNoLooks, "1.9 and 4.7 (offset 2 °C, cone 2 °C)");
    return 0;
}
