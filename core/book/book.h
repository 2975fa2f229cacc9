// The book: one SQLite file, one notebook. Here it is opened; BookReader and BookWriter work on an open one.
#pragma once

#include "core/base/result.h"

#include <chrono>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>

namespace SQLite {
class Database;
}

namespace ringhold {

/// What a book's file name ends in unless the potter says otherwise.
inline constexpr std::string_view bookExtension = ".ringhold";

enum class Access {
    read,  ///< only reads. Makes no file, works on a read-only disk and leaves an older book as it is
    write, ///< an existing book; an older one is upgraded, its backup beside it
    create ///< the same, or a new book where there is none
};

/// An open book. One thread at a time; other threads and programs open the same file for themselves. Opened
/// for writing, every commit is on the disk when it returns (WAL and synchronous FULL, both read back).
class Book {
  public:
    /// Waits at most `busyTimeout` in every later call for another program that holds the book.
    ///
    /// notFound: no such file, or no folder for a new one. badInput: a folder, a device. unreadable: no
    /// permission, damaged. foreign: no book, some other program's database, a newer book; it is left
    /// untouched. unwritable: read-only file, folder or disk, disk full. failed: the disk cannot keep a book
    /// safely, or another program holds it.
    static Result<Book> open(const std::filesystem::path& file, Access access,
                             std::chrono::milliseconds busyTimeout = std::chrono::seconds(5));

    Book(Book&&) noexcept;
    Book& operator=(Book&&) noexcept;
    ~Book();

    const std::filesystem::path& file() const;
    /// Opened with Access::read.
    bool readOnly() const;
    /// The old book's copy, when opening upgraded it; else empty.
    const std::filesystem::path& backup() const;
    /// Random, given to the notebook when it was made; its copies have the same.
    std::string id() const;
    /// Whether the open file is still the one of that name. A book moved or deleted meanwhile takes commits
    /// that nobody will find again.
    bool inPlace() const;

    /// The connection, for core/book alone.
    SQLite::Database& database() const;

  private:
    struct Parts;
    explicit Book(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> m_parts;
};

} // namespace ringhold
