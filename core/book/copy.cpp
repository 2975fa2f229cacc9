#include "core/book/copy.h"

#include "core/book/book.h"
#include "core/book/files.h"
#include "core/book/sql.h"

#include <SQLiteCpp/Backup.h>
#include <sqlite3.h>

namespace ringhold {

namespace fs = std::filesystem;

namespace {

/// Copies page by page; a writer at work meanwhile makes it begin again, not mix old and new.
void copyPages(SQLite::Database& source, SQLite::Database& target) {
    SQLite::Backup backup(target, source);
    while (true) {
        const int result = backup.executeStep(-1);
        if (result == SQLITE_DONE)
            return;
        if (result != SQLITE_OK)
            throw SQLite::Exception("the book is in use", result);
    }
}

} // namespace

Status copyBook(const fs::path& from, const fs::path& to) {
    auto book = Book::open(from, Access::read);
    if (!book)
        return book.error();
    return copyDatabase(book->database(), to);
}

Status copyDatabase(SQLite::Database& source, const fs::path& to) {
    std::error_code ignored;
    if (fs::exists(fs::symlink_status(to, ignored)))
        return Error{ErrorKind::badInput, "there is such a file already", to.string()};
    if (Status fine = checkNewName(to); !fine)
        return fine;
    return sql::guarded(to, [&]() -> Status {
        PartFile part(to);
        {
            SQLite::Database target(part.path(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
            copyPages(source, target);
            const std::string fault = target.execAndGet("PRAGMA integrity_check(1)").getString();
            if (fault != "ok")
                return Error{ErrorKind::unreadable, "the book is damaged, and so would be its copy: " + fault,
                             to.string()};
        }
        return part.publishAs(to);
    });
}

} // namespace ringhold
