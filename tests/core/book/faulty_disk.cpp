#include "tests/core/book/faulty_disk.h"

#include <sqlite3.h>

#include <array>
#include <atomic>
#include <cstdlib>
#include <mutex>
#include <thread>

namespace ringhold::test {

namespace {

std::atomic<bool> full;
std::atomic<bool> syncFails;
std::atomic<int> syncCount;
std::atomic<int> syncTakes_ms;
sqlite3_vfs* real = nullptr;
sqlite3_vfs faulty;
/// A table of SQLite's file methods with three of them replaced.
struct Methods {
    sqlite3_io_methods ours; ///< first, so that a file's pMethods leads to the whole
    const sqlite3_io_methods* real;
};
std::array<Methods, 4> tables; // SQLite has one for databases and one for their side files
std::mutex tablesLock;

const sqlite3_io_methods* realMethods(sqlite3_file* file) {
    return reinterpret_cast<const Methods*>(file->pMethods)->real;
}

int writeUnlessFull(sqlite3_file* file, const void* data, int size, sqlite3_int64 offset) {
    return full ? SQLITE_FULL : realMethods(file)->xWrite(file, data, size, offset);
}

int syncUnlessFailing(sqlite3_file* file, int flags) {
    if (const int takes = syncTakes_ms; takes > 0)
        std::this_thread::sleep_for(std::chrono::milliseconds(takes));
    if (syncFails)
        return SQLITE_IOERR_FSYNC;
    ++syncCount;
    return realMethods(file)->xSync(file, flags);
}

/// The index of late commits is a file that grows, too.
int growUnlessFull(sqlite3_file* file, int page, int size, int extend, void volatile** memory) {
    const int result = realMethods(file)->xShmMap(file, page, size, full ? 0 : extend, memory);
    return full && extend && result == SQLITE_OK && !*memory ? SQLITE_IOERR_SHMSIZE : result;
}

const sqlite3_io_methods* replaced(const sqlite3_io_methods* original) {
    const std::lock_guard lock(tablesLock);
    for (auto& table : tables) {
        if (table.real == original)
            return &table.ours;
        if (table.real)
            continue;
        table = {*original, original};
        table.ours.xWrite = writeUnlessFull;
        table.ours.xSync = syncUnlessFailing;
        table.ours.xShmMap = growUnlessFull;
        return &table.ours;
    }
    std::abort();
}

int openFaulty(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* outFlags) {
    const int result = real->xOpen(real, name, file, flags, outFlags);
    if (result == SQLITE_OK)
        file->pMethods = replaced(file->pMethods);
    return result;
}

} // namespace

FaultyDisk::FaultyDisk() {
    full = syncFails = false;
    syncCount = syncTakes_ms = 0;
    real = sqlite3_vfs_find(nullptr);
    faulty = *real;
    faulty.zName = "faulty";
    faulty.pNext = nullptr;
    faulty.xOpen = openFaulty;
    sqlite3_vfs_register(&faulty, 1);
}

FaultyDisk::~FaultyDisk() {
    sqlite3_vfs_register(real, 1);
    sqlite3_vfs_unregister(&faulty);
}

void FaultyDisk::fillUp(bool isFull) {
    full = isFull;
}

void FaultyDisk::failSync(bool fails) {
    syncFails = fails;
}

void FaultyDisk::slowDown(std::chrono::milliseconds perSync) {
    syncTakes_ms = static_cast<int>(perSync.count());
}

int FaultyDisk::syncs() const {
    return syncCount;
}

} // namespace ringhold::test
