// What is typed into a cell of the ware table, made a value of its record. No widget, no book.
#pragma once

#include "ui/ware/ware_model.h"

#include <QVariant>

namespace ringhold {

/// "none", "few", "many", "covered".
QString crystalsWords(Crystals crystals);

/// Whether anything is known of what came out.
bool isJudged(const Outcome& outcome);

/// What a cell says; empty for a tick.
QString cellText(const Piece& piece, const Outcome& outcome, WareColumn column);

/// Whether all cells of the two are the same.
bool sameCells(const Piece& piece, const Outcome& outcome, const Piece& other, const Outcome& otherOutcome);

/// Puts a value into its field: texts, ticks (bool), crystals by their number (0 none to 3 covered) or word;
/// an empty text takes a value away. Gives what is wrong with it, and then changes nothing; empty when all is
/// well.
QString putIntoCell(const QVariant& value, WareColumn column, Piece& piece, Outcome& outcome);

} // namespace ringhold
