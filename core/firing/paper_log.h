// A log kept on paper while there was no other, typed in later: rows of a clock time, a reading and a line.
#pragma once

#include "core/firing/written_line.h"

#include <span>
#include <string>
#include <vector>

namespace ringhold {

/// A row as it was typed; cells may be empty.
struct PaperRow {
    std::string time;    ///< "21:14"
    std::string reading; ///< "1076", "1076 C", "1969 °F"
    std::string line;    ///< a note, a setting or looks, as on the writing line
};

struct PaperContext {
    Instant from;  ///< no row lies before it: the beginning of the firing
    Instant until; ///< none lies after it: now, or when a past firing had long ended
    std::string zone = "UTC";
    bool fahrenheit = false; ///< of a figure without its unit
    std::vector<std::string> cones;
};

/// A row as it is understood.
struct PaperRowRead {
    std::vector<WrittenLine> lines; ///< none for an empty row or one with a fault
    std::optional<Instant> at;
    std::string fault; ///< in plain words; empty where there is none
};

/// One entry for each row. Times go down the sheet: one that is earlier on the clock than the row above is of
/// the next day. A row without a time is of the same time as the one above.
std::vector<PaperRowRead> readPaperLog(std::span<const PaperRow> rows, const PaperContext& context);

} // namespace ringhold
