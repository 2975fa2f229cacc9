#include "core/book/open.h"

#include "core/book/copy.h"
#include "core/book/sql.h"

#include <sqlite3.h>

namespace ringhold {

namespace fs = std::filesystem;

namespace {

using std::chrono::milliseconds;
using Steps = std::span<const Migration>;

int newest(Steps steps) {
    return static_cast<int>(steps.size());
}

std::unique_ptr<SQLite::Database> connect(const std::string& name, int flags, milliseconds busyTimeout) {
    return std::make_unique<SQLite::Database>(name, flags, static_cast<int>(busyTimeout.count()));
}

/// Sets a pragma and reads it back: SQLite does not complain about one that it cannot honour.
Status demand(SQLite::Database& database, const fs::path& file, const std::string& pragma,
              const std::string& setting, const std::string& readBack) {
    {
        SQLite::Statement set(database, "PRAGMA " + pragma + " = " + setting);
        while (set.executeStep()) {
        }
    }
    const auto now = database.execAndGet("PRAGMA " + pragma).getString();
    if (now == readBack)
        return {};
    return Error{ErrorKind::failed, "this disk cannot keep a book safely (" + pragma + " stays " + now + ")",
                 file.string()};
}

Status demandSafety(SQLite::Database& database, const fs::path& file) {
    struct Pragma {
        const char* name;
        const char* setting;
        const char* readBack;
    };
    for (const auto& pragma : {Pragma{"journal_mode", "WAL", "wal"}, Pragma{"synchronous", "FULL", "2"},
                               Pragma{"foreign_keys", "ON", "1"}, Pragma{"trusted_schema", "OFF", "0"}})
        if (Status set = demand(database, file, pragma.name, pragma.setting, pragma.readBack); !set)
            return set;
    return {};
}

/// Makes an empty or older database a book of the newest version, safely kept.
Result<fs::path> prepare(SQLite::Database& database, const fs::path& file, Backup backup, Steps steps) {
    const BookKind kind = identify(database, newest(steps));
    if (kind == BookKind::newer || kind == BookKind::foreign)
        return refusal(kind, file);
    if (sqlite3_db_readonly(database.getHandle(), "main") != 0)
        return Error{ErrorKind::unwritable, "the book is read-only", file.string()};
    if (const Status safe = demandSafety(database, file); !safe)
        return safe.error();
    auto outcome = bringUpToDate(database, file, backup, steps);
    if (outcome.error)
        return *outcome.error;
    return outcome.backup.value_or(fs::path());
}

/// For SQLite's URI file names.
std::string percentEncoded(const std::string& path) {
    static constexpr char digits[] = "0123456789ABCDEF";
    std::string text;
    for (const char c : path) {
        const auto byte = static_cast<unsigned char>(c);
        if (std::isalnum(byte) || c == '/' || c == '.' || c == '-' || c == '_')
            text += c;
        else
            text += {'%', digits[byte >> 4], digits[byte & 15]};
    }
    return text;
}

std::unique_ptr<SQLite::Database> connectUnseen(const fs::path& file, milliseconds busyTimeout) {
    const std::string uri = "file:" + percentEncoded(fs::absolute(file).string()) + "?immutable=1";
    return connect(uri, SQLite::OPEN_READONLY | SQLite::OPEN_URI, busyTimeout);
}

/// Reads once, so that what SQLite cannot do shows now.
void tryToRead(SQLite::Database& database) {
    database.execAndGet("SELECT count(*) FROM sqlite_schema");
}

/// The book copied with its log of late commits: a read-only disk lets SQLite make no index for that log.
void readFromCopy(OpenBook& open, const fs::path& file, milliseconds busyTimeout) {
    auto folder = PrivateFolder::make();
    if (!folder)
        throw SQLite::Exception(folder.error().text(), SQLITE_CANTOPEN);
    const fs::path copy = folder->path() / "book";
    fs::copy_file(file, copy);
    fs::copy_file(sideFile(file, "-wal"), sideFile(copy, "-wal"));
    open.scratch = std::move(*folder);
    open.database = connect(copy.string(), SQLite::OPEN_READWRITE, busyTimeout);
}

/// Whether SQLite will find room for the files that it needs beside a book while it reads.
bool hasRoomBeside(const fs::path& file) {
    std::error_code failure;
    const auto space = fs::space(folderOf(file), failure);
    return mayWrite(file) && mayWrite(folderOf(file)) && (failure || space.available >= 65536);
}

/// Whether this comes of a place where SQLite cannot make the files that it needs beside a book.
bool isLackOfRoom(const SQLite::Exception& e) {
    const int code = e.getErrorCode();
    return code == SQLITE_CANTOPEN || code == SQLITE_READONLY || code == SQLITE_FULL || code == SQLITE_IOERR;
}

/// Connects in that way, unless there is no room for it.
bool connectsToRead(OpenBook& open, const fs::path& file, int flags, milliseconds busyTimeout) {
    try {
        open.database = connect(file.string(), flags, busyTimeout);
        tryToRead(*open.database);
        return true;
    } catch (const SQLite::Exception& e) {
        if (!isLackOfRoom(e))
            throw;
        return false;
    }
}

/// A connection that reads, by the way that leaves no trace: a writable place lets SQLite tidy up after
/// itself; elsewhere a book without late commits is read as it stands.
void connectToRead(OpenBook& open, const fs::path& file, milliseconds busyTimeout) {
    if (hasRoomBeside(file) && connectsToRead(open, file, SQLite::OPEN_READWRITE, busyTimeout))
        return;
    if (!hasContent(sideFile(file, "-wal")))
        open.database = connectUnseen(file, busyTimeout);
    else if (!connectsToRead(open, file, SQLite::OPEN_READONLY, busyTimeout))
        readFromCopy(open, file, busyTimeout);
}

/// An older book is read from a copy of today's form.
Status readUpgradedCopy(OpenBook& open, const fs::path& file, milliseconds busyTimeout, Steps steps) {
    auto folder = PrivateFolder::make();
    if (!folder)
        return folder.error();
    const fs::path copy = folder->path() / "upgraded";
    if (Status copied = copyDatabase(*open.database, copy); !copied)
        return copied;
    open.database = connect(copy.string(), SQLite::OPEN_READWRITE, busyTimeout);
    open.scratch = std::move(*folder);
    const auto outcome = bringUpToDate(*open.database, file, Backup::none, steps);
    return outcome.error ? Status(*outcome.error) : Status();
}

} // namespace

Status checkBookFile(const fs::path& file) {
    std::error_code failure;
    const auto status = fs::status(file, failure);
    switch (status.type()) {
    case fs::file_type::regular:
        break;
    case fs::file_type::not_found:
        return Error{ErrorKind::notFound, "there is no such book", file.string()};
    case fs::file_type::directory:
        return Error{ErrorKind::badInput, "this is a folder, no book", file.string()};
    case fs::file_type::none:
    case fs::file_type::unknown:
        return Error{ErrorKind::unreadable, "the book cannot be reached (" + failure.message() + ")",
                     file.string()};
    default:
        return Error{ErrorKind::badInput, "this is no plain file, no book", file.string()};
    }
    if (!mayRead(file))
        return Error{ErrorKind::unreadable, "the book may not be read", file.string()};
    return {};
}

Result<std::string> idOfBook(const fs::path& file) {
    if (const Status fine = checkBookFile(file); !fine)
        return fine.error();
    return sql::guarded(file, [&]() -> Result<std::string> {
        const auto database = connectUnseen(file, milliseconds(0));
        return database->execAndGet(bookIdQuery).getString();
    });
}

Status makeBook(const fs::path& file, milliseconds busyTimeout) {
    if (Status fine = checkNewName(file); !fine)
        return fine;
    return sql::guarded(file, [&]() -> Status {
        PartFile part(file);
        {
            const auto database =
                connect(part.path().string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, busyTimeout);
            if (const auto prepared = prepare(*database, part.path(), Backup::none, migrations()); !prepared)
                return Error{prepared.error().kind, prepared.error().what, file.string()};
        }
        const Status published = part.publishAs(file);
        return published || published.error().kind != ErrorKind::badInput ? published : Status();
    });
}

Result<OpenBook> openToWrite(const fs::path& file, milliseconds busyTimeout, Steps steps) {
    return sql::guarded(file, [&]() -> Result<OpenBook> {
        OpenBook open;
        open.database = connect(file.string(), SQLite::OPEN_READWRITE, busyTimeout);
        auto backup = prepare(*open.database, file, Backup::make, steps);
        if (!backup)
            return backup.error();
        open.backup = std::move(*backup);
        return open;
    });
}

Result<OpenBook> openToRead(const fs::path& file, milliseconds busyTimeout, Steps steps) {
    return sql::guarded(file, [&]() -> Result<OpenBook> {
        OpenBook open;
        connectToRead(open, file, busyTimeout);
        const BookKind kind = identify(*open.database, newest(steps));
        if (kind != BookKind::book)
            return refusal(kind, file);
        tryToRead(*open.database);
        if (schemaVersion(*open.database) < newest(steps))
            if (const Status read = readUpgradedCopy(open, file, busyTimeout, steps); !read)
                return read.error();
        open.database->exec("PRAGMA query_only = ON");
        open.database->exec("PRAGMA trusted_schema = OFF");
        return open;
    });
}

} // namespace ringhold
