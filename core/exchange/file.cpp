#include "core/exchange/file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <optional>

namespace ringhold {

namespace fs = std::filesystem;

namespace {

/// An open file that closes itself.
class Descriptor {
  public:
    explicit Descriptor(int fd) : m_fd(fd) {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor() { close(); }

    int get() const { return m_fd; }
    bool ok() const { return m_fd >= 0; }
    /// False when the last of the content could not be kept (some file systems say so only now).
    bool close() {
        const int fd = m_fd;
        m_fd = -1;
        return fd < 0 || ::close(fd) == 0;
    }

  private:
    int m_fd;
};

Error failure(ErrorKind kind, const fs::path& path, const std::string& what, int code) {
    return {kind, what + ": " + std::strerror(code), path.string()};
}

Error cannotRead(const fs::path& path, int code) {
    if (code == ENOENT || code == ENOTDIR)
        return {ErrorKind::notFound, "there is no such file", path.string()};
    return failure(ErrorKind::unreadable, path, "cannot be read", code);
}

Error cannotWrite(const fs::path& path, int code) {
    return failure(ErrorKind::unwritable, path, "cannot be written", code);
}

/// 0, or the errno of what went wrong.
int writeAll(int fd, std::string_view content) {
    while (!content.empty()) {
        const ssize_t written = ::write(fd, content.data(), content.size());
        if (written < 0 && errno != EINTR)
            return errno;
        if (written > 0)
            content.remove_prefix(static_cast<std::size_t>(written));
    }
    return 0;
}

/// 0, or the errno. Pipes and terminals have no disk to flush to.
int flush(int fd) {
    return ::fsync(fd) == 0 || errno == EINVAL || errno == EROFS ? 0 : errno;
}

Status writeThrough(const fs::path& path, std::string_view content) {
    Descriptor file(::open(path.c_str(), O_WRONLY | O_CLOEXEC | O_NOCTTY));
    if (!file.ok())
        return cannotWrite(path, errno);
    if (const int code = writeAll(file.get(), content))
        return cannotWrite(path, code);
    return file.close() ? Status() : cannotWrite(path, errno);
}

/// Makes a new file in the folder of `target`; its name goes to `path`.
int makeBeside(const fs::path& target, mode_t mode, fs::path& path) {
    for (int attempt = 0; attempt < 100; ++attempt) {
        path = target;
        path += ".part" + std::to_string(::getpid()) + "-" + std::to_string(attempt);
        const int fd = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
        if (fd >= 0 || errno != EEXIST)
            return fd;
    }
    errno = EEXIST;
    return -1;
}

/// 0, or the errno of the first step that failed.
int fill(Descriptor& file, std::string_view content, std::optional<mode_t> mode) {
    if (mode && ::fchmod(file.get(), *mode) != 0)
        return errno;
    if (const int code = writeAll(file.get(), content))
        return code;
    if (const int code = flush(file.get()))
        return code;
    return file.close() ? 0 : errno;
}

/// So that the new name itself survives a power cut. The content is safe by now: a file system that cannot
/// do this is no reason to fail.
void flushFolder(const fs::path& folder) {
    const Descriptor descriptor(
        ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (descriptor.ok())
        ::fsync(descriptor.get());
}

Status writeBesideAndRename(const fs::path& target, std::string_view content, std::optional<mode_t> mode) {
    fs::path beside;
    Descriptor file(makeBeside(target, 0666, beside));
    if (!file.ok())
        return cannotWrite(target, errno);
    int code = fill(file, content, mode);
    if (code == 0 && ::rename(beside.c_str(), target.c_str()) != 0)
        code = errno;
    if (code != 0) {
        ::unlink(beside.c_str());
        return cannotWrite(target, code);
    }
    flushFolder(target.parent_path());
    return {};
}

} // namespace

Result<std::string> readFile(const fs::path& path, std::size_t limit_bytes) {
    const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NOCTTY));
    struct stat info {};
    if (!file.ok() || ::fstat(file.get(), &info) != 0)
        return cannotRead(path, errno);
    if (S_ISDIR(info.st_mode))
        return Error{ErrorKind::unreadable, "is a folder, not a file", path.string()};

    std::string content;
    const std::size_t expected = info.st_size > 0 ? static_cast<std::size_t>(info.st_size) : 0;
    std::size_t size = 0;
    while (size <= limit_bytes) {
        if (size == content.size()) // one byte more than expected, to see the end at once
            content.resize(
                std::min(limit_bytes + 1, size == 0 ? std::max<std::size_t>(expected + 1, 4096) : 2 * size));
        const ssize_t got = ::read(file.get(), content.data() + size, content.size() - size);
        if (got < 0 && errno != EINTR)
            return cannotRead(path, errno);
        if (got == 0) {
            content.resize(size);
            return content;
        }
        size += got > 0 ? static_cast<std::size_t>(got) : 0;
    }
    return Error{ErrorKind::badInput, "is larger than " + std::to_string(limit_bytes >> 20) + " MB",
                 path.string()};
}

Status writeFile(const fs::path& path, std::string_view content) {
    struct stat info {};
    if (::stat(path.c_str(), &info) != 0)
        return writeBesideAndRename(path, content, std::nullopt);
    if (S_ISDIR(info.st_mode))
        return Error{ErrorKind::unwritable, "is a folder, not a file", path.string()};
    if (!S_ISREG(info.st_mode))
        return writeThrough(path, content);
    if (::faccessat(AT_FDCWD, path.c_str(), W_OK, AT_EACCESS) != 0)
        return cannotWrite(path, errno);
    std::error_code unresolved;
    const fs::path target = fs::canonical(path, unresolved);
    return writeBesideAndRename(unresolved ? path : target, content, info.st_mode & 07777);
}

} // namespace ringhold
