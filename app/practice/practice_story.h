// What a practice firing prints as it goes on, and its judgement at the end.
#pragma once

#include "core/cones/forecast.h"
#include "core/kiln/practice_kiln.h"
#include "core/kiln/practice_potter.h"
#include "core/plan/plan.h"
#include "core/watch/curve_parts.h"

#include <optional>
#include <ostream>
#include <string>
#include <vector>

namespace ringhold {

class ConeWatch;

class PracticeStory {
  public:
    PracticeStory(std::ostream& out, const Plan& plan) : m_out(out), m_plan(plan) {}

    void opening(const std::string& kiln, Instant begin);
    /// Notes when the controller goes on to another step, and says so.
    void step(std::size_t step, Instant at);
    void looks(const std::vector<PracticeLook>& looks);
    void forecast(const Forecast& forecast, const ConeForecast& firingCone);
    void coneDown(const std::string& cone, Instant at);

    void kept(std::size_t readings, Duration length);
    /// The holds and rings of the plan, judged on the curve that the book kept.
    void judge(const Curve& curve);
    /// What was foretold, held against when the cone was truly down.
    void foretold(const ConeWatch& watch, Instant down);
    void offset(const PackForecast& found, TemperatureDifference truth);

  private:
    std::optional<Stretch> spanOf(std::size_t step, const Curve& curve) const;
    void judge(const Hold& hold, const Curve& curve, std::optional<Stretch> span);

    std::ostream& m_out;
    const Plan& m_plan;
    std::vector<Instant> m_stepBegan; ///< of the steps so far
};

} // namespace ringhold
