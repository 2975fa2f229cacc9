#include "core/learn/cause_curve.h"

#include "core/learn/distributions.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace ringhold {

namespace {

constexpr double normal90 = 1.6448536269514722; ///< half a 90 % interval in standard deviations

double meanOf(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

double scaleOf(double from, double to) {
    return to > from ? (to - from) / 2 : 1;
}

} // namespace

bool calibrate(std::vector<double>& cause, std::vector<double>& variance, const std::vector<double>& ownSd) {
    const auto count = static_cast<double>(cause.size());
    const double mean = meanOf(cause);
    double observed = 0, error = 0;
    for (std::size_t i = 0; i < cause.size(); ++i) {
        observed += (cause[i] - mean) * (cause[i] - mean) / std::max(count - 1, 1.0);
        error += ownSd[i] * ownSd[i] / count;
    }
    variance.assign(cause.size(), 0);
    if (error <= 0)
        return true;
    const double real = observed - error;
    if (real < 0.5 * observed)
        return false;
    for (std::size_t i = 0; i < cause.size(); ++i) {
        const double reliability = real / (real + ownSd[i] * ownSd[i]);
        cause[i] = mean + reliability * (cause[i] - mean);
        variance[i] = (1 - reliability) * real;
    }
    return true;
}

double chanceOf(const LinearFit& larger, const LinearFit& smaller) {
    const int more = smaller.freedom() - larger.freedom();
    const double left = larger.residualSquares() / larger.freedom();
    const double explained = (smaller.residualSquares() - larger.residualSquares()) / more;
    if (left <= 1e-12 * smaller.residualSquares())
        return explained > 0 ? 0 : 1;
    return fShareAbove(explained / left, more, larger.freedom());
}

CauseCurve::CauseCurve(LinearFit fit, const CauseData& data, int degree)
    : m_fit(std::move(fit)), m_typical(data.typical), m_degree(degree), m_from(std::ranges::min(data.cause)),
      m_to(std::ranges::max(data.cause)), m_centre((m_from + m_to) / 2), m_scale(scaleOf(m_from, m_to)),
      m_sharedSd(data.sharedSd) {}

Result<CauseCurve> CauseCurve::fit(const CauseData& data, int degree) {
    if (data.cause.empty())
        return Error{ErrorKind::badInput, "nothing to fit"};
    const auto [low, high] = std::ranges::minmax(data.cause);
    const double centre = (low + high) / 2;
    const double scale = scaleOf(low, high);
    std::vector<RegressionRow> rows = data.constants;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const double z = (data.cause[i] - centre) / scale;
        rows[i].push_back(z);
        if (degree > 1) // the mean of z² where z is unsure
            rows[i].push_back(z * z + data.causeVariance[i] / (scale * scale));
    }
    auto larger = fitLinear(rows, data.outcome, data.weights);
    if (!larger)
        return larger.error();
    const auto smaller = fitLinear(data.constants, data.outcome, data.weights);
    if (!smaller)
        return smaller.error();
    const double chance = chanceOf(*larger, *smaller);
    CauseCurve curve(std::move(*larger), data, degree);
    curve.m_chance = chance;
    return curve;
}

RegressionRow CauseCurve::rowAt(double cause) const {
    RegressionRow row = m_typical;
    const double z = scaled(cause);
    row.push_back(z);
    if (m_degree > 1)
        row.push_back(z * z);
    return row;
}

double CauseCurve::slopeAt(double cause) const {
    const auto& coefficients = m_fit.coefficients();
    const auto first = m_typical.size();
    const double bend = m_degree > 1 ? 2 * coefficients[first + 1] * scaled(cause) : 0;
    return (coefficients[first] + bend) / m_scale;
}

CurveValue CauseCurve::at(double cause) const {
    const auto [value, sd] = m_fit.at(rowAt(cause));
    const double half = std::hypot(m_fit.halfWidthFactor() * sd, normal90 * slopeAt(cause) * m_sharedSd);
    return {cause, value, value - half, value + half};
}

std::vector<CurveValue> CauseCurve::values(int count) const {
    std::vector<CurveValue> values;
    for (int i = 0; i < count; ++i)
        values.push_back(at(m_from + (m_to - m_from) * i / (count - 1)));
    return values;
}

Estimate CauseCurve::difference(double from, double to) const {
    RegressionRow row = rowAt(to);
    const RegressionRow before = rowAt(from);
    for (std::size_t i = 0; i < row.size(); ++i)
        row[i] -= before[i];
    return m_fit.at(row);
}

std::optional<double> CauseCurve::turn() const {
    if (m_degree < 2)
        return std::nullopt;
    const auto first = m_typical.size();
    const auto& b = m_fit.coefficients();
    const double at = m_centre - m_scale * b[first] / (2 * b[first + 1]);
    return at > m_from && at < m_to ? std::optional(at) : std::nullopt;
}

std::optional<Bounds> CauseCurve::turn90() const {
    // (b1 + 2 b2 z)² <= t² var(b1 + 2 b2 z), a quadratic inequality in z
    const auto i = m_typical.size();
    const double t = m_fit.halfWidthFactor();
    const double b1 = m_fit.coefficients()[i], b2 = m_fit.coefficients()[i + 1];
    const double square = 4 * (b2 * b2 - t * t * m_fit.covariance(i + 1, i + 1));
    const double linear = 4 * (b1 * b2 - t * t * m_fit.covariance(i, i + 1));
    const double constant = b1 * b1 - t * t * m_fit.covariance(i, i);
    const double root = linear * linear - 4 * square * constant;
    if (square <= 0 || root < 0)
        return std::nullopt;
    const double low = (-linear - std::sqrt(root)) / (2 * square);
    const double high = (-linear + std::sqrt(root)) / (2 * square);
    return Bounds{m_centre + m_scale * low, m_centre + m_scale * high};
}

void CauseCurve::addTurn(Claim& claim) const {
    claim.bestAt = turn();
    if (const auto bounds = turn90()) {
        const double shared = normal90 * m_sharedSd;
        claim.bestAt90 = Bounds{*claim.bestAt - std::hypot(*claim.bestAt - bounds->low, shared),
                                *claim.bestAt + std::hypot(bounds->high - *claim.bestAt, shared)};
    }
}

Claim CauseCurve::claim() const {
    Claim claim;
    claim.from = m_from;
    claim.to = m_to;
    const double factor = m_fit.halfWidthFactor();
    Estimate change = difference(m_from, m_to);
    const bool endsDiffer = std::abs(change.value) > factor * change.sd;
    const bool bends = turn().has_value() && (turn90().has_value() || !endsDiffer);
    if (bends) {
        addTurn(claim);
        const double farther = *claim.bestAt - m_from > m_to - *claim.bestAt ? m_from : m_to;
        change = difference(farther, *claim.bestAt);
        claim.trend = change.value > 0 ? Trend::best : Trend::worst;
    } else {
        claim.trend = change.value > 0 ? Trend::rises : Trend::falls;
    }
    claim.change = change.value;
    claim.change90 = {change.value - factor * change.sd, change.value + factor * change.sd};
    return claim;
}

} // namespace ringhold
