// What is typed into a cell of the ware table, made a value of its record. No widget, no book.
#pragma once

#include "core/firing/records.h"
#include "ui/ware/ware_columns.h"

#include <QVariant>

namespace ringhold {

/// A piece and what became of it.
struct WareRow {
    Piece piece;
    Outcome outcome;
};

/// What a cell says; empty for a tick.
QString cellText(const WareRow& row, WareColumn column);

/// The colour picked for it, "#rrggbb"; empty for none and in any other column.
std::string pickedColour(const WareRow& row, WareColumn column);
void pickColour(const std::string& colour, WareColumn column, WareRow& row);

/// Whether all that the table can show of the two is the same.
bool sameWare(const WareRow& row, const WareRow& other);

/// Puts a value into its field: texts, ticks (bool), crystals by their number (0 none to 3 covered) or word;
/// an empty text takes a value away. Gives what is wrong with it, and then changes nothing; empty when all is
/// well.
QString putIntoCell(const QVariant& value, WareColumn column, WareRow& row);

/// "clean" or "not clean".
QString cleanWords(bool clean);

} // namespace ringhold
