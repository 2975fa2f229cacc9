// How the file of a book is opened, for Book alone.
#pragma once

#include "core/book/files.h"
#include "core/book/schema.h"

#include <chrono>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>

namespace ringhold {

/// A connection, with what has to live as long as it does.
struct OpenBook {
    std::optional<PrivateFolder> scratch; ///< goes after the connection
    std::unique_ptr<SQLite::Database> database;
    std::filesystem::path backup;
};

/// Refuses what is no plain file that may be read; says nothing of what is in it.
Status checkBookFile(const std::filesystem::path& file);

/// The id of the book in that file, without touching it or any file beside it: also when it is another book
/// than was thought.
Result<std::string> idOfBook(const std::filesystem::path& file);

/// Makes a new book, whole or not at all. When another program is making it at the same time, theirs stays.
Status makeBook(const std::filesystem::path& file, std::chrono::milliseconds busyTimeout);

/// Opens an existing file for writing and brings it up to date.
Result<OpenBook> openToWrite(const std::filesystem::path& file, std::chrono::milliseconds busyTimeout,
                             std::span<const Migration> steps = migrations());

/// Opens an existing book so that neither it nor its folder is changed. Where SQLite cannot read it in place
/// (a crashed book on a read-only disk) or the book is of an older version, works on a private copy. On a
/// read-only disk no other program is expected to write the file meanwhile.
Result<OpenBook> openToRead(const std::filesystem::path& file, std::chrono::milliseconds busyTimeout,
                            std::span<const Migration> steps = migrations());

} // namespace ringhold
