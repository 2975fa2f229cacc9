#include "app/instruments/line_instrument.h"

#include <algorithm>

namespace ringhold {

namespace {

/// A line comes in one go; after this much silence the next byte begins another, even at 300 baud.
constexpr std::chrono::milliseconds silence{150};

} // namespace

LineInstrument::LineInstrument(const LineFormat& format, const Clock& clock)
    : m_feed(format, StreamStart::lineStart), m_clock(clock) {
    m_retry.setSingleShot(true);
    m_retry.setInterval(std::chrono::seconds(2));
    connect(&m_retry, &QTimer::timeout, this, [this] { tryDevice(); });
    m_silence.setSingleShot(true);
    m_silence.setInterval(silence);
    connect(&m_silence, &QTimer::timeout, this, [this] { m_feed.restart(StreamStart::lineStart); });
}

Status LineInstrument::open(InstrumentListener& listener) {
    m_listener = &listener;
    tryDevice();
    return {};
}

void LineInstrument::close() {
    m_listener = nullptr;
    m_link.reset();
    m_retry.stop();
    m_silence.stop();
    disconnectDevice();
}

void LineInstrument::tryDevice() {
    disconnectDevice();
    connectDevice();
}

void LineInstrument::opened(StreamStart start) {
    m_feed.restart(start);
    if (start == StreamStart::midLine)
        m_silence.start();
    onLink(LinkState::waiting, {});
}

void LineInstrument::lost(const std::string& why) {
    m_silence.stop();
    onLink(LinkState::lost, why);
    m_retry.start();
    // Not at once: the device may be in the middle of telling its error.
    QTimer::singleShot(0, this, [this] {
        if (m_link == LinkState::lost)
            disconnectDevice();
    });
}

void LineInstrument::received(std::string_view bytes) {
    if (m_silence.isActive())
        bytes.find('\n') == std::string_view::npos ? m_silence.start() : m_silence.stop();
    // Line by line: what came in one go was still said one after the other.
    while (!bytes.empty()) {
        const auto end = std::min(bytes.find('\n'), bytes.size() - 1) + 1;
        m_last = std::max(m_clock.now(), m_last + Duration(1));
        m_feed.feed(bytes.substr(0, end), m_last, *this);
        bytes.remove_prefix(end);
    }
}

void LineInstrument::onSample(const Sample& sample) {
    if (m_listener)
        m_listener->onSample(sample);
}

void LineInstrument::onLine(const std::string& line, bool understood) {
    onLink(LinkState::connected, {});
    if (m_listener)
        m_listener->onLine(line, understood);
}

/// Passes on what is new.
void LineInstrument::onLink(LinkState state, const std::string& detail) {
    if (!m_listener || (m_link == state && m_linkDetail == detail))
        return;
    m_link = state;
    m_linkDetail = detail;
    m_listener->onLink(state, detail);
}

} // namespace ringhold
