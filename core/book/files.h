// Files that come into being whole or not at all, for core/book alone.
#pragma once

#include "core/base/result.h"

#include <filesystem>
#include <string_view>

namespace ringhold {

/// A name beside `target` for a file in the making. What is left of it (SQLite's side files too) goes away
/// with this object, unless it was published.
class PartFile {
  public:
    explicit PartFile(const std::filesystem::path& target);
    ~PartFile();
    PartFile(const PartFile&) = delete;
    PartFile& operator=(const PartFile&) = delete;

    const std::filesystem::path& path() const { return m_path; }
    /// Gives the finished, closed file the name `target`, durably. Never overwrites: badInput when there is
    /// such a file already.
    Status publishAs(const std::filesystem::path& target);

  private:
    std::filesystem::path m_path;
};

/// A folder of our own among the temporary files, gone with this object.
class PrivateFolder {
  public:
    static Result<PrivateFolder> make();
    ~PrivateFolder();
    PrivateFolder(PrivateFolder&& other) noexcept;
    PrivateFolder& operator=(PrivateFolder&& other) noexcept;

    const std::filesystem::path& path() const { return m_path; }

  private:
    explicit PrivateFolder(std::filesystem::path path) : m_path(std::move(path)) {}
    std::filesystem::path m_path;
};

/// Refuses a name for a new book whose folder is not there (notFound), or beside which late commits lie of a
/// book that was moved away (badInput): SQLite would take them for those of the new one.
Status checkNewName(const std::filesystem::path& book);

/// The name of one of SQLite's side files: "book.ringhold" and "-wal".
std::filesystem::path sideFile(const std::filesystem::path& book, std::string_view ending);

bool hasContent(const std::filesystem::path& file);

/// Whether this process may write there.
bool mayWrite(const std::filesystem::path& fileOrFolder);
bool mayRead(const std::filesystem::path& file);
/// The folder that a file lies in, "." for a bare name.
std::filesystem::path folderOf(const std::filesystem::path& file);

} // namespace ringhold
