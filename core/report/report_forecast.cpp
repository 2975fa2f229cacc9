#include "core/report/report_forecast.h"

#include "core/plan/plan_check.h"
#include "core/report/fired_cones.h"
#include "core/report/report_curves.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr Duration ahead = std::chrono::hours(1);

std::vector<Look> looksUntil(const FiringRecord& record, Instant asOf) {
    std::vector<Look> looks;
    std::ranges::copy_if(record.looks, std::back_inserter(looks),
                         [asOf](const Look& look) { return look.at <= asOf && !look.cold && !look.struck; });
    return looks;
}

std::optional<StepFollower> followed(const FiringRecord& record, const Curve& curve,
                                     const FiringForecast& model, const std::vector<Look>& looks) {
    const auto& plan = record.firing.plan;
    if (!plan || plan->steps.empty() || !check(*plan))
        return std::nullopt;
    StepFollower follower(*plan,
                          planContext(record, curve, [&model](const Curve& whole, const std::string& cone) {
                              return model.coneDownOn(whole, cone);
                          }));
    follower.restart(curve, looks, record.stepCorrections);
    return follower;
}

/// A record and its model as they stood at an instant, for one pack.
std::optional<ConeForecast> forecastAt(const FiringRecord& record, const Curve& control, const Pack& pack,
                                       const OffsetPrior& prior, const std::string& cone, Instant asOf) {
    const auto end = std::ranges::upper_bound(control, asOf, {}, &CurvePoint::at);
    const Curve curve(control.begin(), end);
    if (curve.size() < 2)
        return std::nullopt;
    auto model = FiringForecast::make({pack}, {prior});
    auto looks = looksUntil(record, asOf);
    std::erase_if(looks, [&](const Look& look) { return look.at < curve.front().at; });
    if (!model || !model->restart(curve, curve.front().at, looks))
        return std::nullopt;
    const auto follower = followed(record, curve, *model, looks);
    const auto forecast = model->forecast(follower ? &*follower : nullptr);
    if (!forecast)
        return std::nullopt;
    const auto found = std::ranges::find(forecast->packs.front().cones, cone, &ConeForecast::cone);
    return found == forecast->packs.front().cones.end() ? std::nullopt : std::optional(*found);
}

} // namespace

std::vector<ReportedForecast> forecastsTold(const FiringRecord& record, const Curve& control,
                                            const std::vector<FiledOffset>& history,
                                            const std::vector<ReportedPack>& packs) {
    std::vector<ReportedForecast> told;
    bool waits = false;
    for (const auto& pack : packs)
        waits |= std::ranges::any_of(pack.cones, &ReportedCone::waitedFor);
    const auto known = knownPacks(record);
    for (std::size_t i = 0; i < packs.size(); ++i) {
        const auto pack = std::ranges::find(known, record.packs[i].id, &Pack::id);
        if (pack == known.end())
            continue;
        const auto prior = offsetPriorFor(controlProbe(record), pack->place, history);
        for (const auto& cone : packs[i].cones) {
            if (!cone.down.seen || (waits && !cone.waitedFor))
                continue;
            const Instant asOf = *cone.down.seen - ahead;
            const auto forecast = forecastAt(record, control, *pack, prior, cone.cone, asOf);
            if (forecast && forecast->down.median && !forecast->isDown)
                told.push_back({cone.cone, pack->place, asOf, forecast->down, *cone.down.seen,
                                cone.down.source == ConeSource::by});
        }
    }
    return told;
}

std::vector<ReportedFiled> offsetsFiled(const FiringRecord& record) {
    std::vector<ReportedFiled> filed;
    for (const auto& offset : record.filedOffsets) {
        const auto probe = std::ranges::find(record.probes, offset.probe, &Probe::id);
        filed.push_back({probe == record.probes.end() ? std::string() : probe->label, offset.place,
                         offset.mean, offset.sd});
    }
    return filed;
}

} // namespace ringhold
