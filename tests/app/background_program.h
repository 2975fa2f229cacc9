// The real program, running beside the test.
#pragma once

#include <QProcess>

#include <string>
#include <vector>

namespace ringhold {

class BackgroundProgram {
  public:
    explicit BackgroundProgram(const std::vector<std::string>& arguments);
    BackgroundProgram(const BackgroundProgram&) = delete;
    BackgroundProgram& operator=(const BackgroundProgram&) = delete;
    ~BackgroundProgram();

    /// Waits until it has printed so many whole lines; false when it does not within half a minute.
    bool waitForLines(std::size_t count);
    /// What it has printed so far, without a line that is not whole.
    std::vector<std::string> lines();
    std::string errors();

    /// kill -9.
    void killHard();
    /// SIGTERM; gives the exit status, -1 if it did not end by itself.
    int terminate();
    /// Waits for its own end.
    int wait();

  private:
    QProcess m_process;
    std::string m_out;
};

} // namespace ringhold
