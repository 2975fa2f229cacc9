// Helpers of the book's tests: a folder of their own, a user without rights, what a file holds.
#pragma once

#include "core/book/book.h"
#include "core/book/sql.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

namespace ringhold::test {

namespace fs = std::filesystem;

/// Open to everybody, gone with the object.
class BookFolder {
  public:
    BookFolder() {
        std::string pattern = (fs::temp_directory_path() / "book-test-XXXXXX").string();
        m_path = ::mkdtemp(pattern.data());
        fs::permissions(m_path, fs::perms::all);
    }
    ~BookFolder() {
        fs::permissions(m_path, fs::perms::all);
        fs::remove_all(m_path);
    }
    BookFolder(const BookFolder&) = delete;
    BookFolder& operator=(const BookFolder&) = delete;
    fs::path operator/(const std::string& name) const { return m_path / name; }
    const fs::path& path() const { return m_path; }

    std::vector<std::string> names() const {
        std::vector<std::string> all;
        for (const auto& entry : fs::directory_iterator(m_path))
            all.push_back(entry.path().filename().string());
        std::sort(all.begin(), all.end());
        return all;
    }

  private:
    fs::path m_path;
};

/// While it lives, permissions count even for root.
class AsNobody {
  public:
    AsNobody() : m_user(::geteuid()) {
        if (m_user == 0) {
            EXPECT_EQ(::seteuid(65534), 0);
        }
    }
    ~AsNobody() {
        if (m_user == 0) {
            EXPECT_EQ(::seteuid(0), 0);
        }
    }
    AsNobody(const AsNobody&) = delete;
    AsNobody& operator=(const AsNobody&) = delete;

  private:
    uid_t m_user;
};

inline std::string bytesOf(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

inline void write(const fs::path& file, const std::string& bytes) {
    std::ofstream(file, std::ios::binary) << bytes;
}

/// A book that is there for sure.
inline Book bookAt(const fs::path& file, Access access = Access::create) {
    auto book = Book::open(file, access);
    EXPECT_TRUE(book.ok()) << book.error().text();
    return std::move(book).value();
}

/// Runs statements on a file behind the book's back.
inline void tamper(const fs::path& file, const std::string& statements) {
    SQLite::Database database(file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    database.exec(statements);
}

} // namespace ringhold::test
