#include "core/learn/rehearsal.h"

#include "core/cones/cone_table.h"
#include "core/kiln/chance.h"
#include "core/learn/kiln_run.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace ringhold {

namespace {

constexpr double tick_s = 20;
constexpr double never = std::numeric_limits<double>::infinity();
constexpr double there_C = 0.5;
constexpr double stallWindow_s = 1800;
constexpr double stallGain_C = 2;
constexpr double longestStep_s = 48 * 3600;
constexpr double longestArrival_s = 150;
constexpr std::size_t ticksPerPoint = 15; ///< five minutes

struct RunOfStep {
    double end_h = never;
    double behind_C = 0;
    double energy_kWh = 0;
    bool stalled = false;
};

/// One draw of the kiln through the plan.
class RehearsalRun {
  public:
    RehearsalRun(const KilnConstants& kiln, const RehearsalSettings& settings, double offset_C,
                 double arrival_s)
        : m_kiln(kiln, settings.start.celsius(), settings.start.celsius()),
          m_full_W(m_kiln.full_W(settings.line.volts)), m_offset_C(offset_C), m_arrival_s(arrival_s) {
        m_curve_C.push_back(m_kiln.chamber_C());
    }

    RunOfStep run(const Step& step) {
        m_step = {};
        if (!m_stalled)
            std::visit(*this, step);
        if (!m_stalled)
            m_step.end_h = m_seconds / 3600;
        return m_step;
    }

    bool stalled() const { return m_stalled; }
    double hours() const { return m_seconds / 3600; }
    const std::vector<double>& curve_C() const { return m_curve_C; }

    void operator()(const Climb& climb) {
        if (climb.to.celsius() > m_kiln.chamber_C())
            go(climb.to.celsius(), climb.rate.celsiusPerHour());
    }
    void operator()(const Hold& hold) {
        go(hold.at.celsius(), {});
        stay(hold.at.celsius(), inSeconds(hold.length));
    }
    void operator()(const Drop& drop) { fall(drop.to, drop.rate); }
    void operator()(const Cool& cool) { fall(cool.to, cool.rate); }
    void operator()(const Rings& rings) {
        for (int i = 0; i < rings.count && !m_stalled; ++i) {
            go(rings.low.celsius(), {});
            stay(rings.low.celsius(), inSeconds(rings.lowDwell));
            go(rings.high.celsius(), {});
            stay(rings.high.celsius(), inSeconds(rings.highDwell));
        }
    }
    void operator()(const ConeWait& wait) {
        const Cone* cone = ConeTable::builtIn().find(wait.cone);
        m_work = 0;
        double set_C = m_kiln.chamber_C();
        double soaked_s = 0;
        beginWatch();
        while (cone && m_work < 1 && !m_stalled) {
            set_C = std::min(set_C + wait.rate.celsiusPerHour() / 3600 * tick_s, wait.set.celsius());
            const double before_K = felt_K();
            drive(set_C);
            m_work += cone->law.gained(before_K, felt_K(), tick_s);
            const bool soaks = m_kiln.chamber_C() >= wait.set.celsius() - there_C;
            soaked_s += soaks ? tick_s : 0;
            fallBehind(set_C - m_kiln.chamber_C());
            m_stalled = soaked_s > inSeconds(wait.longestSoak) || (!soaks && makesNoHeadway());
        }
        m_step.stalled = m_stalled;
    }

  private:
    double felt_K() const { return m_kiln.chamber_C() - m_offset_C + Temperature::zeroCelsius_K; }

    void drive(double set_C) {
        m_lastPower_W = std::clamp(m_kiln.powerTowards_W(set_C, tick_s), 0.0, m_full_W);
        m_kiln.step(m_lastPower_W, tick_s);
        m_seconds += tick_s;
        m_step.energy_kWh += m_lastPower_W * tick_s / 3.6e6;
        if (++m_ticks % ticksPerPoint == 0)
            m_curve_C.push_back(m_kiln.chamber_C());
    }

    void fall(Temperature to, const std::optional<Rate>& rate) {
        if (to.celsius() < m_kiln.chamber_C())
            go(to.celsius(), rate ? std::optional(rate->celsiusPerHour()) : std::nullopt);
    }

    /// To a temperature at a rate, or at full power or none.
    void go(double to_C, std::optional<double> rate_C_per_h) {
        const double sign = to_C > m_kiln.chamber_C() ? 1 : -1;
        double set_C = rate_C_per_h ? m_kiln.chamber_C() : to_C;
        beginWatch();
        while (!m_stalled && sign * (to_C - m_kiln.chamber_C()) > there_C) {
            if (rate_C_per_h) {
                const double next = set_C + sign * *rate_C_per_h / 3600 * tick_s;
                set_C = sign > 0 ? std::min(next, to_C) : std::max(next, to_C);
                fallBehind(sign * (set_C - m_kiln.chamber_C()));
            }
            drive(set_C);
            m_stalled = (sign > 0 && makesNoHeadway()) || m_seconds - m_began_s > longestStep_s;
        }
        m_step.stalled = m_stalled;
        stay(to_C, m_arrival_s);
    }

