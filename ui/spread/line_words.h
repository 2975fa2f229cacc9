// What a line that is being written will be, in a few words.
#pragma once

#include "core/firing/records.h"
#include "core/firing/written_line.h"

#include <QString>

namespace ringhold {

class Preferences;

/// "look: 9 at 3 o’clock, at 18:03 · Enter". A hold and a meter's stand are told as they are understood, or
/// that they are not.
QString describedLine(const WrittenLine& line, const Preferences& preferences, Fuel fuel);

/// The line as it is to be kept: a hold that was written without a unit has the one that was meant.
WrittenLine withUnit(WrittenLine line, const Preferences& preferences);

} // namespace ringhold
