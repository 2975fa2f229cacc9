// Small words about cells that reader and writer of CSV share.
#pragma once

#include <string>
#include <string_view>

namespace ringhold {

/// Without blanks, tabs and no-break spaces at its ends.
std::string_view trimmedCell(std::string_view cell);

/// In quotation marks, on one line and not too long, as errors show a cell.
std::string shownCell(std::string_view cell);

/// True for a cell that a spreadsheet would run as a formula: it begins with = + - @, a tab or carriage
/// return.
bool looksLikeFormula(std::string_view cell);

/// A text as a CSV cell that no spreadsheet runs: an apostrophe before what looks like a formula or has one
/// already, quotes after RFC 4180 where needed.
std::string textCell(std::string_view text);

/// The text that textCell() made the (unquoted) cell from.
std::string_view plainText(std::string_view cell);

} // namespace ringhold
