#include "core/watch/look_doubt.h"

#include "core/cones/bending.h"
#include "core/cones/cone_table.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace ringhold {

namespace {

constexpr double beginsToBend_h = 0.25; ///< up to there a cone is told as standing
constexpr double deadBelowHottest_C =
    300; ///< a cone takes no notice of what is so much colder than the hottest
constexpr double farthest_C = 200;
constexpr double enough_C = 0.05;
constexpr int mostRounds = 20;

std::vector<Look> without(std::vector<Look> looks, LookId id) {
    std::erase_if(looks, [&](const Look& look) { return look.id == id; });
    return looks;
}

/// ln W at that instant, if the cone felt `shift_C` less than the probe read.
double lnWorkAt(const HeatWorkLaw& law, const Curve& curve, Instant at, double shift_C) {
    double work = 0;
    for (std::size_t i = 1; i < curve.size() && curve[i - 1].at < at; ++i) {
        const double from_K = curve[i - 1].temperature.kelvin() - shift_C;
        const double to_K = curve[i].temperature.kelvin() - shift_C;
        const double seconds = inSeconds(curve[i].at - curve[i - 1].at);
        if (curve[i].at <= at) {
            work += law.gained(from_K, to_K, seconds);
        } else {
            const double part = inSeconds(at - curve[i - 1].at);
            work += law.gained(from_K, std::lerp(from_K, to_K, part / seconds), part);
        }
    }
    return std::log(std::max(work, std::numeric_limits<double>::min()));
}

/// The curve where anything happens to a cone.
Curve hotPartOf(const Curve& curve, Temperature hottest) {
    Curve hot;
    std::ranges::copy_if(curve, std::back_inserter(hot), [&](const CurvePoint& point) {
        return (hottest - point.temperature).celsius() < deadBelowHottest_C;
    });
    return hot;
}

} // namespace

TemperatureDifference offsetMeant(const Look& look, ConeType type, const Curve& curve) {
    const Cone* cone = ConeTable::builtIn().find(look.cone, type);
    if (!cone || curve.size() < 2)
        return {};
    const auto hottest = std::ranges::max_element(curve, {}, &CurvePoint::temperature)->temperature;
    const Curve hot = hotPartOf(curve, hottest);
    const double wanted = std::log(BendingLaw().workAt(std::max(look.hour, beginsToBend_h)));
    double shift_C = 0;
    for (int round = 0; round < mostRounds; ++round) { // Newton: ln W is nearly straight in the shift
        const double excess = lnWorkAt(cone->law, hot, look.at, shift_C) - wanted;
        const double step_C = excess / cone->law.sensitivity_per_C(hottest.kelvin() - shift_C);
        shift_C = std::clamp(shift_C + step_C, -farthest_C, farthest_C);
        if (std::abs(step_C) < enough_C)
            break;
    }
    return TemperatureDifference::fromCelsius(shift_C);
}

std::vector<Look> looksThatCount(const std::vector<Look>& looks, PackId pack) {
    std::vector<Look> its;
    std::ranges::copy_if(looks, std::back_inserter(its),
                         [&](const Look& look) { return look.pack == pack && !look.struck; });
    std::ranges::stable_sort(its, {}, &Look::at);
    return its;
}

std::vector<std::size_t> looksNotFitting(const PackForecast& pack, const std::vector<Look>& its) {
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < std::min(its.size(), pack.wrongLook.size()); ++i) {
        const auto cone = std::ranges::find(pack.cones, its[i].cone, &ConeForecast::cone);
        const bool newest = std::none_of(its.begin() + static_cast<std::ptrdiff_t>(i) + 1, its.end(),
                                         [&](const Look& later) { return later.cone == its[i].cone; });
        const bool contradicts = cone != pack.cones.end() && cone->contradicted && newest;
        if (pack.wrongLook[i] >= doubtful || contradicts)
            places.push_back(i);
    }
    return places;
}

std::vector<LookDoubt> doubtfulLooks(const FiringForecast& forecaster, const std::vector<Look>& looks,
                                     const Forecast& forecast, const StepFollower* follower) {
    std::vector<LookDoubt> doubts;
    for (std::size_t p = 0; p < forecast.packs.size(); ++p) {
        const auto& told = forecast.packs[p];
        const auto its = looksThatCount(looks, forecaster.packs()[p].id);
        for (const std::size_t i : looksNotFitting(told, its))
            if (auto rest = forecaster.forecastBy(without(looks, its[i].id), follower))
                doubts.push_back({its[i], told.wrongLook[i], p,
                                  offsetMeant(its[i], forecaster.packs()[p].type, forecaster.curve()),
                                  std::move(rest->packs[p])});
    }
    std::ranges::stable_sort(doubts, {}, [](const LookDoubt& doubt) { return doubt.look.at; });
    return doubts;
}

} // namespace ringhold
