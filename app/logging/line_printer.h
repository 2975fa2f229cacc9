// Prints lines without making anybody wait: a reader that stopped reading must not hold up the log.
#pragma once

#include <queue>

#include <condition_variable>
#include <mutex>
#include <ostream>
#include <string>
#include <thread>

namespace ringhold {

/// Each line is flushed. print() may be called from any thread; the destructor prints what is left.
class LinePrinter {
  public:
    /// The stream must outlive the printer, and nobody else may use it meanwhile.
    explicit LinePrinter(std::ostream& out);
    ~LinePrinter();

    void print(std::string line);

  private:
    void work();

    std::ostream& m_out;
    std::mutex m_mutex;
    std::condition_variable m_changed;
    std::queue<std::string> m_lines;
    bool m_ending = false;
    std::thread m_thread;
};

} // namespace ringhold
