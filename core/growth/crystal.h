// The crystal that a curve draws: its size, and where its rings and each moment of the firing lie in it.
#pragma once

#include "core/growth/growth_rate.h"
#include "core/units/curve.h"
#include "core/watch/ring_count.h"

#include <optional>
#include <vector>

namespace ringhold {

/// A length with the range that the growth rate leaves it.
struct SizeRange {
    double low_mm = 0;
    double likely_mm = 0;
    double high_mm = 0;
};

/// A step down and up as it lies in the crystal, radii from the centre.
struct CrystalRing {
    double inner_mm = 0; ///< when the kiln had come down
    double turn_mm = 0;  ///< when it had come back up
    double outer_mm = 0; ///< when it had come down for the next one, or left for good

    double width_mm() const { return outer_mm - inner_mm; }
};

/// Growth along a curve. It begins when the curve last came below the hottest growth temperature (above it
/// crystals melt away), or at the curve's peak where it never was that hot; the climb before draws nothing.
/// An instant's radius is the integral of u(T) up to then, to 0.1 % for the piecewise-linear curve. That
/// there are seeds, and that they are there from the beginning, is assumed.
class CrystalGrowth {
  public:
    /// The temperatures are those that the glaze feels: a probe's known offset is taken off before. A glaze's
    /// own rate, if fitted to this probe's curves, wants them as they are.
    CrystalGrowth(const Curve& curve, const GrowthRate& rate);

    /// How far out the crystal's edge was at an instant: 0 before the beginning, that of the end afterwards.
    SizeRange radiusAt(Instant at) const;
    /// At the curve's end.
    SizeRange radius() const;
    /// Nothing for an empty curve.
    std::optional<Instant> began() const;
    /// The curve's last instant; nothing for an empty curve.
    std::optional<Instant> ends() const;
    /// Likely radii; those that the whole crystal's range scales.
    std::vector<CrystalRing> rings(const std::vector<Ring>& counted) const;

    const GrowthRate& rate() const { return m_rate; }

  private:
    struct Mark {
        CurvePoint point;
        double radius_um;
    };

    double likely_um(Instant at) const;

    GrowthRate m_rate;
    std::vector<Mark> m_marks; ///< at each point of the growing part
};

} // namespace ringhold
