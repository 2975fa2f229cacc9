// The columns of the ware table, and which of them are on which sheet.
#pragma once

#include <QString>

#include <vector>

namespace ringhold {

enum class WareColumn {
    piece,
    form,
    clay,
    glaze,
    application,
    shelf,
    catcher,
    sagger,
    crystals,
    largest,
    typical,
    rings,
    crystalColour,
    groundColour,
    runOff,
    catcherClean,
    faults,
    grade,
    note,
    photos
};
inline constexpr int wareColumns = 20;
/// The columns before are how a piece is set, those from here on what came out.
inline constexpr WareColumn firstOutcomeColumn = WareColumn::crystals;
inline constexpr WareColumn lastTypedColumn = WareColumn::note;

enum class WareSheet {
    load,    ///< what goes into the kiln
    outcome, ///< what came out
    past     ///< both in short, to be read
};

/// From left to right.
const std::vector<WareColumn>& columnsOf(WareSheet sheet);

QString headingOf(WareColumn column);
/// How the column is filled in; empty where its heading says all.
QString hintOf(WareColumn column);

bool isTick(WareColumn column);
bool isFigure(WareColumn column);
/// Whether what other pieces say there completes what is typed.
bool isRepeated(WareColumn column);

} // namespace ringhold
