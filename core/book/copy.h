// A book handed on as one file.
#pragma once

#include "core/base/result.h"

#include <filesystem>

namespace SQLite {
class Database;
}

namespace ringhold {

/// Copies a book, also one that is being written, to a new file: complete, checked page by page and on the
/// disk, or not there at all. badInput when `to` exists, notFound when `from` or the folder of `to` does not,
/// foreign when `from` is no book, unreadable when it is damaged, unwritable when there is no room.
Status copyBook(const std::filesystem::path& from, const std::filesystem::path& to);

/// The same for an open database whatever its version, for core/book alone.
Status copyDatabase(SQLite::Database& source, const std::filesystem::path& to);

} // namespace ringhold
