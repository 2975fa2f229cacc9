#include "core/learn/distributions.h"

#include <cmath>
#include <limits>
#include <numbers>

namespace ringhold {

namespace {

constexpr double tiny = 1e-300;

double awayFromZero(double x) {
    return std::abs(x) < tiny ? tiny : x;
}

/// The continued fraction of I_x(a, b) by Lentz's method; converges fast for x below (a+1)/(a+b+2).
double betaFraction(double a, double b, double x) {
    double c = 1;
    double d = 1 / awayFromZero(1 - (a + b) * x / (a + 1));
    double value = d;
    const auto step = [&](double numerator) {
        d = 1 / awayFromZero(1 + numerator * d);
        c = awayFromZero(1 + numerator / c);
        value *= d * c;
        return std::abs(d * c - 1);
    };
    for (int m = 1; m < 2000; ++m) {
        step(m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m)));
        if (step(-(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))) < 1e-15)
            break;
    }
    return value;
}

/// The x at which a rising function reaches `share`, by halving a bracket that is widened first.
template <class Rising>
double inverse(const Rising& shareBelow, double share) {
    double low = -1, high = 1;
    while (shareBelow(low) > share && low > -1e100)
        low *= 2;
    while (shareBelow(high) < share && high < 1e100)
        high *= 2;
    for (int i = 0; i < 400; ++i) {
        const double middle = 0.5 * (low + high);
        if (middle <= low || middle >= high)
            break;
        (shareBelow(middle) < share ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

} // namespace

double normalShareBelow(double x) {
    return 0.5 * std::erfc(-x / std::numbers::sqrt2);
}

double normalQuantile(double share) {
    return inverse(normalShareBelow, share);
}

double incompleteBeta(double a, double b, double x) {
    if (x <= 0 || x >= 1)
        return x <= 0 ? 0 : 1;
    const double front =
        std::exp(std::lgamma(a + b) - std::lgamma(a) - std::lgamma(b) + a * std::log(x) + b * std::log1p(-x));
    return x < (a + 1) / (a + b + 2) ? front * betaFraction(a, b, x) / a
                                     : 1 - front * betaFraction(b, a, 1 - x) / b;
}

double studentShareBelow(double t, double freedom) {
    const double tail = 0.5 * incompleteBeta(freedom / 2, 0.5, freedom / (freedom + t * t));
    return t < 0 ? tail : 1 - tail;
}

double studentQuantile(double share, double freedom) {
    if (share > 0.5) // the upper tail has more digits as a lower one
        return -studentQuantile(1 - share, freedom);
    return inverse([freedom](double t) { return studentShareBelow(t, freedom); }, share);
}

double fShareAbove(double ratio, double freedomAbove, double freedomBelow) {
    return ratio <= 0 ? 1
                      : incompleteBeta(freedomBelow / 2, freedomAbove / 2,
                                       freedomBelow / (freedomBelow + freedomAbove * ratio));
}

} // namespace ringhold
