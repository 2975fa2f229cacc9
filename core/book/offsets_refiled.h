// Filing a firing's offsets anew, after looks of a past firing were read, struck or restored.
#pragma once

#include "core/base/result.h"
#include "core/firing/records.h"

#include <vector>

namespace ringhold {

class Book;

/// What the firing's looks tell now, instead of all that was filed from it before; gives what is filed. All
/// of it or nothing is written. Errors are those of BookWriter.
Result<std::vector<FiledOffset>> refileOffsets(const Book& book, FiringId firing);

} // namespace ringhold
