// Whether the control probe's readings are to be believed: frozen, noisy, wired the wrong way round.
#pragma once

#include "core/units/curve.h"

#include <optional>

namespace ringhold {

struct NoiseJump {
    TemperatureDifference now;   ///< standard deviation, of the last half minute's readings or so
    TemperatureDifference usual; ///< before
};

struct SameValue {
    Temperature value;
    Instant since;
    int readings = 0;
    Duration longestBefore{0}; ///< for so long the same value stood at most before
};

/// Takes the readings of one probe in time order, O(1) each.
class ProbeEvidence {
  public:
    void add(const CurvePoint& reading);

    /// The value that stands now, and since when.
    const std::optional<SameValue>& same() const { return m_same; }
    /// The same value for 5 min and ten readings, and for three times as long as ever before, or while
    /// `moved`, what the kiln is meant to have moved in that time, is 5 °C or more. Where the readings come
    /// in whole degrees a hold may well show one value: 20 min then.
    std::optional<SameValue> frozen(TemperatureDifference moved) const;
    /// The scatter is three times the usual and 1.5 °C at least.
    std::optional<NoiseJump> noisy() const;
    /// It came down by 8 °C from where it began and is below 100 °C, though the kiln is to be heated:
    /// the caller knows whether it is.
    bool fallsFromStart() const;
    /// Standard deviation of the last readings' noise, °C.
    double scatter_C() const;
    /// The value stands longer than it ever did, for a minute at least: not to be relied on just now.
    bool inDoubt() const;
    std::optional<Temperature> first() const { return m_first; }

  private:
    void countSame(const CurvePoint& reading);
    void judgeScatter(double third_C);

    std::optional<Temperature> m_first;
    std::optional<CurvePoint> m_last;
    std::optional<CurvePoint> m_beforeLast;
    std::optional<SameValue> m_same;
    double m_shortSquare_C2 = 0; ///< mean square second difference, few readings back
    double m_longSquare_C2 = 0;  ///< many
    int m_scatterCount = 0;
    double m_leastStep_C = 1e9; ///< smallest change between neighbours
};

} // namespace ringhold
