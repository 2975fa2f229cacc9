#include "core/learn/evenness.h"

#include "core/cones/bending.h"
#include "core/cones/forecast.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double widest_C = 60; ///< further from the probe no place is
constexpr double priorSd_C = 25;
constexpr double wrongShare = 0.001; ///< of looks at a cold pack, in the hand and by daylight

bool tells(const ColdPack& pack) {
    const auto down = [](const ColdPack::ColdCone& cone) { return cone.hour >= hourDown; };
    const auto standing = [](const ColdPack::ColdCone& cone) { return cone.hour <= hourStanding; };
    return !std::ranges::all_of(pack.cones, down) && !std::ranges::all_of(pack.cones, standing);
}

Result<std::vector<const Cone*>> conesOf(const ColdPack& pack) {
    std::vector<const Cone*> cones;
    for (const auto& [name, hour] : pack.cones) {
        const Cone* cone = ConeTable::builtIn().find(name, pack.type);
        if (!cone)
            return Error{ErrorKind::badInput, "there is no cone " + name + " in this series"};
        if (!isTellableHour(hour))
            return Error{ErrorKind::badInput, "a cone's hour is 0 to 6 in halves"};
        cones.push_back(cone);
    }
    return cones;
}

/// How much hotter than the probe reads the place was.
Estimate hotterThanProbe(const Curve& control, const ColdPack& pack, const std::vector<const Cone*>& cones) {
    HeatWorkGrid grid(cones, ShiftGrid(-widest_C, widest_C));
    for (const auto& point : control)
        grid.add(point);
    PackEvidence evidence;
    evidence.prior = {{}, TemperatureDifference::fromCelsius(priorSd_C)};
    for (std::size_t i = 0; i < cones.size(); ++i) {
        evidence.cones.push_back(i);
        const auto work = grid.lnWork(i);
        evidence.looks.push_back({i, pack.cones[i].hour, {work.begin(), work.end()}});
    }
    InferenceSettings settings;
    settings.reading.wrongShare = wrongShare;
    const auto posterior = inferOffset(grid, {evidence}, settings);
    const auto& offset = posterior.packs.front().offset;
    return {-offset.mean_C(), offset.sd_C()};
}

void takeMeanOff(std::vector<PlaceHeat>& places) {
    double mean = 0;
    double told = 0;
    for (const auto& place : places)
        if (place.told) {
            mean += place.relative_C.value;
            told += 1;
        }
    for (auto& place : places)
        if (place.told)
            place.relative_C.value -= mean / told;
}

} // namespace

Result<Evenness> evennessOf(const Curve& control, std::span<const ColdPack> packs) {
    if (control.size() < 2)
        return Error{ErrorKind::badInput, "without a curve cones tell no degrees"};
    Evenness evenness;
    for (const auto& pack : packs) {
        const auto cones = conesOf(pack);
        if (!cones)
            return cones.error();
        PlaceHeat place{pack.place, {}, !cones->empty() && tells(pack)};
        if (place.told)
            place.relative_C = hotterThanProbe(control, pack, *cones);
        evenness.places.push_back(place);
    }
    takeMeanOff(evenness.places);
    std::ranges::stable_sort(evenness.places, [](const PlaceHeat& a, const PlaceHeat& b) {
        return a.told != b.told ? a.told : a.relative_C.value > b.relative_C.value;
    });
    const auto told = static_cast<std::size_t>(std::ranges::count(evenness.places, true, &PlaceHeat::told));
    if (told >= 2) {
        const auto& hottest = evenness.places.front().relative_C;
        const auto& coolest = evenness.places[told - 1].relative_C;
        evenness.spread_C = Estimate{hottest.value - coolest.value, std::hypot(hottest.sd, coolest.sd)};
    }
    return evenness;
}

} // namespace ringhold
