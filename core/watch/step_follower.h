// Which step of its plan the kiln is in, from the readings and the looks, whoever runs its controller.
#pragma once

#include "core/firing/alarm_event.h"
#include "core/firing/records.h"
#include "core/plan/planned_curve.h"

#include <optional>
#include <vector>

namespace ringhold {

/// Where the firing is in its plan.
struct StepPosition {
    std::size_t step = 0;    ///< index in Plan::steps
    std::optional<int> ring; ///< within rings: which one, from 1
    Motion motion = Motion::level;
    Instant since;                     ///< when this leg really began
    Instant expectedEnd;               ///< of this leg, as planned from then
    std::optional<Temperature> target; ///< where this leg goes, or stays
    std::optional<Temperature> from;   ///< where it came from, as planned
    std::optional<Rate> rate; ///< that the plan gives this leg, signed; nothing at the kiln's own pace
};

/// Follows one firing through its plan. A climb ends when its temperature is reached, a hold after its time
/// or when the kiln plainly leaves it for the next step, a cone wait when a look finds the cone down (or the
/// kiln is plainly dropped). At each real end the rest of the plan is timed anew from there. One thread at a
/// time.
class StepFollower {
  public:
    /// The plan must pass check(); the context's `soFar` is not used.
    StepFollower(Plan plan, PlanContext context);

    /// Follows from the start again: after looks were added or struck, or the potter said which step it is
    /// in. `curve` is the control probe's.
    void restart(const Curve& curve, std::vector<Look> looks, std::vector<StepCorrection> corrections = {});
    /// The next reading of the same curve.
    void add(const CurvePoint& point);
    /// Obeys corrections up to that instant, which may lie after the last reading.
    void passTime(Instant now);

    const Plan& plan() const { return m_plan; }
    /// Nothing before the first reading and after the last step.
    std::optional<StepPosition> position() const;
    bool finished() const { return m_started && m_leg >= m_ahead.legs.size(); }
    /// The plan as it is to be drawn: steps gone where they really began, the present one and the rest as
    /// planned from there.
    Curve drawn() const;
    /// From the present step on.
    const PlannedCurve& ahead() const { return m_ahead; }
    /// What the plan wants at that instant.
    Temperature plannedAt(Instant at) const;

  private:
    void advance(const CurvePoint& point);
    void obey(Instant now, const CurvePoint& point);
    bool legEnded(const PlannedLeg& leg, const CurvePoint& point) const;
    bool coneWaitEnded(const ConeWait& wait, const CurvePoint& point) const;
    void nextLeg(const CurvePoint& point);
    void planFrom(std::size_t step, const CurvePoint& point);
    const PlannedLeg& leg() const { return m_ahead.legs[m_leg]; }

    Plan m_plan;
    PlanContext m_context;
    std::vector<Look> m_looks;
    std::vector<StepCorrection> m_corrections; ///< in time order, struck ones left out
    std::size_t m_obeyed = 0;                  ///< of them
    Curve m_real;
    PlannedCurve m_ahead;  ///< from the present step on
    Curve m_gone;          ///< planned course of the steps gone
    std::size_t m_leg = 0; ///< in m_ahead
    Instant m_legSince;
    Instant m_stepSince;
    Duration m_late{0}; ///< by how much the present leg runs behind m_ahead
    std::optional<Temperature> m_hottestInStep;
    bool m_started = false;
};

} // namespace ringhold
