#include "core/book/files.h"

#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <random>
#include <utility>

namespace ringhold {

namespace fs = std::filesystem;

namespace {

std::string randomHex() {
    static constexpr char digits[] = "0123456789abcdef";
    std::random_device device;
    std::string text;
    for (int i = 0; i < 8; ++i)
        text += digits[device() % 16];
    return text;
}

void removeQuietly(const fs::path& path) {
    std::error_code ignored;
    fs::remove(path, ignored);
}

/// Makes a new name in a folder survive a power cut.
void syncFolder(const fs::path& folder) {
    const int handle = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (handle < 0)
        return;
    ::fsync(handle);
    ::close(handle);
}

/// Renames without overwriting; gives errno. Where the file system knows no such rename (FAT, some network
/// shares) a look beforehand must do.
int renameToNew(const fs::path& from, const fs::path& to) {
    if (::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) == 0)
        return 0;
    if (errno != EINVAL && errno != ENOSYS)
        return errno;
    std::error_code ignored;
    if (fs::exists(fs::symlink_status(to, ignored)))
        return EEXIST;
    return ::rename(from.c_str(), to.c_str()) == 0 ? 0 : errno;
}

bool may(const fs::path& path, int mode) {
    return ::faccessat(AT_FDCWD, path.c_str(), mode, AT_EACCESS) == 0;
}

} // namespace

PartFile::PartFile(const fs::path& target) : m_path(sideFile(target, ".part-" + randomHex())) {}

PartFile::~PartFile() {
    if (m_path.empty())
        return;
    for (const char* ending : {"", "-wal", "-shm", "-journal"})
        removeQuietly(sideFile(m_path, ending));
}

Status PartFile::publishAs(const fs::path& target) {
    const int failure = renameToNew(m_path, target);
    if (failure == EEXIST)
        return Error{ErrorKind::badInput, "there is such a file already", target.string()};
    if (failure != 0)
        return Error{ErrorKind::unwritable, std::strerror(failure), target.string()};
    syncFolder(folderOf(target));
    m_path.clear();
    return {};
}

Result<PrivateFolder> PrivateFolder::make() {
    std::error_code failure;
    std::string pattern = (fs::temp_directory_path(failure) / "ringhold-XXXXXX").string();
    if (failure || !::mkdtemp(pattern.data()))
        return Error{ErrorKind::unwritable, "no temporary folder can be made", pattern};
    return PrivateFolder(pattern);
}

PrivateFolder::~PrivateFolder() {
    std::error_code ignored;
    if (!m_path.empty())
        fs::remove_all(m_path, ignored);
}

PrivateFolder::PrivateFolder(PrivateFolder&& other) noexcept : m_path(std::exchange(other.m_path, {})) {}

PrivateFolder& PrivateFolder::operator=(PrivateFolder&& other) noexcept {
    std::swap(m_path, other.m_path);
    return *this;
}

Status checkNewName(const fs::path& book) {
    std::error_code ignored;
    if (!fs::is_directory(folderOf(book), ignored))
        return Error{ErrorKind::notFound, "there is no such folder", folderOf(book).string()};
    for (const char* ending : {"-wal", "-journal"})
        if (hasContent(sideFile(book, ending)))
            return Error{ErrorKind::badInput,
                         "this holds late commits of a book that was moved away; no other gets its name",
                         sideFile(book, ending).string()};
    return {};
}

bool hasContent(const fs::path& file) {
    std::error_code failure;
    const auto size = fs::file_size(file, failure);
    return !failure && size > 0;
}

fs::path sideFile(const fs::path& book, std::string_view ending) {
    fs::path side = book;
    side += ending;
    return side;
}

bool mayWrite(const fs::path& fileOrFolder) {
    return may(fileOrFolder, W_OK);
}

bool mayRead(const fs::path& file) {
    return may(file, R_OK);
}

fs::path folderOf(const fs::path& file) {
    return file.has_parent_path() ? file.parent_path() : fs::path(".");
}

} // namespace ringhold
