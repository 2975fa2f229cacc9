// A cone in the practice kiln: the truth that looks and forecasts are tried on. It reckons by itself, on
// purpose apart from core/cones, so that an error there cannot agree with itself here.
#pragma once

#include "core/units/temperature.h"
#include "core/units/time.h"

#include <optional>
#include <string>

namespace ringhold {

/// How one cone behaves. Heat work W = integral of A exp(-E/(R T)) dt; tip level with the base at W = 1.
struct PracticeConeNature {
    std::string cone;                ///< "9"
    double activation_J_per_mol = 0; ///< E
    double lnA_per_s = 0;
    TemperatureDifference deviation; ///< this one goes down so much hotter than its kind
    double bendExponent = 1.35;      ///< p of V = W^p
};

class PracticeCone {
  public:
    explicit PracticeCone(PracticeConeNature nature);

    /// Lives through `step`, at the end of which it feels that temperature. Steps of a few seconds at most.
    void advance(Temperature felt, Duration step);

    const std::string& name() const { return m_nature.cone; }
    double work() const { return m_work; }
    /// Where the tip points: 0 standing to 6 down. ln tan((theta + 8°)/2) is linear in V from theta = 0 at
    /// V = 0 to 90° at V = 1, and an hour is 15° of theta.
    double hour() const;

  private:
    double rate_per_s(Temperature felt) const;

    PracticeConeNature m_nature;
    double m_work = 0;
    std::optional<double> m_lastRate_per_s;
};

} // namespace ringhold
