// Follows plan and forecast of a practice firing and says when there is something new to tell.
#pragma once

#include "core/firing/records.h"
#include "core/kiln/practice_potter.h"
#include "core/watch/firing_forecast.h"
#include "core/watch/step_follower.h"

#include <optional>
#include <string>
#include <vector>

namespace ringhold {

/// A forecast of the firing cone, kept to be held against what came.
struct ToldForecast {
    Instant at;
    TimeInterval down;
};

class ConeWatch {
  public:
    /// badInput for a plan that waits for no cone of the pack.
    static Result<ConeWatch> make(const Plan& plan, Instant begin, const Pack& pack,
                                  const OffsetPrior& prior);

    const std::string& firingCone() const { return m_pack.cones[m_index]; }
    const ConeForecast& firingConeIn(const Forecast& forecast) const;
    /// The plan's step that the kiln is in; the number of steps when all are done.
    std::size_t step() const;

    /// The control probe's next reading.
    void add(const CurvePoint& point);
    Status look(const std::vector<PracticeLook>& looks);

    /// The forecast if it is worth telling: always after a look, otherwise when the firing cone's median has
    /// moved by more than 5 min since it was told, half an hour ago or longer.
    Result<std::optional<Forecast>> news();
    /// All that were told.
    const std::vector<ToldForecast>& told() const { return m_told; }

  private:
    ConeWatch(FiringForecast forecast, StepFollower follower, Pack pack, std::size_t index)
        : m_forecast(std::move(forecast)), m_follower(std::move(follower)), m_pack(std::move(pack)),
          m_index(index) {}
    bool due() const;
    bool moved(const TimeInterval& down) const;

    FiringForecast m_forecast;
    StepFollower m_follower;
    Pack m_pack;
    std::size_t m_index; ///< of the firing cone in the pack
    Curve m_curve;
    std::vector<Look> m_looks;
    std::vector<ToldForecast> m_told;
    std::optional<Instant> m_reckoned;
    bool m_justLooked = false;
};

} // namespace ringhold
