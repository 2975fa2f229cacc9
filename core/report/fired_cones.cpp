#include "core/report/fired_cones.h"

#include "core/cones/cone_table.h"
#include "core/report/report_curves.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr Duration longestAfterReading = std::chrono::minutes(20); // that the model judges a look

std::vector<Look> knownLooks(const FiringRecord& record, const std::vector<Pack>& packs,
                             const Curve& control) {
    std::vector<Look> known;
    for (const Look& look : record.looks) {
        const auto pack = std::ranges::find(packs, look.pack, &Pack::id);
        if (look.struck || pack == packs.end() || std::ranges::count(pack->cones, look.cone) == 0)
            continue;
        const bool withinReach = look.cold || (look.at >= control.front().at &&
                                               look.at <= control.back().at + longestAfterReading);
        if (isTellableHour(look.hour) && withinReach)
            known.push_back(look);
    }
    return known;
}

} // namespace

std::vector<Pack> knownPacks(const FiringRecord& record) {
    std::vector<Pack> known;
    for (Pack pack : record.packs) {
        std::erase_if(pack.cones,
                      [&](const std::string& cone) { return !ConeTable::builtIn().find(cone, pack.type); });
        if (!pack.cones.empty())
            known.push_back(std::move(pack));
    }
    return known;
}

std::optional<FiredCones> firedCones(const FiringRecord& record, const Curve& control,
                                     const std::vector<FiledOffset>& history) {
    if (control.size() < 2)
        return std::nullopt;
    FiredCones fired;
    fired.packs = knownPacks(record);
    fired.looks = knownLooks(record, fired.packs, control);
    for (const auto& pack : fired.packs)
        fired.priors.push_back(offsetPriorFor(controlProbe(record), pack.place, history));
    auto model = FiringForecast::make(fired.packs, fired.priors);
    if (!model || !model->restart(control, control.front().at, fired.looks))
        return std::nullopt;
    auto forecast = model->forecast(nullptr);
    if (!forecast)
        return std::nullopt;
    fired.forecast = std::move(*forecast);
    return fired;
}

std::vector<FiledOffset> offsetsTold(const FiringRecord& record, const Curve& control) {
    std::vector<FiledOffset> filed;
    const auto* probe = controlProbe(record);
    const auto fired = firedCones(record, control, {});
    if (!probe || !record.firing.ended || !fired)
        return filed;
    for (std::size_t i = 0; i < fired->packs.size(); ++i) {
        const auto& pack = fired->packs[i];
        const auto& found = fired->forecast.packs[i];
        if (std::ranges::count(fired->looks, pack.id, &Look::pack) == 0)
            continue;
        if (const auto told = toldByLooks(fired->priors[i], {found.offsetMean, found.offsetSd}))
            filed.push_back({record.firing.id, record.kiln.id, probe->id, pack.place, *record.firing.ended,
                             told->mean, told->sd});
    }
    return filed;
}

} // namespace ringhold
