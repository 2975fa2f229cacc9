// An outcome fitted against one numeric cause: a line or a parabola with its band.
#pragma once

#include "core/learn/learning.h"

#include <vector>

namespace ringhold {

/// The data of such a fit. Everything but the cause itself is in the constants: a one, or a one for the
/// firing that a piece is of.
struct CauseData {
    std::vector<RegressionRow> constants{};
    RegressionRow typical{}; ///< the constants by which the curve is drawn
    std::vector<double> cause{};
    std::vector<double> causeVariance{}; ///< what is unsure of each, after calibration
    std::vector<double> outcome{};
    std::vector<double> weights{}; ///< empty: alike
    double sharedSd = 0;           ///< error of the cause that is common to all
};

/// Pulls causes that carry an error of their own towards their mean, by how reliable each is: the best guess
/// of the true value. False when the errors are as large as the differences: more than half of the variance.
bool calibrate(std::vector<double>& cause, std::vector<double>& variance, const std::vector<double>& ownSd);

class CauseCurve {
  public:
    /// degree 1 or 2. Fails as fitLinear() does.
    static Result<CauseCurve> fit(const CauseData& data, int degree);

    CurveValue at(double cause) const;
    /// How often chance alone gives an F ratio like that of the curve against the constants.
    double chance() const { return m_chance; }
    double from() const { return m_from; }
    double to() const { return m_to; }
    double residualSd() const { return m_fit.residualSd(); }
    Claim claim() const;
    std::vector<CurveValue> values(int count = 33) const;

  private:
    CauseCurve(LinearFit fit, const CauseData& data, int degree);
    double scaled(double cause) const { return (cause - m_centre) / m_scale; }
    RegressionRow rowAt(double cause) const;
    double slopeAt(double cause) const;
    Estimate difference(double from, double to) const;
    /// Where the parabola turns, by Fieller's theorem (J. R. Stat. Soc. B 16, 1954, 175).
    std::optional<Bounds> turn90() const;
    std::optional<double> turn() const;
    void addTurn(Claim& claim) const;

    LinearFit m_fit;
    RegressionRow m_typical{};
    int m_degree;
    double m_from;
    double m_to;
    double m_centre;
    double m_scale;
    double m_sharedSd;
    double m_chance = 1;
};

/// How often chance alone makes a larger model so much better than a smaller one that it contains.
double chanceOf(const LinearFit& larger, const LinearFit& smaller);

} // namespace ringhold
