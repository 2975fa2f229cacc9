// The cone forecast of a live firing: packs, looks and offsets of the book, future by the plan.
#pragma once

#include "core/cones/forecast.h"
#include "core/firing/records.h"
#include "core/watch/planned_future.h"

#include <optional>
#include <vector>

namespace ringhold {

/// What is believed of the offset at a place before this firing, from what earlier firings of the kiln with
/// this probe at that place have filed; without any, from the thermocouple's type. `filed` may hold other
/// kilns' and probes' offsets too.
OffsetPrior offsetPriorFor(const Probe* probe, const std::string& place,
                           const std::vector<FiledOffset>& filed);

/// Keeps a ConeForecaster in step with a firing. One thread at a time.
class FiringForecast {
  public:
    /// One prior a pack. badInput for an unknown cone.
    static Result<FiringForecast> make(const std::vector<Pack>& packs,
                                       const std::vector<OffsetPrior>& priors);

    /// Reckons again from that instant, after readings were struck or added there, with the looks that count.
    Status restart(const Curve& curve, Instant from, const std::vector<Look>& looks);
    void add(const CurvePoint& point) { m_forecaster.add(point); }

    const std::vector<Pack>& packs() const { return m_packs; }
    const Curve& curve() const { return m_forecaster.curve(); }
    std::optional<ClimbShown> climbShown() const { return m_forecaster.climbShown(); }
    /// For advice (core/cones/advice.h) on packs in the order of packs().
    const ConeForecaster& forecaster() const { return m_forecaster; }
    /// What the forecast takes the temperature to do; nothing before there are two readings.
    std::optional<FutureTemperature> future(const StepFollower* follower) const;
    /// Packs in the order of packs(). Without a follower the climb goes on as shown.
    Result<Forecast> forecast(const StepFollower* follower) const;
    /// What the forecast would be with these looks more; they come after the others in wrongLook's order.
    Result<Forecast> forecastWith(const std::vector<Look>& looks, const StepFollower* follower) const;
    /// What it would be if these were all the looks.
    Result<Forecast> forecastBy(const std::vector<Look>& looks, const StepFollower* follower) const;
    /// With a given future, whose curves begin at the last reading.
    Result<Forecast> forecastOn(const FutureTemperature& future) const {
        return m_forecaster.forecast(future);
    }
    /// What would be told at the end of `ahead`, if the readings went on along it.
    Result<Forecast> forecastAfter(const Curve& ahead) const;
    /// For a plan: when the cone would be down on a curve in the probe's degrees, by the first pack's offset
    /// as it is believed now.
    std::optional<Instant> coneDownOn(const Curve& whole, const std::string& cone) const;

  private:
    FiringForecast(std::vector<Pack> packs, ConeForecaster forecaster)
        : m_packs(std::move(packs)), m_forecaster(std::move(forecaster)) {}
    std::vector<WatchedLook> watched(const std::vector<Look>& looks) const;

    std::vector<Pack> m_packs;
    ConeForecaster m_forecaster;
    std::vector<Look> m_looks;
};

} // namespace ringhold
