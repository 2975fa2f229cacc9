// A firing read with all that belongs to it, for core/book alone. All throw as rows.h says.
#pragma once

#include "core/book/reader.h"
#include "core/book/sql.h"

namespace ringhold {

FiringRecord firingWithoutReadings(SQLite::Database& database, const Firing& firing, Pictures pictures);
FiringRecord wholeFiring(SQLite::Database& database, const Firing& firing, Pictures pictures);

/// With their cones.
std::vector<Pack> packsOf(SQLite::Database& database, FiringId firing);
/// With their known faults.
std::vector<Outcome> outcomesOf(SQLite::Database& database, FiringId firing);
/// Reads the habits and the recipe of a card.
void fillIn(SQLite::Database& database, GlazeCard& card);

} // namespace ringhold
