// How much the readings of a hold scatter, and how much of it stays when they are averaged.
#pragma once

#include "core/units/curve.h"

#include <optional>

namespace ringhold {

/// Estimates the noise of evenly spaced readings as AR(1) from their differences one and two readings apart,
/// which a level or a slow drift does not touch: D1 = 2 v (1 - phi), D2 = 2 v (1 - phi^2), v the variance.
/// It begins with an assumption: `usual_C` of noise, phi 0.8 up to a minute apart and less beyond.
class HoldNoise {
  public:
    explicit HoldNoise(double usual_C) : m_usual_C(usual_C) {}

    void add(const CurvePoint& reading);

    double sd_C() const;
    /// Likeness of neighbouring readings, 0 to 0.95.
    double correlation() const;
    /// Variance of a mean over one minute times one minute, readings' likeness allowed for:
    /// v (1 + phi) / (1 - phi) times the spacing; °C2 min.
    double intensity_C2min() const;

  private:
    struct Spread {
        double one_C2 = 0; ///< mean square difference of neighbours
        double two_C2 = 0; ///< of those two apart
    };
    void begin(Duration spacing);

    double m_usual_C;
    Duration m_spacing{0};
    std::optional<CurvePoint> m_last;
    std::optional<double> m_beforeLast_C;
    Spread m_spread;
    double m_weight = 0; ///< readings that m_spread rests on
};

} // namespace ringhold
