#include "ui/kiln/kiln_history.h"

#include "core/book/drawn_firing.h"
#include "core/book/kiln_care.h"
#include "core/learn/power_trace.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr std::size_t fewestPacks = 2;

std::optional<OffsetFound> offsetFound(const std::vector<FiledOffset>& filed, FiringId firing,
                                       std::optional<ProbeId> probe) {
    for (const auto& offset : filed)
        if (offset.firing == firing && offset.probe == probe)
            return OffsetFound{offset.mean, offset.sd};
    return std::nullopt;
}

} // namespace

std::vector<ColdPack> coldPacksOf(const FiringRecord& record) {
    std::vector<ColdPack> packs;
    for (const auto& pack : record.packs) {
        ColdPack cold{pack.place, pack.type, {}};
        for (const auto& cone : pack.cones) {
            const auto seen = std::find_if(record.looks.rbegin(), record.looks.rend(), [&](const Look& look) {
                return look.pack == pack.id && look.cone == cone && look.cold && !look.struck;
            });
            if (seen != record.looks.rend())
                cold.cones.push_back({cone, seen->hour});
        }
        if (!cold.cones.empty())
            packs.push_back(std::move(cold));
    }
    return packs;
}

std::vector<FiringHealth> healthByProbe(const std::vector<KilnFiring>& firings, ProbeId probe) {
    std::vector<FiringHealth> healths;
    for (const auto& firing : firings)
        if (firing.probe == probe)
            healths.push_back(firing.health);
    return healths;
}

Result<KilnPast::Seen> KilnPast::look(const FiringSummary& firing, const Kiln& kiln,
                                      const std::vector<FiledOffset>& filed) const {
    const auto cold = KilnCare(*m_book).coldLooks(firing.id);
    const auto stands = BookReader(*m_book).meterStands(firing.id);
    if (!cold || !stands)
        return cold ? stands.error() : cold.error();
    const auto counted = [](const MeterStand& stand) { return !stand.struck; };
    return Seen{firing.readings,
                *cold,
                static_cast<std::size_t>(std::ranges::count_if(*stands, counted)),
                static_cast<std::size_t>(std::ranges::count(filed, firing.id, &FiledOffset::firing)),
                {kiln.pricePerKilowattHour, kiln.gasPrice}};
}

Result<KilnFiring> KilnPast::read(const FiringSummary& firing, const std::vector<FiledOffset>& filed) const {
    const auto drawn = drawnFiring(*m_book, firing.id, {.others = false});
    if (!drawn)
        return drawn.error();
    const FiringRecord& record = drawn->record;
    const Curve& curve = drawn->control;
    KilnFiring told{firing, {}, {}, useOf(record), {}};
    if (drawn->probe)
        told.probe = drawn->probe->id;
    const auto power = powerOf(record);
    told.health =
        healthOf(curve, power ? power->trace : PowerTrace(), offsetFound(filed, firing.id, told.probe));
    told.health.at = firing.began;
    told.health.energy = told.use.electricity;
    if (const auto packs = coldPacksOf(record); packs.size() >= fewestPacks && !curve.empty())
        if (auto even = evennessOf(curve, packs))
            told.evenness = std::move(*even);
    return told;
}

Result<std::vector<KilnFiring>> KilnPast::of(const Kiln& kiln) {
    const BookReader reader(*m_book);
    FiringFilter filter;
    filter.kiln = kiln.id;
    auto firings = reader.firings(filter);
    const auto filed = reader.filedOffsets(kiln.id);
    if (!firings || !filed)
        return firings ? filed.error() : firings.error();
    std::erase_if(*firings, [](const FiringSummary& firing) { return !firing.ended; });
    if (firings->size() > mostFirings)
        firings->erase(firings->begin(), firings->end() - static_cast<std::ptrdiff_t>(mostFirings));
    std::vector<KilnFiring> all;
    for (const auto& firing : *firings) {
        const auto seen = look(firing, kiln, *filed);
        if (!seen)
            return seen.error();
        const auto kept = m_kept.find(firing.id);
        if (kept == m_kept.end() || !(kept->second.seen == *seen)) {
            auto told = read(firing, *filed);
            if (!told)
                return told.error();
            m_kept[firing.id] = {*seen, std::move(*told)};
        }
        all.push_back(m_kept[firing.id].firing);
        all.back().firing = firing; // its title may have changed
    }
    return all;
}

} // namespace ringhold
