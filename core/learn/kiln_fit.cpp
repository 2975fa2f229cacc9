#include "core/learn/kiln_fit.h"

#include "core/learn/kiln_run.h"
#include "core/learn/nonlinear_fit.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace ringhold {

namespace {

constexpr double step_s = 20;
constexpr std::size_t stepsPerSample = 30; ///< ten minutes
constexpr double probeLag_s = 45;
constexpr double longest_s = 24 * 3600;
constexpr Duration mostMissing = std::chrono::minutes(15);
constexpr double ware_J_per_kgK = 1050;
constexpr double cold_C = 60; ///< below it the kiln has stood long enough for its brick to be as warm
constexpr int drawCount = 60;

enum Parameter : std::size_t { chamber, brick, between, brickLoss, chamberLoss, area, power, common };
constexpr std::array<double, common> priorSd{0.35, 0.35, 0.35, 0.35, 0.5, 0.6, 0};

double powerSd(PowerBasis basis) {
    return basis == PowerBasis::voltsAndAmps ? 0.02 : 0.1;
}

/// One firing made ready: power of each step, temperature of each sample.
struct Prepared {
    std::vector<double> watts;
    std::vector<double> read_C;
    double moreLoad_kg = 0; ///< than the mean
    Temperature surroundings = Temperature::fromCelsius(22);
};

/// Mean power of each step from the points, which hold until the next.
std::vector<double> stepPower(const PowerTrace& trace, Instant start, std::size_t count) {
    std::vector<double> joules(count, 0.0);
    for (std::size_t i = 0; i + 1 < trace.size(); ++i) {
        const double from = std::max(0.0, inSeconds(trace[i].at - start));
        const double to = std::min(inSeconds(trace[i + 1].at - start), static_cast<double>(count) * step_s);
        for (double at = from; at < to;) {
            const auto step = static_cast<std::size_t>(at / step_s);
            const double end = std::min(to, static_cast<double>(step + 1) * step_s);
            if (step >= count || end <= at)
                break;
            joules[step] += trace[i].power.watts * (end - at);
            at = end;
        }
    }
    for (double& value : joules)
        value /= step_s;
    return joules;
}

bool usable(const KilnHistory& firing) {
    return firing.control.size() > 2 && firing.power.size() > 2 &&
           firing.control.back().at - firing.control.front().at > std::chrono::hours(1) &&
           missingIn(firing.power) <= mostMissing;
}

Prepared prepared(const KilnHistory& firing, double meanLoad_kg) {
    const Instant start = std::max(firing.control.front().at, firing.power.front().at);
    const Instant end = std::min(firing.control.back().at, firing.power.back().at);
    const double seconds = std::clamp(inSeconds(end - start), 0.0, longest_s);
    const auto samples = static_cast<std::size_t>(seconds / (step_s * stepsPerSample)) + 1;
    Prepared ready;
    ready.watts = stepPower(firing.power, start, (samples - 1) * stepsPerSample);
    for (std::size_t i = 0; i < samples; ++i)
        ready.read_C.push_back(
            temperatureAt(firing.control,
                          start + durationFromSeconds(static_cast<double>(i * stepsPerSample) * step_s))
                .celsius());
    ready.moreLoad_kg = firing.load_kg.value_or(meanLoad_kg) - meanLoad_kg;
    ready.surroundings = firing.surroundings;
    return ready;
}

class KilnModelFit {
  public:
    KilnModelFit(std::span<const KilnHistory> firings, const KilnConstants& start) : m_start(start) {
        int loads = 0;
        for (const auto& firing : firings)
            if (usable(firing)) {
                meanLoad_kg += firing.load_kg.value_or(0);
                loads += firing.load_kg.has_value();
                m_powerSd = std::max(m_powerSd, powerSd(firing.basis));
            }
        meanLoad_kg = loads > 0 ? meanLoad_kg / loads : 0;
        for (const auto& firing : firings)
            if (usable(firing))
                m_firings.push_back(prepared(firing, meanLoad_kg));
    }

    std::size_t firings() const { return m_firings.size(); }
    std::size_t count() const { return common + m_firings.size(); }

