// The form of the book and how it grows: numbered steps, forward only, each in one transaction.
#pragma once

#include "core/base/result.h"

#include <filesystem>
#include <optional>
#include <span>

namespace SQLite {
class Database;
}

namespace ringhold {

/// Marks an SQLite file as a book: "RgBk".
inline constexpr int bookApplicationId = 0x5267426B;

/// Gives the id that a book was made with.
inline constexpr const char* bookIdQuery = "SELECT value FROM preference WHERE name = 'book_id'";

/// One step from version n - 1 to n, where n is its place in the list counted from 1.
struct Migration {
    const char* sql;
};

/// All steps that this program knows. Steps that a released program has run are never changed.
std::span<const Migration> migrations();

enum class BookKind {
    fresh,  ///< an SQLite file with nothing in it
    book,   ///< a book that this program understands, perhaps after migration
    newer,  ///< a book of a version that this program does not know
    foreign ///< the database of some other program
};

/// What an open database is. Changes nothing; throws SQLite::Exception, NOTADB among them.
BookKind identify(SQLite::Database& database, int newestVersion);

/// The version that an open book is of.
int schemaVersion(SQLite::Database& database);

/// Why a file of that kind is not opened (ErrorKind::foreign).
Error refusal(BookKind kind, const std::filesystem::path& file);

enum class SchemaResult {
    current,  ///< nothing was to be done
    created,  ///< the file was empty and is a book now
    upgraded, ///< an older book, now of the newest version
    newer,    ///< refused, untouched
    foreign,  ///< refused, untouched
    failed    ///< see SchemaOutcome::error; the book is as it was after the last step that succeeded
};

struct SchemaOutcome {
    SchemaResult result = SchemaResult::failed;
    int from = 0;                                ///< version found
    int to = 0;                                  ///< version left behind
    std::optional<std::filesystem::path> backup; ///< made before an upgrade
    std::optional<Error> error;                  ///< unless current, created or upgraded
};

/// Whether an upgrade first saves the old book beside the new one, as "name.v1.ringhold" after the old
/// version, or the next free name of that kind.
enum class Backup { make, none };

/// Brings an open, writable book to the newest version. Safe against other programs that do the same at the
/// same time. Foreign keys are off while a step runs and checked before it is committed. Never throws.
SchemaOutcome bringUpToDate(SQLite::Database& database, const std::filesystem::path& file, Backup backup,
                            std::span<const Migration> steps = migrations());

} // namespace ringhold
