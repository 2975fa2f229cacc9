// How a cone bends while heat works on it, and where its tip points.
#pragma once

namespace ringhold {

/// The hour of a cone that stands, and of one that is down.
inline constexpr double hourStanding = 0.0;
inline constexpr double hourDown = 6.0;

/// The bending law: ln tan((theta + 8°) / 2) is linear in V = W^p, theta = 0 at V = 0 and 90° at V = 1. theta
/// is the angle of the chord from base to tip, hour = theta / 15°. 8° is the lean at which a cone is set; p
/// is the bending exponent (published statements want 1.25 to 1.5).
class BendingLaw {
  public:
    static constexpr double usualExponent = 1.35;

    /// p above 0.
    explicit BendingLaw(double exponent = usualExponent) : m_exponent(exponent) {}
    double exponent() const { return m_exponent; }

    /// 0 to 6; a cone past W = 1 stays at 6. `work` at least 0.
    double hourAt(double work) const;
    /// The heat work at which the tip points to that hour, 0 to 6.
    double workAt(double hour) const;

  private:
    double m_exponent;
};

} // namespace ringhold