    KilnConstants constants(std::span<const double> p) const {
        const auto factor = [&](Parameter i) {
            return std::exp((i == power ? m_powerSd : priorSd[i]) * p[i]);
        };
        KilnConstants kiln = m_start;
        kiln.chamber_J_per_K *= factor(chamber);
        kiln.brick_J_per_K *= factor(brick);
        kiln.chamberToBrick_W_per_K *= factor(between);
        kiln.brickLoss_W_per_K *= factor(brickLoss);
        kiln.chamberLoss_W_per_K *= factor(chamberLoss);
        kiln.radiatingArea_m2 *= factor(area);
        kiln.fullPower.watts *= factor(power);
        return kiln;
    }

    std::vector<double> residuals(std::span<const double> p, double sd_C) const {
        std::vector<double> all(p.begin(), p.end()); // the priors
        for (std::size_t f = 0; f < m_firings.size(); ++f)
            for (const double off : deviations(f, p))
                all.push_back(off / sd_C);
        return all;
    }

    /// Read minus model, sample by sample but the first.
    std::vector<double> deviations(std::size_t f, std::span<const double> p) const {
        const Prepared& firing = m_firings[f];
        KilnConstants kiln = constants(p);
        kiln.surroundings = firing.surroundings;
        kiln.chamber_J_per_K =
            std::max(kiln.chamber_J_per_K / 2, kiln.chamber_J_per_K + ware_J_per_kgK * firing.moreLoad_kg);
        const double factor = kiln.fullPower.watts / m_start.fullPower.watts;
        const double first_C = firing.read_C.front();
        const double brickSd_C = first_C < cold_C ? 5 : 100;
        KilnRun run(kiln, first_C, first_C + brickSd_C * p[common + f]);
        double probe_C = first_C;
        std::vector<double> off;
        for (std::size_t i = 0; i < firing.watts.size(); ++i) {
            const double before = run.chamber_C();
            run.step(firing.watts[i] * factor, step_s);
            probe_C += (0.5 * (before + run.chamber_C()) - probe_C) * -std::expm1(-step_s / probeLag_s);
            if ((i + 1) % stepsPerSample == 0)
                off.push_back(firing.read_C[(i + 1) / stepsPerSample] - probe_C);
        }
        return off;
    }

    double meanLoad_kg = 0;

  private:
    KilnConstants m_start;
    std::vector<Prepared> m_firings;
    double m_powerSd = 0.02;
};

struct Scatter {
    double sd_C = 0;
    double likeness = 0; ///< from one sample to the next
};

Scatter scatterOf(const KilnModelFit& model, std::span<const double> p) {
    double squares = 0, products = 0;
    std::size_t count = 0;
    for (std::size_t f = 0; f < model.firings(); ++f) {
        const auto off = model.deviations(f, p);
        for (std::size_t i = 0; i < off.size(); ++i) {
            squares += off[i] * off[i];
            products += i > 0 ? off[i] * off[i - 1] : 0;
            ++count;
        }
    }
    if (count == 0 || squares <= 0)
        return {};
    return {std::sqrt(squares / static_cast<double>(count)), std::clamp(products / squares, 0.0, 0.95)};
}

} // namespace

KilnConstants KilnFit::loaded(const KilnConstants& constants, std::optional<double> today_kg) const {
    KilnConstants kiln = constants;
    if (today_kg && load_kg > 0)
        kiln.chamber_J_per_K =
            std::max(kiln.chamber_J_per_K / 2, kiln.chamber_J_per_K + ware_J_per_kgK * (*today_kg - load_kg));
    return kiln;
}

Result<KilnFit> fitKiln(std::span<const KilnHistory> firings, const KilnConstants& start) {
    const KilnModelFit model(firings, start);
    if (model.firings() == 0)
        return Error{ErrorKind::badInput, "no firing has its power and its curve whole"};
    std::vector<double> at(model.count());
    double sd_C = 7;
    Scatter scatter;
    std::optional<NonlinearFit> last;
    for (int round = 0; round < 3; ++round) {
        auto fit =
            fitNonlinear([&](std::span<const double> p) { return model.residuals(p, sd_C); }, at, 1e-3, 15);
        if (!fit)
            return fit.error();
        at = fit->parameters;
        last = std::move(*fit);
        scatter = scatterOf(model, at);
        constexpr double least_C = 0.5;
        sd_C = std::max(least_C, scatter.sd_C) * std::sqrt((1 + scatter.likeness) / (1 - scatter.likeness));
    }
    KilnFit fit{model.constants(at), {}, model.meanLoad_kg, static_cast<int>(model.firings()), scatter.sd_C};
    for (const auto& draw : last->draws(drawCount))
        fit.draws.push_back(model.constants(draw));
    return fit;
}

} // namespace ringhold
