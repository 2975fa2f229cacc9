#include "core/report/report_cones.h"

#include "core/cones/bending.h"
#include "core/cones/cone_table.h"
#include "core/plan/cone_down_estimate.h"
#include "core/report/fired_cones.h"
#include "core/watch/look_doubt.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

constexpr double leanHour = 1, levelHour = 3;
constexpr double nearEnough_h = 0.5;
constexpr double nearlyDown_h = 4.5; // seen so before, the first look that finds it down tells when it went
const Rate chartedRate = Rate::fromCelsiusPerHour(60);

std::vector<Look> looksAt(const FiringRecord& record, const Pack& pack, const std::string& cone, bool cold) {
    std::vector<Look> looks;
    std::ranges::copy_if(record.looks, std::back_inserter(looks), [&](const Look& look) {
        return look.pack == pack.id && look.cone == cone && look.cold == cold && !look.struck;
    });
    return looks;
}

ConeMark markOf(const Look* look) {
    return look ? ConeMark{ConeSource::look, look->at, {}} : ConeMark{};
}

/// The first of the looks near one o'clock after which it was never seen standing.
ConeMark firstLeanByLooks(const std::vector<Look>& looks) {
    const auto stood =
        std::find_if(looks.rbegin(), looks.rend(), [](const Look& l) { return l.hour <= hourStanding; });
    const auto lean = stood.base();
    const bool near = lean != looks.end() && lean->hour <= leanHour + nearEnough_h;
    return markOf(near ? &*lean : nullptr);
}

/// The nearest of the looks near three o'clock.
ConeMark threeByLooks(const std::vector<Look>& looks) {
    const auto away = [](const Look& l) { return std::abs(l.hour - levelHour); };
    const auto nearest = std::ranges::min_element(looks, {}, away);
    return markOf(nearest == looks.end() || away(*nearest) > nearEnough_h ? nullptr : &*nearest);
}

ConeMark downByLooks(const std::vector<Look>& looks) {
    const auto down = std::ranges::find_if(looks, [](const Look& l) { return l.hour >= hourDown; });
    if (down == looks.end())
        return {};
    const bool sawItGo = down != looks.begin() && std::prev(down)->hour >= nearlyDown_h;
    return {sawItGo ? ConeSource::look : ConeSource::by, down->at, {}};
}

ConeMark orByModel(ConeMark mark, const TimeInterval& model) {
    if (mark.source == ConeSource::unknown && model.median)
        return {ConeSource::model, std::nullopt, model};
    return mark;
}

ConeStanding lastOf(const std::vector<Look>& hot, const std::vector<Look>& cold, const ConeForecast* model) {
    if (!cold.empty())
        return {ConeSource::look, cold.back().hour, {}, true};
    if (!hot.empty() && hot.back().hour >= hourDown)
        return {ConeSource::look, hourDown, {}, false};
    if (model)
        return {ConeSource::model, model->hourNow.median, model->hourNow, false};
    if (!hot.empty())
        return {ConeSource::look, hot.back().hour, {}, false};
    return {};
}

bool planWaitsFor(const FiringRecord& record, const std::string& cone) {
    return record.firing.plan && std::ranges::any_of(record.firing.plan->steps, [&](const Step& step) {
               const auto* wait = std::get_if<ConeWait>(&step);
               return wait && wait->cone == cone;
           });
}

ReportedCone storyOf(const FiringRecord& record, const Pack& pack, const std::string& cone,
                     const ConeForecast* model) {
    const auto hot = looksAt(record, pack, cone, false);
    const auto cold = looksAt(record, pack, cone, true);
    ReportedCone told{cone,
                      planWaitsFor(record, cone),
                      firstLeanByLooks(hot),
                      threeByLooks(hot),
                      downByLooks(hot),
                      lastOf(hot, cold, model)};
    const double reached = cold.empty() ? hourDown : cold.back().hour;
    if (model && reached >= leanHour)
        told.firstLean = orByModel(told.firstLean, model->atHour[0]);
    if (model && reached >= levelHour)
        told.three = orByModel(told.three, model->atHour[1]);
    if (model && reached >= hourDown)
        told.down = orByModel(told.down, model->down);
    return told;
}

const ConeForecast* coneIn(const PackForecast* pack, const std::string& cone) {
    if (!pack)
        return nullptr;
    const auto found = std::ranges::find(pack->cones, cone, &ConeForecast::cone);
    return found == pack->cones.end() ? nullptr : &*found;
}

std::optional<ReportedOffset> offsetOf(const PackForecast& told, const OffsetPrior& prior, long looks) {
    if (looks == 0 && prior.firings == 0)
        return std::nullopt;
    return ReportedOffset{told.offset, static_cast<int>(looks), prior.firings};
}

} // namespace

ConeStory::ConeStory(const FiringRecord& record, const Curve& control,
                     const std::vector<FiledOffset>& history) {
    const auto fired = firedCones(record, control, history);
    for (const auto& pack : record.packs) {
        auto& told = m_packs.emplace_back(ReportedPack{pack.place, pack.leansLeft, {}, {}});
        const PackForecast* forecast = nullptr;
        for (std::size_t i = 0; fired && i < fired->packs.size(); ++i) {
            if (fired->packs[i].id != pack.id)
                continue;
            forecast = &fired->forecast.packs[i];
            const auto looks = std::ranges::count(fired->looks, pack.id, &Look::pack);
            told.offset = offsetOf(*forecast, fired->priors[i], looks);
            const auto its = looksThatCount(fired->looks, pack.id);
            for (const std::size_t doubt : looksNotFitting(*forecast, its))
                told.doubts.push_back({its[doubt], offsetMeant(its[doubt], pack.type, control)});
            if (told.offset && !m_offset) {
                m_offset = OffsetPrior{forecast->offsetMean, forecast->offsetSd, 0};
                m_type = pack.type;
                const auto& cones = fired->packs[i].cones;
                m_offsetAt =
                    ConeTable::builtIn().find(cones[cones.size() / 2], pack.type)->law.endPoint(chartedRate);
            }
        }
        for (const auto& cone : pack.cones)
            told.cones.push_back(storyOf(record, pack, cone, coneIn(forecast, cone)));
    }
}

std::optional<Instant> ConeStory::coneDownOn(const Curve& whole, const std::string& cone) const {
    if (!ConeTable::builtIn().find(cone, m_type))
        return std::nullopt;
    const auto offset = m_offset ? m_offset->mean : TemperatureDifference();
    return coneDownByHeatWork(ConeTable::builtIn(), m_type, offset)(whole, cone);
}

std::optional<OffsetPrior> ConeStory::offsetAt(Temperature temperature) const {
    if (!m_offset)
        return std::nullopt;
    return carriedTo(temperature, *m_offset, *m_offsetAt);
}

} // namespace ringhold
