// The form of a text line from an instrument: numbers with their units and labels. What they mean is the line
// decoder's business.
#pragma once

#include "core/instrument/line_format.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace ringhold {

enum class LineUnit { none, celsius, fahrenheit, millivolts, volts, amps };

struct LineField {
    std::string label;            ///< "T1" of "T1=1043.2C"; empty when there is none
    std::optional<double> number; ///< finite; nothing for the word "open"
    LineUnit unit = LineUnit::none;
};

/// The fields of a line, at least one, separated by comma, semicolon, tab or spaces. A field is
/// [label =|:] number [unit], or [label =|:] open. A label begins with a letter and may have words, digits
/// and _ - . / #. The degree sign may be UTF-8, Latin-1 or "deg". A comma between two digits is a decimal
/// comma, unless the number has a point already; read automatically, the line has no clear form when that
/// comma could as well group thousands ("1,043 C") or part two values ("1043,25"), or when points and commas
/// are mixed. Nothing for any line that is not wholly of this form.
std::optional<std::vector<LineField>> fieldsOf(std::string_view line, DecimalMark mark);

/// The unit that a word names ("C", "°F", "mV"), either case; nothing for any other text.
std::optional<LineUnit> lineUnitNamed(std::string_view word);

} // namespace ringhold
