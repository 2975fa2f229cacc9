// Two charts that flag a small shift in a train of values before it is plain to see. Their values should hang
// together little: autocorrelation shortens the run to a false alarm badly, so feed means of 5 to 10 min.
#pragma once

namespace ringhold {

/// Limits between which a chart's value is in control.
struct ControlLimits {
    double low = 0;
    double high = 0;

    bool hold(double value) const { return value >= low && value <= high; }
};

/// Exponentially weighted moving average, NIST/SEMATECH e-Handbook 6.3.2.4: z = weight x + (1 - weight) z,
/// begun at the target.
class EwmaChart {
  public:
    struct Parameters {
        double target = 0;
        double sd = 1;      ///< of single values about the target, above 0
        double weight = .2; ///< of the newest value, above 0, at most 1
        double width = 3;   ///< limits in standard deviations of z
    };

    explicit EwmaChart(const Parameters& parameters);

    /// Takes the next value. True while in control by the settled limits.
    bool take(double value);
    /// Begins anew at the target.
    void reset();

    double average() const { return m_average; }
    /// target +- width sd sqrt(weight / (2 - weight)), which the handbook's example uses from the first value
    /// on.
    ControlLimits limits() const;
    /// The narrower limits that are due after the values taken so far: times sqrt(1 - (1 - weight)^2i).
    ControlLimits limitsSoFar() const;

  private:
    ControlLimits within(double share) const;

    Parameters m_parameters;
    double m_average;
    double m_remembered = 1; ///< weight that the start still has: (1 - weight)^i
};

/// Tabular cumulative sum, NIST/SEMATECH e-Handbook 6.3.2.3: upper = max(0, upper + x - target - slack),
/// lower likewise for values below the target; a signal when either is above the limit. Once out it stays out
/// until the values come back or reset().
class CusumChart {
  public:
    struct Parameters {
        double target = 0;
        double slack = 0.5; ///< K, in the values' unit, half the shift to be found; at least 0
        double limit = 4;   ///< H, in the values' unit; above 0
    };

    explicit CusumChart(const Parameters& parameters) : m_parameters(parameters) {}

    /// Takes the next value. True while in control.
    bool take(double value);
    /// Begins anew at 0.
    void reset();

    double upper() const { return m_upper; }
    double lower() const { return m_lower; }
    bool isHigh() const { return m_upper > m_parameters.limit; }
    bool isLow() const { return m_lower > m_parameters.limit; }

  private:
    Parameters m_parameters;
    double m_upper = 0;
    double m_lower = 0;
};

} // namespace ringhold
