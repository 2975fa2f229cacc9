#include "core/learn/health.h"

#include "core/watch/curve_parts.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr auto low = Temperature::fromCelsius(1000);
constexpr auto high = Temperature::fromCelsius(1200);
constexpr double nearlyFull = 0.95;
constexpr double mostOfClimb = 0.8;
constexpr double sameVolts = 0.02;
constexpr int fewest = 5;
constexpr int lookBack = 10;
constexpr double warn_percent = 6;
constexpr double advise_percent = 10;
constexpr std::size_t fewestReadings = 20;

Instant crossing(const CurvePoint& a, const CurvePoint& b, Temperature level) {
    const double share = (level - a.temperature).celsius() / (b.temperature - a.temperature).celsius();
    return a.at + durationFromSeconds(inSeconds(b.at - a.at) * share);
}

/// Begin and end of the last climb through both.
std::optional<Stretch> lastClimb(const Curve& curve) {
    std::optional<Instant> left;
    std::optional<Stretch> climb;
    for (std::size_t i = 1; i < curve.size(); ++i) {
        const auto& a = curve[i - 1];
        const auto& b = curve[i];
        if (a.temperature < low && b.temperature >= low)
            left = crossing(a, b, low);
        if (left && a.temperature < high && b.temperature >= high) {
            climb = Stretch{*left, crossing(a, b, high)};
            left.reset(); // going to and fro about 1200 °C is no second climb
        }
    }
    return climb;
}

/// Watts per square volt, so that sags do not count; per watt where no volts were read.
double conductance(const PowerPoint& point) {
    const double volts = point.line ? point.line->volts : 1;
    return volts > 0 ? point.power.watts / (volts * volts) : 0;
}

/// What the kiln gives with all elements on: the 98 % point.
double fullConductance(const PowerTrace& power) {
    std::vector<double> values;
    for (const auto& point : power)
        values.push_back(conductance(point));
    if (values.empty())
        return 0;
    const auto at =
        values.begin() + static_cast<std::ptrdiff_t>(0.98 * static_cast<double>(values.size() - 1));
    std::ranges::nth_element(values, at);
    return *at;
}

std::optional<bool> wasFull(const PowerTrace& power, Stretch climb) {
    const double full = fullConductance(power);
    double whole_s = 0, full_s = 0;
    for (std::size_t i = 0; i + 1 < power.size(); ++i) {
        const auto length = std::min(power[i + 1].at, climb.end) - std::max(power[i].at, climb.start);
        if (length <= Duration(0))
            continue;
        whole_s += inSeconds(length);
        full_s += conductance(power[i]) >= nearlyFull * full ? inSeconds(length) : 0;
    }
    return whole_s > 0 && full > 0 ? std::optional(full_s >= mostOfClimb * whole_s) : std::nullopt;
}

std::vector<FiringHealth> since(std::span<const FiringHealth> firings, std::optional<Instant> begin) {
    std::vector<FiringHealth> kept;
    std::ranges::copy_if(firings, std::back_inserter(kept),
                         [&](const FiringHealth& firing) { return !begin || firing.at >= *begin; });
    return kept;
}

bool alike(const FixedClimb& climb, const FixedClimb& last) {
    if (climb.line.has_value() != last.line.has_value())
        return false;
    return !climb.line || std::abs(climb.line->volts / last.line->volts - 1) <= sameVolts;
}

TrendWord wordFor(const HealthTrend& trend, double small) {
    if (trend.firings < fewest || !trend.change90)
        return TrendWord::notEnough;
    const auto [least, most] = *trend.change90;
    if (least >= -small && most <= small)
        return TrendWord::steady;
    return least > 0 ? TrendWord::rising : most < 0 ? TrendWord::falling : TrendWord::notEnough;
}

constexpr double smallShare = 0.05; ///< of minutes, ohms and kilowatt-hours

HealthTrend shareTrend(const std::vector<HealthPoint>& points) {
    return healthTrend(points, points.empty() ? 0 : smallShare * std::abs(points.back().value));
}

void judgeClimbs(KilnHealth& health, const std::vector<FiringHealth>& firings) {
    std::vector<FixedClimb> climbs;
    for (const auto& firing : firings)
        if (firing.climb && firing.climb->atFullPower.value_or(true))
            climbs.push_back(*firing.climb);
        else
            health.leftOut += firing.climb.has_value();
    std::vector<HealthPoint> points;
    for (const auto& climb : climbs)
        if (alike(climb, climbs.back()))
            points.push_back({climb.minutes, 0});
        else
            ++health.leftOut;
    health.climb_min = shareTrend(points);
    health.sameVolts = !climbs.empty() && climbs.back().line.has_value();
}

