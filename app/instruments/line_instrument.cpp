#include "app/instruments/line_instrument.h"

namespace ringhold {

namespace {

/// A line comes in one go; after this much silence the next byte begins another, even at 300 baud.
constexpr std::chrono::milliseconds silence{150};

} // namespace

LineInstrument::LineInstrument(const LineFormat& format, const Clock& clock)
    : LinkedInstrument(clock), m_feed(format, StreamStart::lineStart) {
    m_silence.setSingleShot(true);
    m_silence.setInterval(silence);
    connect(&m_silence, &QTimer::timeout, this, [this] { m_feed.restart(StreamStart::lineStart); });
}

void LineInstrument::opened(StreamStart start) {
    m_feed.restart(start);
    m_silence.stop();
    if (start == StreamStart::midLine)
        m_silence.start();
    tell(LinkState::waiting);
}

void LineInstrument::received(std::string_view bytes) {
    if (m_silence.isActive())
        bytes.find('\n') == std::string_view::npos ? m_silence.start() : m_silence.stop();
    // Line by line: what came in one go was still said one after the other.
    while (!bytes.empty()) {
        const auto end = std::min(bytes.find('\n'), bytes.size() - 1) + 1;
        m_feed.feed(bytes.substr(0, end), nextInstant(), *this);
        bytes.remove_prefix(end);
    }
}

void LineInstrument::onSample(const Sample& sample) {
    if (listener())
        listener()->onSample(sample);
}

void LineInstrument::onLine(const std::string& line, bool understood) {
    tell(LinkState::connected);
    if (listener())
        listener()->onLine(line, understood);
}

} // namespace ringhold
