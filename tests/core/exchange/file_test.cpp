#include "core/exchange/file.h"
#include "tests/core/exchange/scratch_folder.h"

#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include <csignal>
#include <filesystem>

namespace ringhold {
namespace {

namespace fs = std::filesystem;

/// While it lives, no file of this process can grow beyond so many bytes: a full disk without one.
class SmallDisk {
  public:
    explicit SmallDisk(rlim_t bytes) : m_handler(std::signal(SIGXFSZ, SIG_IGN)) {
        ::getrlimit(RLIMIT_FSIZE, &m_before);
        const rlimit small{bytes, m_before.rlim_max};
        ::setrlimit(RLIMIT_FSIZE, &small);
    }
    SmallDisk(const SmallDisk&) = delete;
    SmallDisk& operator=(const SmallDisk&) = delete;
    ~SmallDisk() {
        ::setrlimit(RLIMIT_FSIZE, &m_before);
        std::signal(SIGXFSZ, m_handler);
    }

  private:
    rlimit m_before{};
    void (*m_handler)(int);
};

/// While it lives, the superuser has no more rights than anybody: tests also run as root.
class AsNobody {
  public:
    explicit AsNobody(const ScratchFolder& folder) {
        constexpr uid_t nobody = 65534;
        if (m_before == 0 && ::chown(folder.path().c_str(), nobody, static_cast<gid_t>(-1)) == 0)
            m_changed = ::seteuid(nobody) == 0;
    }
    AsNobody(const AsNobody&) = delete;
    AsNobody& operator=(const AsNobody&) = delete;
    ~AsNobody() { EXPECT_TRUE(!m_changed || ::seteuid(m_before) == 0); }

  private:
    uid_t m_before = ::geteuid();
    bool m_changed = false;
};

TEST(ReadFile, GivesAllBytes) {
    const ScratchFolder folder;
    for (const std::size_t size : {0u, 1u, 4095u, 4096u, 4097u, 300'000u}) {
        std::string bytes(size, 'x');
        if (size > 2)
            bytes[size / 2] = '\0';
        const auto read = readFile(folder.with("a.csv", bytes));
        ASSERT_TRUE(read.ok()) << size;
        EXPECT_EQ(*read, bytes);
    }
}

TEST(ReadFile, SaysWhatIsWrong) {
    const ScratchFolder folder;
    EXPECT_EQ(readFile(folder / "none.csv").error().kind, ErrorKind::notFound);
    EXPECT_EQ(readFile(folder.with("a", "x") / "b").error().kind, ErrorKind::notFound);
    const auto directory = readFile(folder.path());
    ASSERT_FALSE(directory.ok());
    EXPECT_EQ(directory.error().kind, ErrorKind::unreadable);
    EXPECT_EQ(directory.error().text(), folder.path().string() + ": is a folder, not a file");
}

TEST(ReadFile, RefusesWithoutPermission) {
    const ScratchFolder folder;
    const AsNobody nobody(folder);
    const auto path = folder.with("a.csv", "x");
    fs::permissions(path, fs::perms::none);
    EXPECT_EQ(readFile(path).error().kind, ErrorKind::unreadable);
}

TEST(ReadFile, KeepsToItsLimitEvenWhereThereIsNoEnd) {
    const ScratchFolder folder;
    EXPECT_TRUE(readFile(folder.with("a.csv", std::string(1000, 'x')), 1000).ok());
    EXPECT_EQ(readFile(folder.with("a.csv", std::string(1001, 'x')), 1000).error().kind, ErrorKind::badInput);
    EXPECT_EQ(readFile("/dev/zero", 1 << 20).error().text(), "/dev/zero: is larger than 1 MB");
}

TEST(WriteFile, MakesAndReplacesAndLeavesNothingBeside) {
    const ScratchFolder folder;
    const auto path = folder / "out.csv";
    for (const std::string content : {"first", "", "the third one"}) {
        ASSERT_TRUE(writeFile(path, content).ok());
        EXPECT_EQ(ScratchFolder::bytesOf(path), content);
    }
    EXPECT_EQ(folder.files(), 1);
}

TEST(WriteFile, FollowsLinksAndKeepsPermissions) {
    const ScratchFolder folder;
    const auto path = folder.with("out.csv", "old");
    fs::permissions(path, fs::perms::owner_read | fs::perms::owner_write);
    fs::create_symlink("out.csv", folder / "link.csv");
    ASSERT_TRUE(writeFile(folder / "link.csv", "new").ok());
    EXPECT_TRUE(fs::is_symlink(folder / "link.csv"));
    EXPECT_EQ(ScratchFolder::bytesOf(path), "new");
    EXPECT_EQ(fs::status(path).permissions(), fs::perms::owner_read | fs::perms::owner_write);
}

TEST(WriteFile, WritesToADeviceInsteadOfReplacingIt) {
    EXPECT_TRUE(writeFile("/dev/null", "gone").ok());
    EXPECT_TRUE(fs::is_character_file("/dev/null"));
    EXPECT_EQ(writeFile("/dev/full", "does not fit").error().kind, ErrorKind::unwritable);
    EXPECT_TRUE(fs::is_character_file("/dev/full"));
}

TEST(WriteFile, LeavesTheOldFileWholeWhenTheDiskIsFull) {
    const ScratchFolder folder;
    const auto path = folder.with("out.csv", "the only copy");
    Status status;
    {
        const SmallDisk disk(100);
        status = writeFile(path, std::string(10'000, 'x'));
    }
    ASSERT_FALSE(status.ok());
    EXPECT_EQ(status.error().kind, ErrorKind::unwritable);
    EXPECT_EQ(ScratchFolder::bytesOf(path), "the only copy");
    EXPECT_EQ(folder.files(), 1);
}

TEST(WriteFile, RefusesAFolderAndAMissingFolder) {
    const ScratchFolder folder;
    EXPECT_EQ(writeFile(folder.path(), "x").error().kind, ErrorKind::unwritable);
    EXPECT_EQ(writeFile(folder / "no/such/out.csv", "x").error().kind, ErrorKind::unwritable);
    EXPECT_EQ(folder.files(), 0);
}

TEST(WriteFile, RefusesAReadOnlyFileAndFolder) {
    const ScratchFolder folder;
    const AsNobody nobody(folder);
    const auto path = folder.with("out.csv", "old");
    fs::permissions(path, fs::perms::owner_read);
    EXPECT_EQ(writeFile(path, "x").error().kind, ErrorKind::unwritable);
    fs::permissions(folder.path(), fs::perms::owner_read | fs::perms::owner_exec);
    EXPECT_EQ(writeFile(folder / "new.csv", "x").error().kind, ErrorKind::unwritable);
    fs::permissions(folder.path(), fs::perms::owner_all);
    EXPECT_EQ(ScratchFolder::bytesOf(path), "old");
}

} // namespace
} // namespace ringhold