void judgeElements(KilnHealth& health, const std::vector<FiringHealth>& firings) {
    std::vector<HealthPoint> points;
    for (const auto& firing : firings)
        if (firing.resistance_ohm)
            points.push_back({firing.resistance_ohm->value, firing.resistance_ohm->sd});
    health.resistance_ohm = shareTrend(points);
    const auto& trend = health.resistance_ohm;
    if (trend.firings < fewest || !trend.change || trend.firingsAgo == 0)
        return;
    const double perFiring = *trend.change / trend.firingsAgo;
    const double first = trend.now.value - perFiring * (trend.firings - 1);
    const double rise = first > 0 ? (trend.now.value / first - 1) * 100 : 0;
    health.rise_percent = rise;
    const bool sure = trend.word == TrendWord::rising;
    health.elements = !sure
                          ? trend.word == TrendWord::notEnough ? ElementState::notEnough : ElementState::sound
                      : rise >= advise_percent ? ElementState::replace
                      : rise >= warn_percent   ? ElementState::worn
                                               : ElementState::sound;
}

/// Figures of unlike sources differ by more than elements do.
void judgeEnergy(KilnHealth& health, const std::vector<FiringHealth>& firings) {
    for (const auto& firing : firings)
        if (firing.energy)
            health.energySource = firing.energy->source;
    std::vector<HealthPoint> points;
    for (const auto& firing : firings)
        if (firing.energy && firing.energy->source == health.energySource)
            points.push_back({firing.energy->energy.kilowattHours(), 0});
    health.energy_kWh = shareTrend(points);
}

} // namespace

std::optional<FixedClimb> fixedClimbOf(const Curve& control, const PowerTrace& power) {
    const auto climb = lastClimb(control);
    if (!climb)
        return std::nullopt;
    return FixedClimb{inMinutes(climb->length()), meanLine(power, climb->start, climb->end),
                      wasFull(power, *climb)};
}

std::optional<Estimate> resistanceOf(const PowerTrace& power) {
    PowerTrace read;
    std::ranges::copy_if(power, std::back_inserter(read),
                         [](const PowerPoint& point) { return point.line.has_value(); });
    const double full = fullConductance(read);
    double sum = 0, squares = 0, count = 0;
    for (const auto& point : read)
        if (const double here = conductance(point); full > 0 && here >= nearlyFull * full) {
            sum += 1 / here;
            squares += 1 / (here * here);
            ++count;
        }
    if (count < static_cast<double>(fewestReadings))
        return std::nullopt;
    const double mean = sum / count;
    return Estimate{mean, std::sqrt(std::max(0.0, squares / count - mean * mean) / count)};
}

double hoursAbove1200(const Curve& curve) {
    if (curve.empty())
        return 0;
    return inHours(totalLength(stretchesWithin(curve, high, std::max(high, rangeOf(curve).second))));
}

FiringHealth healthOf(const Curve& control, const PowerTrace& power,
                      const std::optional<OffsetFound>& offset) {
    FiringHealth health;
    health.at = control.empty() ? Instant() : control.front().at;
    health.climb = fixedClimbOf(control, power);
    health.resistance_ohm = resistanceOf(power);
    health.offset = offset;
    health.hoursAbove1200 = hoursAbove1200(control);
    return health;
}

HealthTrend healthTrend(std::span<const HealthPoint> points, double small) {
    HealthTrend trend;
    trend.firings = static_cast<int>(points.size());
    if (points.empty())
        return trend;
    trend.now = {points.back().value, points.back().sd};
    trend.firingsAgo = std::min(lookBack, trend.firings - 1);
    const bool weighted = std::ranges::all_of(points, [](const HealthPoint& point) { return point.sd > 0; });
    std::vector<double> number, value, weights;
    for (const auto& point : points) {
        number.push_back(static_cast<double>(number.size()) - static_cast<double>(points.size()) + 1);
        value.push_back(point.value);
        if (weighted)
            weights.push_back(1 / (point.sd * point.sd));
    }
    const auto fit = fitPolynomial(number, value, 1, weights);
    if (!fit)
        return trend;
    trend.now = fit->at({1, 0});
    const auto [change, sd] = fit->at({0, static_cast<double>(trend.firingsAgo)});
    const double half = fit->halfWidthFactor() * sd;
    trend.change = change;
    trend.change90 = Bounds{change - half, change + half};
    if (const double then = trend.now.value - change; then > 0)
        trend.changePercent = change / then * 100;
    trend.word = wordFor(trend, small);
    return trend;
}

KilnHealth kilnHealth(std::span<const FiringHealth> firings, std::optional<Instant> elementsFitted) {
    const auto counted = since(firings, elementsFitted);
    KilnHealth health;
    judgeClimbs(health, counted);
    judgeElements(health, counted);
    judgeEnergy(health, counted);
    return health;
}

ProbeHealth probeHealth(std::span<const FiringHealth> firings, std::optional<Instant> fitted) {
    ProbeHealth health;
    std::vector<HealthPoint> offsets;
    for (const auto& firing : since(firings, fitted)) {
        ++health.firings;
        health.hoursAbove1200 += firing.hoursAbove1200;
        if (firing.offset)
            offsets.push_back({firing.offset->mean.celsius(), firing.offset->sd.celsius()});
    }
    constexpr double small_C = 3;
    health.offset_C = healthTrend(offsets, small_C);
    health.offset_C.changePercent.reset(); // degrees of an offset are no shares
    return health;
}

} // namespace ringhold
