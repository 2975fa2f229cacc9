// Whether a book is whole.
#pragma once

#include "core/base/result.h"

#include <filesystem>
#include <string>
#include <vector>

namespace ringhold {

enum class FindingKind {
    damage, ///< pages or lines that SQLite cannot make sense of
    form,   ///< tables, indexes or triggers are not those of a book of this version
    orphan, ///< a line that belongs to something that is not there
    sum,    ///< a stored sum does not fit the lines that it sums up
    sense   ///< lines that contradict one another or cannot be read
};

struct Finding {
    FindingKind kind = FindingKind::damage;
    std::string what; ///< in plain words, one line
};

/// "damage", "form" ...
std::string_view name(FindingKind kind);

/// All that is wrong with a book, nothing when it is whole. Only reads. An Error when there is no book to be
/// checked: see Book::open with Access::read; a book too damaged to be opened is a finding.
Result<std::vector<Finding>> checkBook(const std::filesystem::path& file);

} // namespace ringhold
