// The two-node kiln run in coarse steps, fast enough to be tried with hundreds of constants.
#pragma once

#include "core/kiln/two_node_kiln.h"

namespace ringhold {

/// The same differential equations as core/kiln/two_node_kiln.h, by Heun's method. Within 0.3 °C of it for
/// steps of up to 20 s; plain numbers in °C and W.
class KilnRun {
  public:
    KilnRun(const KilnConstants& constants, double chamber_C, double brick_C);

    double chamber_C() const { return m_chamber; }
    double brick_C() const { return m_brick; }
    /// Full power at these line volts.
    double full_W(double volts) const;
    /// What brings the chamber to that temperature within `seconds`, though there may be no such power.
    double powerTowards_W(double chamber_C, double seconds) const;
    void step(double power_W, double seconds);

  private:
    struct Flow {
        double chamber; ///< °C/s
        double brick;
    };
    Flow flow(double chamber, double brick, double power_W) const;

    KilnConstants m_kiln;
    double m_around;
    double m_chamber;
    double m_brick;
};

} // namespace ringhold
