#include "core/growth/crystal.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

/// The last crossing from the hottest growth temperature down, or the peak of a curve that never was above.
std::size_t lastHot(const Curve& curve, Temperature hottest) {
    const auto hot = std::find_if(curve.rbegin(), curve.rend(),
                                  [hottest](const CurvePoint& p) { return p.temperature >= hottest; });
    if (hot != curve.rend())
        return static_cast<std::size_t>(curve.rend() - hot) - 1;
    const auto peak = std::ranges::max_element(curve, {}, &CurvePoint::temperature);
    return static_cast<std::size_t>(peak - curve.begin());
}

/// The integral of u over a straight line, in µm: Simpson's rule on parts of at most 5 °C. The mean of u does
/// not depend on time when the temperature stands still.
double grown_um(const GrowthRate& rate, const CurvePoint& from, const CurvePoint& to) {
    const double step_C = (to.temperature - from.temperature).celsius();
    const int parts = std::max(1, static_cast<int>(std::ceil(std::abs(step_C) / 5)));
    const auto u = [&](double share) {
        return rate.at_um_per_min(from.temperature + TemperatureDifference::fromCelsius(step_C * share));
    };
    double sum = 0;
    for (int i = 0; i < parts; ++i)
        sum += u(double(i) / parts) + 4 * u((i + 0.5) / parts) + u((i + 1.0) / parts);
    return sum / (6.0 * parts) * inMinutes(to.at - from.at);
}

} // namespace

CrystalGrowth::CrystalGrowth(const Curve& curve, const GrowthRate& rate) : m_rate(rate) {
    if (curve.empty())
        return;
    m_marks.push_back({curve[lastHot(curve, rate.window.hottest)], 0});
    for (std::size_t i = lastHot(curve, rate.window.hottest) + 1; i < curve.size(); ++i)
        m_marks.push_back(
            {curve[i], m_marks.back().radius_um + grown_um(rate, m_marks.back().point, curve[i])});
}

std::optional<Instant> CrystalGrowth::began() const {
    if (m_marks.empty())
        return std::nullopt;
    const auto& first = m_marks.front().point;
    if (m_marks.size() < 2 || first.temperature <= m_rate.window.hottest)
        return first.at;
    const auto& next = m_marks[1].point;
    const double share = (first.temperature - m_rate.window.hottest).celsius() /
                         (first.temperature - next.temperature).celsius();
    return first.at + durationFromSeconds(share * inSeconds(next.at - first.at));
}

std::optional<Instant> CrystalGrowth::ends() const {
    return m_marks.empty() ? std::nullopt : std::optional(m_marks.back().point.at);
}

double CrystalGrowth::likely_um(Instant at) const {
    const auto next = std::ranges::upper_bound(m_marks, at, {}, [](const Mark& m) { return m.point.at; });
    if (next == m_marks.begin())
        return 0;
    const Mark& before = *std::prev(next);
    if (next == m_marks.end())
        return before.radius_um;
    const double share = inSeconds(at - before.point.at) / inSeconds(next->point.at - before.point.at);
    const auto step = next->point.temperature - before.point.temperature;
    return before.radius_um + grown_um(m_rate, before.point, {at, before.point.temperature + step * share});
}

SizeRange CrystalGrowth::radiusAt(Instant at) const {
    const double likely_mm = likely_um(at) / 1000;
    return {likely_mm * m_rate.low_um_per_min / m_rate.best_um_per_min, likely_mm,
            likely_mm * m_rate.high_um_per_min / m_rate.best_um_per_min};
}

SizeRange CrystalGrowth::radius() const {
    return m_marks.empty() ? SizeRange{} : radiusAt(m_marks.back().point.at);
}

std::vector<CrystalRing> CrystalGrowth::rings(const std::vector<Ring>& counted) const {
    const auto radius_mm = [this](Instant at) { return likely_um(at) / 1000; };
    std::vector<CrystalRing> rings;
    for (std::size_t i = 0; i < counted.size(); ++i) {
        const auto& [low, high] = counted[i];
        const Instant left = i + 1 < counted.size() ? counted[i + 1].low.start : high.start + high.length;
        rings.push_back({radius_mm(low.start), radius_mm(high.start), radius_mm(left)});
    }
    return rings;
}

} // namespace ringhold
