// A glaze's growth rate from the potter's own crystals.
#pragma once

#include "core/base/result.h"
#include "core/growth/crystal.h"
#include "core/learn/learning.h"

#include <optional>
#include <span>
#include <vector>

namespace ringhold {

/// The radius of a ring whose time is known: where the crystal's edge was at that instant. A ring is the
/// clock mark of the kiln's turn from falling to rising, unless the potter says otherwise.
struct MeasuredRing {
    Instant at;
    double radius_mm = 0;
};

struct MeasuredCrystal {
    std::optional<double> radius_mm; ///< of the whole crystal: half its diameter
    std::vector<MeasuredRing> rings; ///< from the inside out
    double sd_mm = 0.3;              ///< of measuring a radius
};

/// A firing and the largest crystals that it grew.
struct GrownFiring {
    Curve curve;           ///< what the glaze felt: the probe's offset taken off
    double offsetSd_C = 0; ///< how unsure that is
    std::vector<MeasuredCrystal> crystals;
};

/// When a crystal began to grow: only rings tell.
struct CrystalBegan {
    std::size_t firing = 0;
    std::size_t crystal = 0;
    Instant likely;
    Instant earliest; ///< of a 90 % interval
    Instant latest;
};

/// A growth rate with what is unsure of it.
class GrowthFit {
  public:
    /// Likely values; its low and high are the 90 % bounds of the rate at its best temperature.
    const GrowthRate& rate() const { return m_rate; }
    Bounds best90_C() const; ///< where growth is fastest
    double likely_um_per_min(Temperature at) const { return m_rate.at_um_per_min(at); }
    Bounds rate90_um_per_min(Temperature at) const; ///< wide where no firing held
    const std::vector<CrystalBegan>& began() const { return m_began; }
    int rings() const { return m_rings; }

  private:
    friend Result<GrowthFit> fitGrowth(std::span<const GrownFiring> firings);
    GrowthRate m_rate = publishedGrowthRate();
    std::vector<GrowthRate> m_draws; ///< rates that may be, all alike likely
    std::vector<CrystalBegan> m_began;
    int m_rings = 0;
};

/// The bell of core/growth/growth_rate.h fitted by nonlinear least squares with honest priors: the rate
/// within the published 12 to 125 µm/min (90 %), the best temperature 1090 +- 25 °C, each flank as wide as
/// published within a third or so; firings differ by a tenth, crystals by an eighth, and begin about 10 min
/// late, somewhere between 2 and 50. So with little data the answer is the prior's and wide. Diameters alone
/// tell the rate near the holds; rings tell it at both temperatures and when the crystal began. badInput when
/// nothing was measured, or a radius is not above 0.
Result<GrowthFit> fitGrowth(std::span<const GrownFiring> firings);

} // namespace ringhold
