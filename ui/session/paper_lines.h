// Lines of a paper log written into a firing, whether it is live or long over.
#pragma once

#include "core/firing/paper_log.h"
#include "core/firing/records.h"

#include <span>

namespace ringhold {

class Notebook;

/// What is needed to read a paper log of that firing: until now for a live one, until a day after its end
/// for another. Errors as of BookReader.
Result<PaperContext> paperContext(Notebook& notebook, FiringId firing);

/// Writes the lines as lines by hand at their time; a look goes to the first pack that has its cone. Gives
/// how many were written; stops at the first that cannot be. Tells the notebook.
struct PaperWritten {
    std::size_t lines = 0;
    Status trouble; ///< of the line after them
};
PaperWritten writePaperLines(Notebook& notebook, FiringId firing, std::span<const WrittenLine> lines);

} // namespace ringhold
