// A blank log for the kiln's side, ruled to be filled in with a pencil when there is no mains and no screen.
#pragma once

#include "ui/report/page_flow.h"

#include <QStringList>

#include <vector>

namespace ringhold {

/// What the plan wants, for the margin.
struct SheetTime {
    QString when; ///< "21:14", or "+ 3 h 31" after lighting
    QString what; ///< "1 262 °C, cone 10"
};

struct LogSheet {
    QString title;     ///< "Firing 23, Heron"; empty leaves a line to write on
    QString summary;   ///< soft words beneath it
    QString unit;      ///< of the reading's column, "°C"
    QStringList cones; ///< of the packs, for the look's column
    std::vector<SheetTime> plan;
};

/// Two sides: the front has the plan's times in its margin. Columns: time, reading, setting, look, note.
PageDocument layOutLogSheet(const LogSheet& sheet, Paper paper);

} // namespace ringhold
