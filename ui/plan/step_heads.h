// The columns of a plan's table by their heads.
#pragma once

#include "ui/plan/step_cells.h"

namespace ringhold {

/// Words to the left, figures to the right.
Qt::Alignment alignmentOf(StepColumn column);
/// In short, over the column; `unit` as in "°C".
QString headOf(StepColumn column, const QString& unit);
/// In a sentence, for the tool tip and for who does not see the table.
QString headInWords(StepColumn column);

} // namespace ringhold
