#include "core/learn/growth_fit.h"

#include "core/learn/nonlinear_fit.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr int drawCount = 400;
constexpr double rateSd = 0.712; ///< of ln u: 12 to 125 µm/min is its 90 % interval
constexpr double bestSd_C = 25;
constexpr double flankSd = 0.3;   ///< of the logarithm of a flank's width
constexpr double firingSd = 0.10; ///< of ln u from firing to firing
constexpr double crystalSd = 0.12;
constexpr double delay_min = 10;
constexpr double delaySd = 1.0; ///< of the logarithm
constexpr double thinning_C = 0.5;
constexpr double coldest_C = 850; ///< no growth is looked for below

enum Parameter : std::size_t { lnRate, best, lnCold, lnHot, common };

GrowthRate rateOf(std::span<const double> p) {
    const GrowthRate published = publishedGrowthRate();
    const auto& window = published.window;
    const auto peak = window.best + TemperatureDifference::fromCelsius(bestSd_C * p[best]);
    const double cold = std::exp(flankSd * p[lnCold]), hot = std::exp(flankSd * p[lnHot]);
    GrowthRate rate = published;
    rate.window = {peak + (window.coldest - window.best) * cold,
                   peak + (window.halfCold - window.best) * cold, peak,
                   peak + (window.halfHot - window.best) * hot, peak + (window.hottest - window.best) * hot};
    const double middle = std::sqrt(published.low_um_per_min * published.high_um_per_min);
    rate.best_um_per_min = middle * std::exp(rateSd * p[lnRate]);
    rate.low_um_per_min = rate.high_um_per_min = rate.best_um_per_min;
    rate.basis = GrowthBasis::measured;
    return rate;
}

/// Leaves out points that lie on the straight line between others, within the tolerance.
void thin(const Curve& curve, std::size_t first, std::size_t last, Curve& thinned) {
    std::size_t farthest = first;
    double most_C = thinning_C;
    const double seconds = inSeconds(curve[last].at - curve[first].at);
    for (std::size_t i = first + 1; i < last; ++i) {
        const double share = inSeconds(curve[i].at - curve[first].at) / seconds;
        const auto line =
            curve[first].temperature + (curve[last].temperature - curve[first].temperature) * share;
        if (const double off = std::abs((curve[i].temperature - line).celsius()); off > most_C) {
            most_C = off;
            farthest = i;
        }
    }
    if (farthest != first) {
        thin(curve, first, farthest, thinned);
        thin(curve, farthest, last, thinned);
    } else {
        thinned.push_back(curve[last]);
    }
}

/// From the peak on, as long as crystals may grow.
Curve growingPart(const Curve& curve) {
    const auto peak = std::ranges::max_element(curve, {}, &CurvePoint::temperature);
    auto end = curve.end();
    while (end - peak > 2 && std::prev(end, 2)->temperature.celsius() < coldest_C)
        --end;
    const Curve part(peak, end);
    Curve thinned{part.front()};
    if (part.size() > 1)
        thin(part, 0, part.size() - 1, thinned);
    return thinned;
}

/// Where a crystal's own parameters are, and its firing's.
struct Place {
    std::size_t firing = 0;
    std::size_t crystal = 0;
    std::size_t own = 0; ///< its size factor, and behind it its delay; 0 for a crystal without rings
};

class GrowthModel {
  public:
    explicit GrowthModel(std::span<const GrownFiring> firings) : m_firings(firings) {
        m_count = common + 2 * firings.size();
        for (std::size_t f = 0; f < firings.size(); ++f) {
            m_curves.push_back(growingPart(firings[f].curve));
            for (std::size_t c = 0; c < firings[f].crystals.size(); ++c) {
                const bool ringed = !firings[f].crystals[c].rings.empty();
                m_places.push_back({f, c, ringed ? m_count : 0});
                m_count += ringed ? 2 : 0;
            }
        }
    }

    std::size_t count() const { return m_count; }
    const std::vector<Place>& places() const { return m_places; }

    std::vector<double> residuals(std::span<const double> p) const {
        std::vector<double> r(p.begin(), p.end()); // the priors: every parameter is in standard deviations
        const GrowthRate rate = rateOf(p);
        std::vector<CrystalGrowth> growth;
        for (std::size_t f = 0; f < m_firings.size(); ++f)
            growth.emplace_back(shifted(f, p), rate);
        for (const auto& place : m_places)
            addCrystal(growth[place.firing], place, p, r);
        return r;
    }

    /// When growth could begin, by these parameters.
    Instant opened(std::size_t firing, std::span<const double> p) const {
        return *CrystalGrowth(shifted(firing, p), rateOf(p)).began();
    }

  private:
    Curve shifted(std::size_t firing, std::span<const double> p) const {
        const auto shift =
            TemperatureDifference::fromCelsius(m_firings[firing].offsetSd_C * p[common + 2 * firing]);
        Curve curve = m_curves[firing];
        for (auto& point : curve)
            point.temperature = point.temperature + shift;
        return curve;
    }

    void addCrystal(const CrystalGrowth& growth, const Place& place, std::span<const double> p,
                    std::vector<double>& r) const {
        const auto& crystal = m_firings[place.firing].crystals[place.crystal];
        const double factor = std::exp(firingSd * p[common + 2 * place.firing + 1]);
        if (place.own > 0)
            addRings(growth, crystal, factor * std::exp(crystalSd * p[place.own]),
                     delay_min * std::exp(delaySd * p[place.own + 1]), r);
        else if (crystal.radius_mm)
            r.push_back(diameterResidual(growth, *crystal.radius_mm, crystal.sd_mm, factor));
    }

