// How much the readings of a hold scatter, and how much of it stays when they are averaged.
#pragma once

#include "core/units/curve.h"

#include <deque>
#include <optional>

namespace ringhold {

/// Estimates the noise of evenly spaced readings as AR(1) from their mean square differences, which a level
/// or a slow drift does not touch: between neighbours D1 = 2 v (1 - phi), between readings k apart Dk = 2 v
/// (1 - phi^k), v the variance; k is 15, or what makes 150 s. It begins with an assumption, as if an hour had
/// been read: `usual_C` of noise, phi 0.8 up to a minute apart and less beyond.
class HoldNoise {
  public:
    explicit HoldNoise(double usual_C) : m_usual_C(usual_C) {}

    void add(const CurvePoint& reading);

    double sd_C() const;
    /// Likeness of neighbouring readings, 0 to 0.99.
    double correlation() const;
    /// Variance of a mean over one minute times one minute, readings' likeness allowed for:
    /// v (1 + phi) / (1 - phi) times the spacing; °C2 min.
    double intensity_C2min() const;

  private:
    void begin(Duration spacing);

    double m_usual_C;
    Duration m_spacing{0};
    std::size_t m_far = 0;        ///< k
    std::deque<CurvePoint> m_run; ///< the last k readings without a gap
    double m_near_C2 = 0;         ///< D1
    double m_far_C2 = 0;          ///< Dk
    double m_weight = 0;          ///< readings that they rest on
};

} // namespace ringhold
