// When will the cones be down, and how sure is that?
#pragma once

#include "core/cones/future_temperature.h"
#include "core/cones/heat_work_grid.h"
#include "core/cones/interval.h"
#include "core/cones/offset_posterior.h"

#include <optional>
#include <string>
#include <vector>

namespace ringhold {

struct ConeForecast {
    std::string cone;
    double work = 0;            ///< W of the probe's own curve, uncorrected
    double hour = 0;            ///< where the tip would point by that, 0 to 6
    Interval<double> hourNow{}; ///< where the model thinks it points, the offset inferred
    TimeInterval down;
    TimeInterval atHour[3];     ///< at 1, 3 and 5 o'clock
    double probabilityDown = 0; ///< by now
    bool isDown = false; ///< surely down already: its newest look says so, or the probability is 95 % or
                         ///< more and no look contradicts
    bool contradicted = false; ///< its newest look found it not yet down, when by the model or an earlier
                               ///< look it was: one of them is wrong
};

struct PackForecast {
    Interval<TemperatureDifference> offset; ///< probe minus what the cones feel
    TemperatureDifference offsetMean;
    TemperatureDifference offsetSd;
    std::vector<ConeForecast> cones;
    std::vector<double>
        wrongLook; ///< by look, in the order they were given: the probability that it is wrong
};

struct Forecast {
    Instant asOf; ///< of the last reading
    std::vector<PackForecast> packs;
    std::optional<Interval<Temperature>> levelsOff = std::nullopt; ///< of the future that was forecast with
};

/// A pack as the forecaster takes it.
struct WatchedPack {
    ConeType type = ConeType::selfSupporting;
    std::vector<std::string> cones;
    OffsetPrior prior;
};

/// A look at one of its cones.
struct WatchedLook {
    std::size_t pack = 0;
    std::string cone;
    Instant at;
    double hour = 0;   ///< 0 standing, halves, 6 down
    bool cold = false; ///< from the pack when it had cooled: its instant does not matter
};

class DownTimes;

/// Follows one firing: readings in, forecast out. Readings cost a few exponentials each; looks a few
/// milliseconds, a forecast of nine cones some tens. One thread at a time.
class ConeForecaster {
  public:
    /// badInput for an unknown cone, or a pack without one.
    static Result<ConeForecaster> make(std::vector<WatchedPack> packs, InferenceSettings settings = {});

    /// The next reading; one that is not later than the last is left out.
    void add(const CurvePoint& point);
    /// Corrects the curve from that instant on: everything at or after it is forgotten and to be added again.
    void forgetFrom(Instant at);
    /// All looks that count, in any order (struck-out ones left out). A look may lie up to 20 min after the
    /// last reading, and is then judged along the climb shown; a cold one any time, it tells how the cone
    /// ended (where the readings do not go on to the cold they are taken to fall by 300 °C/h). badInput names
    /// a cone that is in no pack, an hour that is not 0 to 6 in halves, or a look before the first reading or
    /// too far beyond the last.
    Status setLooks(std::vector<WatchedLook> looks);

    const Curve& curve() const { return m_curve; }
    const std::vector<WatchedPack>& packs() const { return m_packs; }
    const HeatWorkGrid& grid() const { return m_grid; }
    /// Which of the grid's cones stands at that place of that pack.
    std::size_t gridCone(std::size_t pack, std::size_t cone) const { return m_evidence[pack].cones[cone]; }
    /// By the looks so far; inferred when first asked for, and anew after a gap in the readings and each ten
    /// minutes of them, as gaps count for less the more heat work follows.
    const OffsetPosterior& posterior() const;
    /// The present climb; nothing before there are two readings.
    std::optional<ClimbShown> climbShown() const { return climbShownSinceChange(m_curve); }

    /// The climb going on as shown, or recovering from a sag; nothing before there are two readings.
    std::optional<FutureTemperature> usualFuture() const;
    /// With that future.
    Result<Forecast> forecast() const;
    /// With a given future, whose curves begin at the last reading.
    Result<Forecast> forecast(const FutureTemperature& future) const;

  private:
    ConeForecaster(std::vector<WatchedPack> packs, InferenceSettings settings, HeatWorkGrid grid,
                   std::vector<PackEvidence> evidence);
    void judgeLooks();
    /// Of a cone of the grid, in all packs where it stands.
    GridDistribution beliefOf(std::size_t gridCone) const;
    std::vector<double> lnWorkAt(std::size_t cone, Instant at) const;
    std::vector<double> lnWorkWhenCold(std::size_t cone) const;
    void tellIfDown(std::size_t pack, const DownTimes& down, ConeForecast& told) const;

    std::vector<WatchedPack> m_packs;
    InferenceSettings m_settings;
    HeatWorkGrid m_grid;
    std::vector<PackEvidence> m_evidence;
    std::vector<WatchedLook> m_looks;
    Curve m_curve;
    mutable std::optional<OffsetPosterior> m_posterior; ///< of the present looks and gaps
    Instant m_gapsHeeded;                               ///< when the last reading was that it may lack
};

/// The hours that a look may tell: 0, 0.5 ... 6.
bool isTellableHour(double hour);

} // namespace ringhold
