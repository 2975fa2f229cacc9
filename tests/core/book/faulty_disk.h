// A disk that fills up, fails or dawdles on demand, for every SQLite file opened while it lives.
#pragma once

#include <chrono>

namespace ringhold::test {

/// Stands before SQLite's own file system. One at a time; open files must be closed before it goes. The
/// switches may be thrown from any thread.
class FaultyDisk {
  public:
    FaultyDisk();
    ~FaultyDisk();
    FaultyDisk(const FaultyDisk&) = delete;
    FaultyDisk& operator=(const FaultyDisk&) = delete;

    /// Writing fails as on a full disk.
    void fillUp(bool full = true);
    /// Writing goes well, but bringing it to the platter fails.
    void failSync(bool fails = true);
    /// Bringing it to the platter takes so much longer.
    void slowDown(std::chrono::milliseconds perSync);
    /// Times that a file was brought to the platter so far.
    int syncs() const;
};

} // namespace ringhold::test
