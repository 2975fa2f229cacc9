#include "app/stop_signals.h"

#include <sys/signalfd.h>
#include <unistd.h>

namespace ringhold {

StopSignals::StopSignals(std::function<void()> onStop) {
    sigset_t stops;
    sigemptyset(&stops);
    sigaddset(&stops, SIGINT);
    sigaddset(&stops, SIGTERM);
    ::pthread_sigmask(SIG_BLOCK, &stops, &m_before);
    m_descriptor = ::signalfd(-1, &stops, SFD_CLOEXEC | SFD_NONBLOCK);
    m_notifier = std::make_unique<QSocketNotifier>(m_descriptor, QSocketNotifier::Read);
    QObject::connect(m_notifier.get(), &QSocketNotifier::activated, m_notifier.get(),
                     [this, onStop = std::move(onStop)] {
                         signalfd_siginfo info{};
                         if (::read(m_descriptor, &info, sizeof info) == sizeof info)
                             onStop();
                     });
}

StopSignals::~StopSignals() {
    m_notifier.reset();
    ::close(m_descriptor);
    ::pthread_sigmask(SIG_SETMASK, &m_before, nullptr);
}

} // namespace ringhold