    void stay(double at_C, double seconds) {
        for (double left = seconds; left > 0 && !m_stalled; left -= tick_s)
            drive(at_C);
    }

    void fallBehind(double by_C) { m_step.behind_C = std::max(m_step.behind_C, by_C); }

    void beginWatch() {
        m_began_s = m_watched_s = m_seconds;
        m_watched_C = m_kiln.chamber_C();
    }

    /// At full power, and yet hardly hotter than half an hour ago.
    bool makesNoHeadway() {
        if (m_lastPower_W < m_full_W) {
            m_watched_s = m_seconds;
            m_watched_C = m_kiln.chamber_C();
        }
        if (m_seconds - m_watched_s < stallWindow_s)
            return false;
        const double gained_C = m_kiln.chamber_C() - m_watched_C;
        m_watched_s = m_seconds;
        m_watched_C = m_kiln.chamber_C();
        return gained_C < stallGain_C;
    }

    KilnRun m_kiln;
    double m_full_W;
    double m_offset_C;
    double m_arrival_s; ///< that a controller needs to see that it is there
    double m_work = 0;  ///< of the cone waited for; it begins with the wait, before which little is gained
    double m_seconds = 0;
    double m_lastPower_W = 0;
    std::size_t m_ticks = 0;
    bool m_stalled = false;
    double m_began_s = 0;
    double m_watched_s = 0;
    double m_watched_C = 0;
    RunOfStep m_step;
    std::vector<double> m_curve_C;
};

double quantile(const std::vector<double>& sorted, double share) {
    const double at = share * static_cast<double>(sorted.size() - 1);
    return sorted[static_cast<std::size_t>(at + 0.5)];
}

RehearsedRange rangeOf(std::vector<double> values) {
    std::ranges::sort(values);
    const auto at = [&](double share) {
        const double value = quantile(values, share);
        return std::isfinite(value) ? std::optional(value) : std::nullopt;
    };
    return {at(0.05), at(0.5), at(0.95)};
}

std::vector<RehearsedPoint> bandOf(const std::vector<std::vector<double>>& curves) {
    std::vector<RehearsedPoint> band;
    for (std::size_t i = 0;; ++i) {
        std::vector<double> values;
        for (const auto& curve : curves)
            if (i < curve.size())
                values.push_back(curve[i]);
        if (values.size() * 2 < curves.size() || values.empty())
            return band;
        std::ranges::sort(values);
        band.push_back({static_cast<double>(i * ticksPerPoint) * tick_s / 3600, quantile(values, 0.05),
                        quantile(values, 0.5), quantile(values, 0.95)});
    }
}

} // namespace

Rehearsal rehearse(const Plan& plan, const KilnFit& kiln, const RehearsalSettings& settings) {
    Rehearsal rehearsal;
    std::vector<std::vector<RunOfStep>> byStep(plan.steps.size());
    std::vector<std::vector<double>> curves;
    std::vector<double> lengths, energies;
    Chance chance(1);
    for (KilnConstants constants : kiln.draws) {
        constants = kiln.loaded(constants, settings.load_kg);
        constants.surroundings = settings.surroundings;
        RehearsalRun run(constants, settings, settings.offset_C + settings.offsetSd_C * chance.normal(),
                         longestArrival_s * chance.uniform());
        double energy = 0;
        for (std::size_t i = 0; i < plan.steps.size(); ++i) {
            byStep[i].push_back(run.run(plan.steps[i]));
            energy += byStep[i].back().energy_kWh;
        }
        lengths.push_back(run.stalled() ? never : run.hours());
        energies.push_back(run.stalled() ? never : energy);
        rehearsal.stalledShare += run.stalled() ? 1.0 / static_cast<double>(kiln.draws.size()) : 0;
        curves.push_back(run.curve_C());
    }
    if (curves.empty())
        return rehearsal;
    for (std::size_t i = 0; i < byStep.size(); ++i) {
        RehearsedStep step{.step = i, .end_h = {}, .behind_C = {}, .energy_kWh = {}};
        std::vector<double> ends, behind, used;
        for (const auto& run : byStep[i]) {
            ends.push_back(run.end_h);
            behind.push_back(run.behind_C);
            used.push_back(std::isfinite(run.end_h) ? run.energy_kWh : never);
            step.stalledShare += run.stalled ? 1.0 / static_cast<double>(byStep[i].size()) : 0;
        }
        step.end_h = rangeOf(ends);
        step.behind_C = rangeOf(behind);
        step.energy_kWh = rangeOf(used);
        rehearsal.steps.push_back(step);
    }
    rehearsal.band = bandOf(curves);
    rehearsal.energy_kWh = rangeOf(energies);
    rehearsal.length_h = rangeOf(lengths);
    return rehearsal;
}

} // namespace ringhold
