#include "ui/plan/plan_faults.h"

#include "core/cones/cone_table.h"
#include "ui/plan/plan_words.h"
#include "ui/plan/step_cells.h"
#include "ui/plan/typed_figures.h"
#include "ui/session/preferences.h"

namespace ringhold {

namespace {

constexpr QChar thinSpace(0x202f);

/// A figure in the unit of a plan file's key, as the potter reads it.
QString figureOf(std::string_view key, double value, const Preferences& preferences) {
    if (key == "rate_C_per_h")
        return grouped(typedForm(Rate::fromCelsiusPerHour(value), preferences)) + thinSpace +
               preferences.unitName() + QStringLiteral("/h");
    if (key == "band_C")
        return grouped(typedForm(TemperatureDifference::fromCelsius(value), preferences)) + thinSpace +
               preferences.unitName();
    if (key.ends_with("_C"))
        return grouped(typedForm(Temperature::fromCelsius(value), preferences)) + thinSpace +
               preferences.unitName();
    if (key.ends_with("min") || key == "minutes")
        return typedForm(durationFromMinutes(value));
    return QString::number(value);
}

QString reasonWords(const PlanFault& fault, const Preferences& preferences) {
    const auto low = [&] { return figureOf(fault.key, fault.low, preferences); };
    const auto high = [&] { return figureOf(fault.key, fault.high, preferences); };
    switch (fault.reason) {
    case FaultReason::noSteps:
        return PlanWords::tr("The plan has no step yet.");
    case FaultReason::tooManySteps:
        return PlanWords::tr("A plan has at most %1 steps.").arg(fault.high);
    case FaultReason::notAboveZero:
        return PlanWords::tr("must be above 0");
    case FaultReason::outOfRange:
        return PlanWords::tr("must be from %1 to %2").arg(low(), high());
    case FaultReason::tooMuch:
        return PlanWords::tr("must be at most %1").arg(high());
    case FaultReason::belowKiln:
        return PlanWords::tr("below the %1 that the kiln has by then; this step goes up").arg(low());
    case FaultReason::aboveKiln:
        return PlanWords::tr("above the %1 that the kiln has by then; this step goes down").arg(high());
    case FaultReason::notACone:
        return PlanWords::tr("must be a cone's number, such as 9, 010 or 5.5");
    case FaultReason::ceilingBelowSet:
        return PlanWords::tr("must be at least the set point");
    case FaultReason::highNotAboveLow:
        return PlanWords::tr("must be above the low");
    }
    return {};
}

/// What the cell is called that a key names.
QString cellWords(const Plan& plan, const PlanFault& fault) {
    if (!fault.step)
        return {};
    Step step = plan.steps[*fault.step];
    const auto column = columnOf(step, fault.key);
    return column ? QString::fromUtf8(cellOf(step, *column)->words) + QStringLiteral(": ") : QString();
}

} // namespace

std::vector<ToldFault> toldFaults(const Plan& plan, ConeType cones, const Preferences& preferences) {
    std::vector<ToldFault> told;
    for (const auto& fault : faultsOf(plan))
        told.push_back(
            {fault.step, fault.key, cellWords(plan, fault) + reasonWords(fault, preferences), true});
    if (!told.empty())
        return told;
    for (std::size_t i = 0; i < plan.steps.size(); ++i) {
        const auto* wait = std::get_if<ConeWait>(&plan.steps[i]);
        if (!wait || ConeTable::builtIn().find(wait->cone, cones))
            continue;
        const auto series = name(cones);
        told.push_back({i, "cone",
                        PlanWords::tr("cone: there is no %1 cone %2 in the chart, so that nothing tells "
                                      "when it will be down")
                            .arg(QString::fromUtf8(series.data(), static_cast<qsizetype>(series.size())),
                                 QString::fromStdString(wait->cone)),
                        false});
    }
    return told;
}

QString withItsStep(const ToldFault& fault) {
    return fault.step ? PlanWords::tr("Step %1, %2").arg(*fault.step + 1).arg(fault.words) : fault.words;
}

} // namespace ringhold
