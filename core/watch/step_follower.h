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

/// Follows one firing through its plan, whoever runs the controller. A climb or drop ends when its
/// temperature is reached, or when the kiln stops near it; a stay when its time is over and the kiln moves
/// on, or when the kiln plainly leaves it for the next step; a cone wait when a look finds the cone down (or
/// the kiln is plainly dropped). A kiln that goes the other way for long is looked for in later steps. At
/// each real end the rest of the plan is timed anew from there. Rings read less than every 4 min are followed
/// by the clock. One thread at a time.
class StepFollower {
  public:
    /// The plan must pass check(); the context's `soFar` is not used.
    StepFollower(Plan plan, PlanContext context);

    /// Follows from the start again: after looks were added or struck, or the potter said which step it is
    /// in. `curve` is the control probe's.
    void restart(const Curve& curve, std::vector<Look> looks, std::vector<StepCorrection> corrections = {});
    /// The next reading of the same curve.
    void add(const CurvePoint& point);
    /// Obeys corrections and cone-down looks up to that instant, which may lie after the last reading.
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
    void waitForTheStart(const CurvePoint& point);
    std::optional<CurvePoint> legEnd(const PlannedLeg& leg, const CurvePoint& point);
    std::optional<CurvePoint> stayEnd(const PlannedLeg& leg, const CurvePoint& point);
    bool arrived(const PlannedLeg& leg, const CurvePoint& point) const;
    bool stoppedNear(const PlannedLeg& leg, const CurvePoint& point) const;
    bool coneWaitEnded(const ConeWait& wait, const CurvePoint& point) const;
    void findAgain(const CurvePoint& point);
    void nextLeg(const CurvePoint& point);
    void leavePlanned(Instant at);
    void shift(Instant newEnd);
    void planFrom(std::size_t step, const CurvePoint& point);
    const PlannedLeg& leg() const { return m_ahead.legs[m_leg]; }
    Duration overdue() const;

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
    std::optional<Temperature> m_hottestInStep;
    std::optional<double> m_level_C;       ///< of the stay under way
    std::optional<CurvePoint> m_awaySince; ///< the kiln may have left a stay early
    std::optional<Instant> m_oddSince;     ///< it goes the other way than its leg
    bool m_started = false;
    bool m_resting = true; ///< the kiln has not begun to heat
};

} // namespace ringhold
