#include "app/instruments/linked_instrument.h"

namespace ringhold {

LinkedInstrument::LinkedInstrument(const Clock& clock) : m_clock(clock) {
    m_retry.setSingleShot(true);
    m_retry.setInterval(std::chrono::seconds(2));
    connect(&m_retry, &QTimer::timeout, this, [this] { tryDevice(); });
}

Status LinkedInstrument::open(InstrumentListener& listener) {
    m_listener = &listener;
    tryDevice();
    return {};
}

void LinkedInstrument::close() {
    m_listener = nullptr;
    m_link.reset();
    m_retry.stop();
    disconnectDevice();
}

void LinkedInstrument::tryDevice() {
    disconnectDevice();
    connectDevice();
}

void LinkedInstrument::lost(const std::string& why) {
    tell(LinkState::lost, why);
    m_retry.start();
    // Not at once: the device may be in the middle of telling its error.
    QTimer::singleShot(0, this, [this] {
        if (m_link == LinkState::lost)
            disconnectDevice();
    });
}

void LinkedInstrument::tell(LinkState state, const std::string& detail) {
    if (!m_listener || (m_link == state && m_linkDetail == detail))
        return;
    m_link = state;
    m_linkDetail = detail;
    m_listener->onLink(state, detail);
}

Instant LinkedInstrument::nextInstant() {
    m_last = std::max(m_clock.now(), m_last + Duration(1));
    return m_last;
}

} // namespace ringhold
