#include "ui/plan/step_heads.h"

#include "ui/plan/plan_words.h"

namespace ringhold {

Qt::Alignment alignmentOf(StepColumn column) {
    const bool isWord = column == StepColumn::kind || column == StepColumn::which;
    return Qt::AlignVCenter | (isWord ? Qt::AlignLeft : Qt::AlignRight);
}

QString headOf(StepColumn column, const QString& unit) {
    switch (column) {
    case StepColumn::kind:
        return PlanWords::tr("Step");
    case StepColumn::which:
        return PlanWords::tr("Of");
    case StepColumn::temperature:
        return unit;
    case StepColumn::rate:
        return unit + QStringLiteral("/h");
    case StepColumn::time:
        return PlanWords::tr("Time");
    case StepColumn::limit:
        return PlanWords::tr("Limit");
    case StepColumn::lowTime:
        return PlanWords::tr("At low");
    case StepColumn::takes:
        return PlanWords::tr("Takes");
    }
    return {};
}

QString headInWords(StepColumn column) {
    switch (column) {
    case StepColumn::kind:
        return PlanWords::tr("What the kiln does in this step");
    case StepColumn::which:
        return PlanWords::tr("The cone that is waited for, or how many rings");
    case StepColumn::temperature:
        return PlanWords::tr("The temperature that the step goes to or holds, by this probe; of rings the "
                             "high one");
    case StepColumn::rate:
        return PlanWords::tr("How fast; full is as fast as the kiln goes by itself");
    case StepColumn::time:
        return PlanWords::tr("How long a hold lasts, a cone wait soaks at the most, rings stay at the high");
    case StepColumn::limit:
        return PlanWords::tr("The band of a hold, the ceiling of a cone wait, the low of rings");
    case StepColumn::lowTime:
        return PlanWords::tr("How long rings stay at the low");
    case StepColumn::takes:
        return PlanWords::tr("How long the step takes as reckoned; not part of the plan");
    }
    return {};
}

} // namespace ringhold
