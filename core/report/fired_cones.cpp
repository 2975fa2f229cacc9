#include "core/report/fired_cones.h"

#include "core/cones/cone_table.h"
#include "core/report/report_curves.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr Duration longestAfterReading = std::chrono::minutes(20); // that the model judges a look

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

/// A cold look tells how the cone stood when the readings ended.
std::vector<Look> knownLooks(const FiringRecord& record, const std::vector<Pack>& packs,
                             const Curve& control) {
    std::vector<Look> known;
    for (Look look : record.looks) {
        const auto pack = std::ranges::find(packs, look.pack, &Pack::id);
        if (look.struck || pack == packs.end() || std::ranges::count(pack->cones, look.cone) == 0)
            continue;
        if (look.cold)
            look.at = std::min(look.at, control.back().at);
        if (isTellableHour(look.hour) && look.at >= control.front().at &&
            look.at <= control.back().at + longestAfterReading)
            known.push_back(std::move(look));
    }
    return known;
}

std::vector<FiledOffset> before(const std::vector<FiledOffset>& history, const FiringRecord& record) {
    std::vector<FiledOffset> kept;
    std::ranges::copy_if(history, std::back_inserter(kept), [&](const FiledOffset& offset) {
        return offset.firing != record.firing.id && offset.at < record.firing.began;
    });
    return kept;
}

} // namespace

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

std::vector<FiledOffset> offsetsTold(const FiringRecord& record, const Curve& control,
                                     const std::vector<FiledOffset>& history) {
    std::vector<FiledOffset> told;
    const auto* probe = controlProbe(record);
    const auto fired = firedCones(record, control, before(history, record));
    if (!probe || !record.firing.ended || !fired)
        return told;
    for (std::size_t i = 0; i < fired->packs.size(); ++i) {
        const auto& pack = fired->packs[i];
        const auto& found = fired->forecast.packs[i];
        if (std::ranges::count(fired->looks, pack.id, &Look::pack) > 0)
            told.push_back({record.firing.id, record.kiln.id, probe->id, pack.place, *record.firing.ended,
                            found.offsetMean, found.offsetSd});
    }
    return told;
}

} // namespace ringhold
