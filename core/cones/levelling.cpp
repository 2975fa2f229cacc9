#include "core/cones/levelling.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace ringhold {

namespace {

constexpr Duration window = std::chrono::hours(2);
constexpr Duration meanOver = std::chrono::minutes(2);
constexpr Duration shortest = std::chrono::minutes(30);
constexpr std::size_t fewestMeans = 8;
constexpr double wobble_C2 = 0.25 * 0.25;
constexpr double leastClimb_C_per_h = 10;
constexpr double arrives_C = 3;
constexpr std::array timeConstants_h{0.6, 0.8, 1.1, 1.5, 2.0, 2.7, 3.6, 4.8, 6.4};
constexpr double usualConstant_h = 2;
constexpr double constantSpread = 0.6; ///< of its logarithm
constexpr int onsets = 12;             ///< of a climb that dies away
constexpr int changes = 24;            ///< instants of a change of rate
constexpr double negligible = 1e-6;
constexpr double priorSteady = 0.6;
constexpr double priorChanged = 0.2;
constexpr double priorLevels = 0.2;
/// What the distance to the ceiling may turn out as, by what the fitted course has it, and how likely.
struct Stretch {
    double factor;
    double weight;
};
constexpr std::array stretches{Stretch{0.75, 0.2}, Stretch{1.0, 0.3}, Stretch{1.25, 0.3}, Stretch{1.8, 0.2}};
constexpr std::array caseShares{0.05, 0.15, 0.3, 0.3, 0.15, 0.05};

struct Mean {
    double at_h; ///< from the last reading; at most 0
    double celsius;
};

std::vector<Mean> meansOf(const Curve& curve, Instant begin) {
    std::vector<Mean> means;
    const auto first = std::ranges::lower_bound(curve, begin, {}, &CurvePoint::at);
    for (auto point = first; point != curve.end();) {
        const Instant end = point->at + meanOver;
        double hours = 0;
        double sum_C = 0;
        double count = 0;
        for (; point != curve.end() && point->at < end; ++point, ++count) {
            hours += inHours(point->at - curve.back().at);
            sum_C += point->temperature.celsius();
        }
        means.push_back({hours / count, sum_C / count});
    }
    return means;
}

struct Fit {
    double lnLikelihood;
    double level_C;      ///< at the last reading
    double rate_C_per_h; ///< at first
};

/// Plain least squares of level and rate. `shape` is the climb's course but for these: degrees by hours from
/// the last reading, for each °C/h of its first rate.
template <class Shape>
Fit fitted(std::span<const Mean> means, const Shape& shape) {
    const auto n = static_cast<double>(means.size());
    double f1 = 0, y1 = 0, ff = 0, fy = 0, yy = 0;
    const double middle_C = means[means.size() / 2].celsius;
    for (const auto& mean : means) {
        const double f = shape(mean.at_h);
        const double y = mean.celsius - middle_C;
        f1 += f / n;
        y1 += y / n;
        ff += f * f;
        fy += f * y;
        yy += y * y;
    }
    const double spread = ff - n * f1 * f1;
    const double rate = spread > 0 ? (fy - n * f1 * y1) / spread : 0;
    const double squares = std::max(0.0, yy - n * y1 * y1 - rate * rate * spread);
    const double level_C = middle_C + y1 + rate * (shape(0) - f1);
    return {-n / 4 * std::log(squares / n + wobble_C2), level_C, rate};
}

/// What a grid of courses says.
struct Courses {
    std::vector<Fit> fits;
    std::vector<double> lnPrior; ///< of each
    double lnEvidence(double best) const {
        double sum = 0;
        for (std::size_t i = 0; i < fits.size(); ++i)
            sum += std::exp(fits[i].lnLikelihood + lnPrior[i] - best);
        return std::log(sum);
    }
};

/// Even instants of the window, but for its very end.
std::vector<double> instantsOf(std::span<const Mean> means, int count) {
    std::vector<double> at;
    for (int i = 0; i < count; ++i)
        at.push_back(means.front().at_h * (1 - 0.95 * i / count));
    return at;
}

/// ln of the likelihood of a rate that changed at that instant to any other, the new one averaged over a
/// range as wide as the rate itself (Occam's factor: its sd, times the root of 2 pi, over that range).
double lnChangedAt(double instant_h, std::span<const Mean> means) {
    const auto n = static_cast<double>(means.size());
    double x1 = 0, f1 = 0, y1 = 0;
    const auto after = [&](const Mean& mean) { return std::max(0.0, mean.at_h - instant_h); };
    for (const auto& mean : means) {
        x1 += mean.at_h / n;
        f1 += after(mean) / n;
        y1 += mean.celsius / n;
    }
    double xx = 0, xf = 0, ff = 0, xy = 0, fy = 0, yy = 0;
    for (const auto& mean : means) {
        const double x = mean.at_h - x1, f = after(mean) - f1, y = mean.celsius - y1;
        xx += x * x;
        xf += x * f;
        ff += f * f;
        xy += x * y;
        fy += f * y;
        yy += y * y;
    }
    const double own = ff - xf * xf / xx; // of the change, beside the line
    if (own < 1e-9)
        return fitted(means, [](double t) { return t; }).lnLikelihood;
    const double change = (fy - xf * xy / xx) / own;
    const double variance = std::max(0.0, yy - xy * xy / xx - change * change * own) / n + wobble_C2;
    const double sd = std::sqrt(2 * variance / own);
    const double range = std::max(leastClimb_C_per_h, std::abs(xy / xx));
    return -n / 4 * std::log(variance) + std::min(0.0, std::log(2.5 * sd / range));
}

struct Judged {
    Courses levels;
    std::vector<double> rateLeft;   ///< by fit: of the rate at first, what is left now
    std::vector<double> constant_h; ///< and its time constant
    double lnSteady = 0;
    double lnChanged = 0;
    double best = 0;
};

Judged judge(std::span<const Mean> means) {
    Judged judged;
    const Fit steady = fitted(means, [](double t) { return t; });
    double constants = 0;
    for (const double constant : timeConstants_h)
        constants += std::exp(-0.5 * std::pow(std::log(constant / usualConstant_h) / constantSpread, 2));
    for (const double onset : instantsOf(means, onsets)) {
        for (const double constant : timeConstants_h) {
            judged.levels.fits.push_back(fitted(means, [=](double t) {
                return t < onset ? t - onset : -constant * std::expm1(-(t - onset) / constant);
            }));
            const double z = std::log(constant / usualConstant_h) / constantSpread;
            judged.levels.lnPrior.push_back(-z * z / 2 - std::log(constants * onsets));
            judged.rateLeft.push_back(std::exp(onset / constant));
            judged.constant_h.push_back(constant);
        }
    }
    std::vector<double> changed;
    for (const double instant : instantsOf(means, changes))
        changed.push_back(lnChangedAt(instant, means) - std::log(changes));
    judged.best = std::max(steady.lnLikelihood, std::ranges::max(changed));
    for (const auto& fit : judged.levels.fits)
        judged.best = std::max(judged.best, fit.lnLikelihood);
    judged.lnSteady = steady.lnLikelihood - judged.best;
    double sum = 0;
    for (const double one : changed)
        sum += std::exp(one - judged.best);
    judged.lnChanged = std::log(sum);
    return judged;
}

/// The grid's courses, lowest ceiling first; weights sum to 1. Those that fall are left out.
std::vector<LevellingCase> coursesOf(const Judged& judged) {
    std::vector<LevellingCase> all;
    double total = 0;
    for (std::size_t i = 0; i < judged.levels.fits.size(); ++i) {
        const auto& fit = judged.levels.fits[i];
        const double rate = fit.rate_C_per_h * judged.rateLeft[i];
        if (rate <= 0)
            continue;
        const double weight = std::exp(fit.lnLikelihood + judged.levels.lnPrior[i] - judged.best);
        total += weight;
        if (weight < negligible)
            continue;
        for (const auto& stretch : stretches)
            all.push_back(
                {weight * stretch.weight, Temperature::fromCelsius(fit.level_C),
                 Rate::fromCelsiusPerHour(rate),
                 Temperature::fromCelsius(fit.level_C + rate * judged.constant_h[i] * stretch.factor)});
    }
    for (auto& one : all)
        one.weight /= total;
    std::ranges::sort(all, {}, &LevellingCase::ceiling);
    return all;
}

/// The course below which that share of the weight lies.
const LevellingCase& at(std::span<const LevellingCase> sorted, double share) {
    double below = 0;
    for (const auto& one : sorted)
        if ((below += one.weight) >= share)
            return one;
    return sorted.back();
}

} // namespace

