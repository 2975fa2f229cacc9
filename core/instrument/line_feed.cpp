#include "core/instrument/line_feed.h"

#include <utility>

namespace ringhold {

LineAssembler::LineAssembler(StreamStart start, std::size_t longest) : m_longest(longest) {
    restart(start);
}

void LineAssembler::restart(StreamStart start) {
    m_pending.clear();
    m_whole = start == StreamStart::lineStart;
    m_dropping = false;
}

std::vector<LineAssembler::Line> LineAssembler::feed(std::string_view chunk) {
    std::vector<Line> lines;
    for (const char c : chunk) {
        if (c == '\n' || c == '\r') {
            if (!m_pending.empty())
                lines.push_back({m_pending, m_whole});
            restart(StreamStart::lineStart);
        } else if (!m_dropping && m_pending.size() < m_longest) {
            m_pending.push_back(c);
        } else if (!m_dropping) {
            lines.push_back({std::exchange(m_pending, {}), false});
            m_dropping = true;
        }
    }
    return lines;
}

void LineFeed::feed(std::string_view bytes, Instant at, InstrumentListener& listener) {
    for (const auto& line : m_assembler.feed(bytes)) {
        const auto decoded = line.whole ? m_decoder.decode(line.text, at) : DecodedLine{};
        listener.onLine(line.text, decoded.understood);
        for (const auto& sample : decoded.samples)
            listener.onSample(sample);
    }
}

} // namespace ringhold
