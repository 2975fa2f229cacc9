#include "core/plan/plan_energy.h"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace ringhold {

namespace {

constexpr Duration tick = std::chrono::seconds(1);
constexpr Duration traceSampling = std::chrono::minutes(1);
constexpr double followed_C = 2.0;

/// The model kiln under an ideal controller.
class EnergyRun {
  public:
    EnergyRun(const PlannedCurve& planned, const PlanContext& context)
        : m_planned(planned), m_constants(context.kiln.constants), m_kiln(planned.begin) {
        m_result.basis = context.kiln.basis;
        m_result.line = context.line.value_or(m_constants.ratedVolts);
        m_full = m_constants.powerAt(m_result.line);
        m_result.trace.push_back({planned.start(), m_kiln});
    }

    PlanEnergy run() && {
        for (const auto& step : m_planned.steps)
            follow(step);
        if (m_result.trace.back().at < m_planned.end())
            m_result.trace.push_back({m_planned.end(), m_kiln});
        return std::move(m_result);
    }

  private:
    void follow(const PlannedStep& step) {
        StepEnergy used{step.step, {}, 0};
        for (Instant now = step.start; now < step.end;) {
            const Duration dt = std::min(tick, step.end - now);
            const Power power = powerTowards(m_planned.temperatureAt(now + dt), dt);
            m_kiln = advanced(m_constants, m_kiln, power, dt);
            now += dt;
            used.energy = used.energy + Energy{power.watts * inSeconds(dt)};
            used.peakShare = std::max(used.peakShare, m_full.watts > 0 ? power.watts / m_full.watts : 0.0);
            note(step.step, now, dt);
        }
        m_result.total = m_result.total + used.energy;
        m_result.peakShare = std::max(m_result.peakShare, used.peakShare);
        m_result.steps.push_back(used);
    }

    /// The power that brings the chamber to `target` in `dt`, as far as the kiln has it.
    Power powerTowards(Temperature target, Duration dt) const {
        const KilnState unpowered = advanced(m_constants, m_kiln, Power{}, dt);
        const double missing_C = (target - unpowered.chamber).celsius();
        return {std::clamp(missing_C * m_constants.chamber_J_per_K / inSeconds(dt), 0.0, m_full.watts)};
    }

    void note(std::size_t step, Instant now, Duration dt) {
        if (now - m_result.trace.back().at >= traceSampling)
            m_result.trace.push_back({now, m_kiln});
        const auto off = m_kiln.chamber - m_planned.temperatureAt(now);
        if (std::abs(off.celsius()) <= followed_C)
            return;
        auto& all = m_result.cannotFollow;
        const bool goesOn = !all.empty() && all.back().step == step && all.back().end == now - dt &&
                            (all.back().worst.celsius() < 0) == (off.celsius() < 0);
        if (!goesOn)
            all.push_back({step, now - dt, now, off});
        all.back().end = now;
        if (std::abs(off.celsius()) > std::abs(all.back().worst.celsius()))
            all.back().worst = off;
    }

    const PlannedCurve& m_planned;
    const KilnConstants& m_constants;
    KilnState m_kiln;
    Power m_full;
    PlanEnergy m_result;
};

} // namespace

PlanEnergy planEnergy(const PlannedCurve& planned, const PlanContext& context) {
    return EnergyRun(planned, context).run();
}

} // namespace ringhold
