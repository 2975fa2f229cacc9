#include "core/book/schema.h"

#include "core/book/copy.h"
#include "core/book/files.h"
#include "core/book/sql.h"

namespace ringhold {

namespace fs = std::filesystem;

namespace {

/// A name for the backup of this version that no file has yet: "kiln.v1.ringhold", "kiln.v1-2.ringhold".
fs::path backupName(const fs::path& book, int version, int attempt) {
    fs::path name = book.stem();
    name += ".v" + std::to_string(version);
    if (attempt > 1)
        name += "-" + std::to_string(attempt);
    name += book.extension();
    return folderOf(book) / name;
}

/// Saves the book as it is on disk now. Reads through a connection of its own, so that a transaction which
/// the upgrade has begun is not in it.
Result<fs::path> saveOldBook(const fs::path& file, int version) {
    SQLite::Database old(file, SQLite::OPEN_READONLY);
    for (int attempt = 1;; ++attempt) {
        const fs::path name = backupName(file, version, attempt);
        std::error_code ignored;
        if (fs::exists(fs::symlink_status(name, ignored)))
            continue;
        if (const Status copied = copyDatabase(old, name); copied)
            return name;
        else if (copied.error().kind != ErrorKind::badInput)
            return copied.error();
    }
}

class ForeignKeysOff {
  public:
    explicit ForeignKeysOff(SQLite::Database& database) : m_database(database) {
        m_database.exec("PRAGMA foreign_keys = OFF");
    }
    ~ForeignKeysOff() { m_database.tryExec("PRAGMA foreign_keys = ON"); }
    ForeignKeysOff(const ForeignKeysOff&) = delete;
    ForeignKeysOff& operator=(const ForeignKeysOff&) = delete;

  private:
    SQLite::Database& m_database;
};

/// One step in one transaction. The version is looked at again inside it: another program may have been
/// first.
void takeStep(SQLite::Database& database, std::span<const Migration> steps, const fs::path& file,
              Backup backup, SchemaOutcome& outcome) {
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    const int version = schemaVersion(database);
    if (version >= static_cast<int>(steps.size())) {
        outcome.to = version;
        return;
    }
    if (outcome.from > 0 && backup == Backup::make && !outcome.backup) {
        auto saved = saveOldBook(file, version);
        if (!saved) {
            outcome.error = saved.error();
            return;
        }
        outcome.backup = *saved;
    }
    database.exec(steps[static_cast<std::size_t>(version)].sql);
    if (SQLite::Statement(database, "PRAGMA foreign_key_check").executeStep()) {
        outcome.error = Error{ErrorKind::failed, "the book does not fit its new form", file.string()};
        return;
    }
    database.exec("PRAGMA application_id = " + std::to_string(bookApplicationId));
    database.exec("PRAGMA user_version = " + std::to_string(version + 1));
    transaction.commit();
    outcome.to = version + 1;
}

void takeSteps(SQLite::Database& database, std::span<const Migration> steps, const fs::path& file,
               Backup backup, SchemaOutcome& outcome) {
    const ForeignKeysOff off(database);
    while (!outcome.error && outcome.to < static_cast<int>(steps.size()))
        takeStep(database, steps, file, backup, outcome);
}

} // namespace

int schemaVersion(SQLite::Database& database) {
    return static_cast<int>(sql::number(database, "PRAGMA user_version"));
}

Error refusal(BookKind kind, const fs::path& file) {
    switch (kind) {
    case BookKind::newer:
        return {ErrorKind::foreign, "this book was written by a newer Ringhold", file.string()};
    case BookKind::foreign:
        return {ErrorKind::foreign, "this is the database of some other program, no book", file.string()};
    default:
        return {ErrorKind::foreign, "this is no book", file.string()};
    }
}

BookKind identify(SQLite::Database& database, int newestVersion) {
    const auto application = sql::number(database, "PRAGMA application_id");
    const int version = schemaVersion(database);
    if (application == bookApplicationId && version > 0)
        return version > newestVersion ? BookKind::newer : BookKind::book;
    const bool empty = sql::number(database, "SELECT count(*) FROM sqlite_schema") == 0;
    return application == 0 && version == 0 && empty ? BookKind::fresh : BookKind::foreign;
}

SchemaOutcome bringUpToDate(SQLite::Database& database, const fs::path& file, Backup backup,
                            std::span<const Migration> steps) {
    SchemaOutcome outcome;
    const Status done = sql::guarded(file, [&]() -> Status {
        const BookKind kind = identify(database, static_cast<int>(steps.size()));
        outcome.from = outcome.to = schemaVersion(database);
        if (kind == BookKind::newer || kind == BookKind::foreign) {
            outcome.result = kind == BookKind::newer ? SchemaResult::newer : SchemaResult::foreign;
            return refusal(kind, file);
        }
        takeSteps(database, steps, file, backup, outcome);
        if (outcome.error)
            return {};
        outcome.result = outcome.to == outcome.from ? SchemaResult::current
                         : outcome.from == 0        ? SchemaResult::created
                                                    : SchemaResult::upgraded;
        return {};
    });
    if (!done)
        outcome.error = done.error();
    return outcome;
}

} // namespace ringhold