    static void addRings(const CrystalGrowth& growth, const MeasuredCrystal& crystal, double factor,
                         double late_min, std::vector<double>& r) {
        const double before_mm = growth.radiusAt(*growth.began() + durationFromMinutes(late_min)).likely_mm;
        const auto radius_mm = [&](SizeRange size) {
            return factor * std::max(0.0, size.likely_mm - before_mm);
        };
        for (const auto& ring : crystal.rings)
            r.push_back((ring.radius_mm - radius_mm(growth.radiusAt(ring.at))) / crystal.sd_mm);
        if (crystal.radius_mm)
            r.push_back((*crystal.radius_mm - radius_mm(growth.radius())) / crystal.sd_mm);
    }

    /// On the logarithm, the crystal's own factor, its delay and the measuring together as its scatter.
    static double diameterResidual(const CrystalGrowth& growth, double radius_mm, double sd_mm,
                                   double factor) {
        const double lost_mm = growth.radiusAt(*growth.began() + durationFromMinutes(delay_min)).likely_mm;
        const double model_mm = std::max(1e-3, factor * (growth.radius().likely_mm - lost_mm));
        const double late = std::min(1.0, factor * lost_mm / radius_mm);
        return std::log(radius_mm / model_mm) / std::hypot(crystalSd, sd_mm / radius_mm, late);
    }

    std::span<const GrownFiring> m_firings;
    std::vector<Curve> m_curves;
    std::vector<Place> m_places;
    std::size_t m_count = 0;
};

Bounds bounds90(std::vector<double> values) {
    std::ranges::sort(values);
    const auto at = [&](double share) {
        return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1) + 0.5)];
    };
    return {at(0.05), at(0.95)};
}

Status check(std::span<const GrownFiring> firings) {
    std::size_t measured = 0;
    for (const auto& firing : firings) {
        for (const auto& crystal : firing.crystals) {
            const bool sound = crystal.sd_mm > 0 && crystal.radius_mm.value_or(1) > 0;
            if (firing.curve.empty() || !sound)
                return Error{ErrorKind::badInput, "a crystal wants a curve and a size above 0"};
            measured += crystal.rings.size() + crystal.radius_mm.has_value();
        }
        if (firing.curve.empty() || !(firing.offsetSd_C >= 0))
            return Error{ErrorKind::badInput, "a firing wants a curve"};
    }
    return measured > 0 ? Status() : Error{ErrorKind::badInput, "no crystal was measured"};
}

/// Data that scatter more than was assumed widen all.
void widen(NonlinearFit& fit, const GrowthModel& model) {
    const auto residuals = model.residuals(fit.parameters);
    double squares = 0;
    for (std::size_t i = model.count(); i < residuals.size(); ++i)
        squares += residuals[i] * residuals[i];
    const double ratio = squares / static_cast<double>(residuals.size() - model.count());
    for (double& value : fit.covariance)
        value *= std::max(1.0, ratio);
}

std::vector<CrystalBegan> beganOf(const GrowthModel& model, const NonlinearFit& fit) {
    std::vector<CrystalBegan> all;
    constexpr double normal90 = 1.645;
    for (const auto& [firing, crystal, own] : model.places()) {
        if (own == 0)
            continue;
        const Instant opened = model.opened(firing, fit.parameters);
        const auto late = [&](double sds) {
            return opened + durationFromMinutes(delay_min * std::exp(delaySd * (fit.parameters[own + 1] +
                                                                                sds * fit.sd(own + 1))));
        };
        all.push_back({firing, crystal, late(0), late(-normal90), late(normal90)});
    }
    return all;
}

} // namespace

Bounds GrowthFit::best90_C() const {
    std::vector<double> values;
    for (const auto& draw : m_draws)
        values.push_back(draw.window.best.celsius());
    return bounds90(std::move(values));
}

Bounds GrowthFit::rate90_um_per_min(Temperature at) const {
    std::vector<double> values;
    for (const auto& draw : m_draws)
        values.push_back(draw.at_um_per_min(at));
    return bounds90(std::move(values));
}

Result<GrowthFit> fitGrowth(std::span<const GrownFiring> firings) {
    if (const Status status = check(firings); !status)
        return status.error();
    const GrowthModel model(firings);
    auto fitted = fitNonlinear([&](std::span<const double> p) { return model.residuals(p); },
                               std::vector<double>(model.count()), 1e-3, 25);
    if (!fitted)
        return fitted.error();
    widen(*fitted, model);
    GrowthFit fit;
    fit.m_rate = rateOf(fitted->parameters);
    for (const auto& draw : fitted->draws(drawCount))
        fit.m_draws.push_back(rateOf(draw));
    const Bounds rate = fit.rate90_um_per_min(fit.m_rate.window.best);
    fit.m_rate.low_um_per_min = std::min(rate.low, fit.m_rate.best_um_per_min);
    fit.m_rate.high_um_per_min = std::max(rate.high, fit.m_rate.best_um_per_min);
    fit.m_rate.pieces = static_cast<int>(model.places().size());
    fit.m_began = beganOf(model, *fitted);
    for (const auto& firing : firings)
        for (const auto& crystal : firing.crystals)
            fit.m_rings += static_cast<int>(crystal.rings.size());
    return fit;
}

} // namespace ringhold
