#include "ui/plan/plan_basis.h"

#include "core/plan/cone_down_estimate.h"
#include "ui/plan/plan_words.h"
#include "ui/session/preferences.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace ringhold {

namespace {

constexpr double z90 = 1.645;
/// Where a new probe's tolerance is taken.
constexpr Temperature atCones = Temperature::fromCelsius(1250);

std::vector<OffsetChoice> withHistory(const Probe& probe, const std::vector<FiledOffset>& filed) {
    std::map<std::string, std::vector<OffsetFound>> byPlace;
    std::vector<std::string> newestFirst;
    for (const auto& offset : filed) {
        if (offset.probe != probe.id)
            continue;
        byPlace[offset.place].push_back({offset.mean, offset.sd});
        std::erase(newestFirst, offset.place);
        newestFirst.insert(newestFirst.begin(), offset.place);
    }
    std::vector<OffsetChoice> choices;
    for (const auto& place : newestFirst)
        choices.push_back(
            {probe.label, place, priorFromHistory(byPlace[place], newProbePrior(probe.type, atCones))});
    return choices;
}

bool conesAreKnown(const Plan& plan, ConeType type) {
    return std::ranges::all_of(plan.steps, [&](const Step& step) {
        const auto* wait = std::get_if<ConeWait>(&step);
        return !wait || ConeTable::builtIn().find(wait->cone, type);
    });
}

} // namespace

Result<std::vector<OffsetChoice>> offsetChoices(const BookReader& reader, KilnId kiln) {
    const auto probes = reader.probes(kiln);
    if (!probes)
        return probes.error();
    const auto filed = reader.filedOffsets(kiln);
    if (!filed)
        return filed.error();
    std::vector<OffsetChoice> choices;
    std::vector<OffsetChoice> without;
    for (const auto& probe : *probes) {
        if (probe.retired)
            continue;
        const auto some = withHistory(probe, *filed);
        choices.insert(choices.end(), some.begin(), some.end());
        if (some.empty())
            without.push_back({probe.label, "", newProbePrior(probe.type, atCones)});
    }
    choices.insert(choices.end(), without.begin(), without.end());
    if (choices.empty())
        choices.push_back(typicalBasis().offset);
    return choices;
}

PlanBasis typicalBasis() {
    PlanBasis basis;
    basis.offset.prior = newProbePrior(ThermocoupleType::K, atCones);
    return basis;
}

PlanContext contextOf(const PlanBasis& basis, const Plan& plan) {
    PlanContext context;
    if (basis.kiln) {
        context.kiln = kilnModelFor(basis.kiln->ratedPower, basis.kiln->ratedVolts);
        context.line = basis.kiln->ratedVolts;
    } else {
        context.kiln = kilnModelFor({}, {});
    }
    if (conesAreKnown(plan, basis.cones))
        context.coneDown = coneDownByHeatWork(ConeTable::builtIn(), basis.cones, basis.offset.prior.mean);
    return context;
}

QString offsetWords(const OffsetPrior& prior, const Preferences& preferences) {
    const auto within = prior.sd * z90;
    if (prior.firings == 0)
        return PlanWords::tr("may read %1 high or low: no firing has told its offset yet")
            .arg(preferences.difference(within, 0, false));
    const double shown = std::round(preferences.shown(prior.mean));
    const QString reads =
        shown == 0 ? PlanWords::tr("reads true")
                   : PlanWords::tr("reads %1 %2")
                         .arg(preferences.difference(shown < 0 ? -prior.mean : prior.mean, 0, false),
                              shown < 0 ? PlanWords::tr("low") : PlanWords::tr("high"));
    return PlanWords::tr("%1 (%2 to %3), from %4")
        .arg(reads, preferences.difference(prior.mean - within), preferences.difference(prior.mean + within),
             prior.firings == 1 ? PlanWords::tr("1 firing") : PlanWords::tr("%1 firings").arg(prior.firings));
}

QString choiceWords(const OffsetChoice& choice) {
    if (choice.probe.empty())
        return PlanWords::tr("no probe filed");
    const QString probe = QString::fromStdString(choice.probe);
    return choice.place.empty()
               ? PlanWords::tr("%1, no offset yet").arg(probe)
               : PlanWords::tr("%1, cones at %2").arg(probe, QString::fromStdString(choice.place));
}

QString coneTypeWords(ConeType type) {
    const auto words = name(type);
    return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

} // namespace ringhold
