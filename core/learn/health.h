// How kiln and probe wear, told from one firing to the next.
#pragma once

#include "core/cones/offset_prior.h"
#include "core/learn/firing_energy.h"
#include "core/learn/learning.h"
#include "core/learn/power_trace.h"
#include "core/units/curve.h"

#include <optional>
#include <span>
#include <vector>

namespace ringhold {

/// The climb over 1000 to 1200 °C.
struct FixedClimb {
    double minutes = 0;
    std::optional<Volts> line; ///< mean of the climb
    /// Whether the kiln gave all it had for at least four fifths of it: only then do minutes tell of its
    /// elements. Nothing when its power was not read.
    std::optional<bool> atFullPower;
};

/// The last time that the curve went all the way; nothing when it never did.
std::optional<FixedClimb> fixedClimbOf(const Curve& control, const PowerTrace& power);

/// The elements' resistance in ohm, as one, from readings of volts and amps at full power; nothing without
/// them.
std::optional<Estimate> resistanceOf(const PowerTrace& power);

/// How long a probe was above 1200 °C, where it ages.
double hoursAbove1200(const Curve& curve);

/// What one firing tells of health.
struct FiringHealth {
    Instant at;
    std::optional<FixedClimb> climb;
    std::optional<Estimate> resistance_ohm;
    std::optional<KnownEnergy> energy{}; ///< that the firing took
    std::optional<OffsetFound> offset;   ///< of the probe, at the cones
    double hoursAbove1200 = 0;
};

/// `power` may be empty. The energy is the caller's to fill in: a meter's stands are not in the power.
FiringHealth healthOf(const Curve& control, const PowerTrace& power,
                      const std::optional<OffsetFound>& offset);

enum class TrendWord {
    notEnough, ///< not enough firings yet to say
    steady,    ///< whatever change there may be is small
    rising,
    falling,
};

/// A straight line through one figure, firing by firing.
struct HealthTrend {
    TrendWord word = TrendWord::notEnough;
    int firings = 0;    ///< that it rests on
    int firingsAgo = 0; ///< what the change is reckoned from: ten firings, or as many as there are
    Estimate now{};     ///< the line at the last firing; of fewer than three firings the last value
    std::optional<double> change{}; ///< since then, in the figure's unit
    std::optional<Bounds> change90{};
    /// As a share of what it was then, in percent: "took 14 % longer than ten firings ago".
    std::optional<double> changePercent{};
};

struct HealthPoint {
    double value = 0;
    double sd = 0; ///< 0 when not known: then all count alike
};

/// The points in the order of the firings. It says more than notEnough from five firings on: steady if the 90
/// % interval of the change lies within +-small, else rising or falling if it leaves out 0.
HealthTrend healthTrend(std::span<const HealthPoint> points, double small);

/// By how much the resistance has risen since the elements were new: warned at 6 %, advised to replace at 10
/// (trade limits run from 5 to 18 %; common practice).
enum class ElementState { notEnough, sound, worn, replace };

struct KilnHealth {
    HealthTrend climb_min;
    bool sameVolts = false; ///< all climbs counted had volts read, within 2 % of the last one's
    int leftOut = 0;        ///< climbs at other volts, or not at full power
    HealthTrend resistance_ohm;
    std::optional<double> rise_percent; ///< of the resistance along its line, since the first firing counted
    ElementState elements = ElementState::notEnough;
    HealthTrend energy_kWh;                   ///< of the firings whose energy is known by the newest's source
    std::optional<EnergySource> energySource; ///< of those
};

/// Firings in order of time; with elements changed, only those since then.
KilnHealth kilnHealth(std::span<const FiringHealth> firings, std::optional<Instant> elementsFitted);

struct ProbeHealth {
    int firings = 0;
    double hoursAbove1200 = 0;
    HealthTrend offset_C; ///< a probe that ages reads low: its offset falls
};

/// Firings with this probe at its place, in order of time; since it was fitted, where that is known.
ProbeHealth probeHealth(std::span<const FiringHealth> firings, std::optional<Instant> fitted);

} // namespace ringhold
