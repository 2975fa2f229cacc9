#include "core/book/book.h"

#include "core/book/open.h"
#include "core/book/sql.h"

#include <sqlite3.h>

namespace ringhold {

namespace fs = std::filesystem;

struct Book::Parts {
    fs::path file;
    bool readOnly = false;
    OpenBook open;
};

Book::Book(std::unique_ptr<Parts> parts) : m_parts(std::move(parts)) {}
Book::Book(Book&&) noexcept = default;
Book& Book::operator=(Book&&) noexcept = default;
Book::~Book() = default;

Result<Book> Book::open(const fs::path& file, Access access, std::chrono::milliseconds busyTimeout) {
    std::error_code ignored;
    if (access == Access::create && !fs::exists(fs::symlink_status(file, ignored)))
        if (const Status made = makeBook(file, busyTimeout); !made)
            return made.error();
    if (const Status fine = checkBookFile(file); !fine)
        return fine.error();
    const bool readOnly = access == Access::read;
    auto open = readOnly ? openToRead(file, busyTimeout) : openToWrite(file, busyTimeout);
    if (!open)
        return open.error();
    return Book(std::make_unique<Parts>(Parts{file, readOnly, std::move(*open)}));
}

const fs::path& Book::file() const {
    return m_parts->file;
}

bool Book::readOnly() const {
    return m_parts->readOnly;
}

const fs::path& Book::backup() const {
    return m_parts->open.backup;
}

std::string Book::id() const {
    const auto id = sql::guarded(
        file(), [&]() -> Result<std::string> { return database().execAndGet(bookIdQuery).getString(); });
    return id ? *id : std::string();
}

bool Book::inPlace() const {
    int moved = 0;
    const int result = sqlite3_file_control(database().getHandle(), "main", SQLITE_FCNTL_HAS_MOVED, &moved);
    return result == SQLITE_OK && moved == 0;
}

SQLite::Database& Book::database() const {
    return *m_parts->open.database;
}

} // namespace ringhold
