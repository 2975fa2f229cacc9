#include "ui/plan/plan_figures.h"

#include "ui/plan/plan_crystal.h"
#include "ui/plan/plan_words.h"
#include "ui/session/preferences.h"

#include <cmath>
#include <map>

namespace ringhold {

namespace {

/// A kiln off the plan for less than this is not worth a word.
constexpr Duration worthAWord = std::chrono::minutes(10);

QString countOf(std::size_t number, const char* one, const char* many) {
    return QString::number(number) + QLatin1Char(' ') + QString::fromUtf8(number == 1 ? one : many);
}

QString basisWords(const PlanBasis& basis, KilnBasis model) {
    if (model == KilnBasis::scaledByRatedPower)
        return PlanWords::tr("modelled on a typical kiln scaled to %1\u202fkW, not metered")
            .arg(QString::number(basis.kiln->ratedPower->kilowatts(), 'g', 3));
    return PlanWords::tr("modelled on a typical kiln of 11\u202fkW, not metered");
}

PlanFigure lengthOf(const Plan& plan, const PlannedCurve& planned, const Preferences& preferences) {
    QString source = PlanWords::tr("from %1, %2")
                         .arg(preferences.temperature(planned.curve.front().temperature),
                              countOf(plan.steps.size(), "step", "steps"));
    if (planned.restsOnAssumption())
        source += PlanWords::tr("; rests on an assumed cone wait");
    return {PlanWords::tr("Whole firing"), preferences.span(planned.length()), source};
}

PlanFigure coneDownOf(const PlannedStep& step, const std::string& cone, Instant start,
                      const Preferences& preferences) {
    const QString label = PlanWords::tr("Cone %1 down").arg(QString::fromStdString(cone));
    const QString after = preferences.span(step.end - start);
    switch (step.coneWaitEnd.value_or(ConeWaitEnd::assumed)) {
    case ConeWaitEnd::estimated:
        return {label, PlanWords::tr("about %1").arg(after),
                PlanWords::tr("after the start, an estimate: only a look tells")};
    case ConeWaitEnd::stillStanding:
        return {label, PlanWords::tr("not by %1").arg(after),
                PlanWords::tr("after the start; it would still stand, as the heat-work law has it")};
    case ConeWaitEnd::assumed:
        break;
    }
    return {label, after, PlanWords::tr("after the start; assumed, half the longest soak")};
}

PlanFigure energyOf(const PlanEnergy& energy, const PlanBasis& basis) {
    return {PlanWords::tr("Energy"),
            PlanWords::tr("about %1\u202fkWh").arg(std::lround(energy.total.kilowattHours())),
            basisWords(basis, energy.basis)};
}

PlanFigure costOf(const PlanEnergy& energy, const PlanBasis& basis) {
    const QString label = PlanWords::tr("Cost");
    if (!basis.kiln || !basis.kiln->pricePerKilowattHour)
        return {label, QStringLiteral("–"), PlanWords::tr("no price of a kWh is filed with a kiln")};
    const double price = *basis.kiln->pricePerKilowattHour;
    return {label, PlanWords::tr("about %1").arg(energy.cost(price), 0, 'f', 2),
            PlanWords::tr("at %1 a kWh, in your currency").arg(price)};
}

QString lagWords(const CannotFollow& off, const Preferences& preferences) {
    const bool behind = off.worst < TemperatureDifference();
    return behind ? PlanWords::tr("Step %1: the kiln would fall up to %2 behind at full power.")
                        .arg(off.step + 1)
                        .arg(preferences.difference(-off.worst, 0, false))
                  : PlanWords::tr("Step %1: the kiln would stay up to %2 hotter with its power off.")
                        .arg(off.step + 1)
                        .arg(preferences.difference(off.worst, 0, false));
}

/// The worst of each step that lasts.
QStringList lags(const PlanEnergy& energy, const Preferences& preferences) {
    std::map<std::size_t, CannotFollow> worst;
    for (const auto& off : energy.cannotFollow) {
        if (off.end - off.start < worthAWord)
            continue;
        const auto [known, isNew] = worst.try_emplace(off.step, off);
        if (!isNew && std::abs(off.worst.celsius()) > std::abs(known->second.worst.celsius()))
            known->second = off;
    }
    QStringList words;
    for (const auto& [step, off] : worst)
        words << lagWords(off, preferences);
    return words;
}

} // namespace

bool hasEnergyModel(const PlanBasis& basis) {
    return !basis.kiln || basis.kiln->fuel == Fuel::electric;
}

std::vector<PlanFigure> planFigures(const Plan& plan, const PlannedCurve& planned, const PlanEnergy* energy,
                                    const PlanBasis& basis, const Preferences& preferences) {
    std::vector<PlanFigure> figures{lengthOf(plan, planned, preferences)};
    for (const auto& step : planned.steps)
        if (const auto* wait = std::get_if<ConeWait>(&plan.steps[step.step]))
            figures.push_back(coneDownOf(step, wait->cone, planned.start(), preferences));
    if (const auto crystal = planCrystal(plan, planned, basis))
        figures.push_back({PlanWords::tr("Crystal"), sizeWords(*crystal), sourceWords(*crystal)});
    if (!hasEnergyModel(basis)) {
        figures.push_back({PlanWords::tr("Energy"), QStringLiteral("–"),
                           PlanWords::tr("there is no model of a kiln that burns its fuel")});
    } else if (energy) {
        figures.push_back(energyOf(*energy, basis));
        figures.push_back(costOf(*energy, basis));
    }
    return figures;
}

QStringList planWarnings(const Plan& plan, const PlannedCurve& planned, const PlanEnergy* energy,
                         const PlanBasis& basis, const Preferences& preferences) {
    QStringList words;
    for (const auto& step : planned.steps)
        if (step.coneWaitEnd == ConeWaitEnd::stillStanding)
            words << PlanWords::tr("Step %1: after the longest soak cone %2 would still stand.")
                         .arg(step.step + 1)
                         .arg(QString::fromStdString(std::get<ConeWait>(plan.steps[step.step]).cone));
    if (energy && hasEnergyModel(basis))
        words << lags(*energy, preferences);
    return words;
}

} // namespace ringhold
