// The two signals by which a person or the system asks a verb to end.
#pragma once

#include <QSocketNotifier>

#include <csignal>
#include <functional>
#include <memory>

namespace ringhold {

/// While it lives, SIGINT and SIGTERM call back from the event loop instead of ending the program. Make it
/// before any other thread begins: threads inherit the mask of the one that made them.
class StopSignals {
  public:
    explicit StopSignals(std::function<void()> onStop);
    StopSignals(const StopSignals&) = delete;
    StopSignals& operator=(const StopSignals&) = delete;
    ~StopSignals();

  private:
    sigset_t m_before{};
    int m_descriptor = -1;
    std::unique_ptr<QSocketNotifier> m_notifier;
};

} // namespace ringhold