std::optional<Levelling> levellingShown(const Curve& curve, std::optional<Instant> since) {
    if (curve.empty())
        return std::nullopt;
    const Instant begin = std::max(since.value_or(Instant::min()), curve.back().at - window);
    const auto means = meansOf(curve, begin);
    if (means.size() < fewestMeans || means.front().at_h > -inHours(shortest))
        return std::nullopt;
    if (means.back().celsius - means.front().celsius < -leastClimb_C_per_h * means.front().at_h)
        return std::nullopt;
    const auto judged = judge(means);
    const auto courses = coursesOf(judged);
    if (courses.empty())
        return std::nullopt;
    const double levels = priorLevels * std::exp(judged.levels.lnEvidence(judged.best));
    const double others = priorSteady * std::exp(judged.lnSteady) + priorChanged * std::exp(judged.lnChanged);
    Levelling levelling{levels / (levels + others),
                        {at(courses, 0.05).ceiling, at(courses, 0.5).ceiling, at(courses, 0.95).ceiling},
                        {}};
    double below = 0;
    for (const double share : caseShares) {
        levelling.cases.push_back(at(courses, below + share / 2));
        levelling.cases.back().weight = share;
        below += share;
    }
    return levelling;
}

Curve levellingCurve(const LevellingCase& levelling, Instant now, std::optional<Temperature> top) {
    constexpr int corners = 24;
    constexpr double until = 6; // time constants: 0.2 % is left
    const double away_C = (levelling.ceiling - levelling.now).celsius();
    const double constant_h = away_C / levelling.rate.celsiusPerHour();
    const double highest_C = top ? std::max(top->celsius(), levelling.now.celsius()) : 1e9;
    Curve curve{{now, levelling.now}};
    for (int i = 1; i <= corners; ++i) {
        const double passed = until * i * i / (corners * corners); // close together at first
        const double at_C = levelling.now.celsius() - away_C * std::expm1(-passed);
        if (constant_h * passed >= inHours(forecastHorizon))
            break;
        curve.push_back({now + durationFromHours(constant_h * passed),
                         Temperature::fromCelsius(std::min(at_C, highest_C))});
    }
    curve.push_back({now + forecastHorizon, curve.back().temperature});
    return curve;
}

bool levelsOffBelow(const Levelling& levelling, Temperature wanted) {
    return levelling.probability >= levelsOffSurely && (wanted - levelling.ceiling.p95).celsius() > arrives_C;
}

} // namespace ringhold
