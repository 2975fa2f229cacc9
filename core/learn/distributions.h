// The distributions by which small numbers of pieces are judged.
#pragma once

namespace ringhold {

/// The share of the standard normal distribution below x.
double normalShareBelow(double x);
/// The x below which that share of the standard normal distribution lies. share in (0, 1).
double normalQuantile(double share);

/// The regularized incomplete beta function I_x(a, b), a and b above 0, x in [0, 1]: by its continued
/// fraction (NIST Digital Library of Mathematical Functions 8.17.22). Relative error below 1e-10.
double incompleteBeta(double a, double b, double x);

/// Student's t with `freedom` degrees of freedom, above 0: the share below t, and its inverse.
double studentShareBelow(double t, double freedom);
double studentQuantile(double share, double freedom);

/// How often chance alone gives an F ratio at least so large. Degrees of freedom above 0.
double fShareAbove(double ratio, double freedomAbove, double freedomBelow);

} // namespace ringhold
