// From the bytes of a serial port, a socket or a growing file to lines, and on to samples.
#pragma once

#include "core/instrument/line_decoder.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace ringhold {

/// Where in a line the first byte stands.
enum class StreamStart {
    lineStart,
    midLine ///< perhaps in the midst of one: what comes before the first line end is not to be trusted
};

/// Puts lines together whatever chunks they come in. Lines end by LF, CR or both; empty ones are left out.
/// Never keeps more than `longest` bytes, so that a line that never ends cannot eat the memory.
class LineAssembler {
  public:
    struct Line {
        std::string text;  ///< without its end; at most the longest
        bool whole = true; ///< false for one cut at the longest (the rest is dropped) or begun in its midst
    };

    explicit LineAssembler(StreamStart start, std::size_t longest = LineDecoder::longestLine);

    /// The lines that this chunk ends.
    std::vector<Line> feed(std::string_view chunk);
    /// Drops an unfinished line: the stream was cut and begins anew.
    void restart(StreamStart start);

  private:
    std::size_t m_longest;
    std::string m_pending;
    bool m_whole = true;
    bool m_dropping = false; ///< the rest of a line that was too long
};

/// Tells a listener of every line and of the samples in it.
class LineFeed {
  public:
    LineFeed(LineFormat format, StreamStart start) : m_decoder(format), m_assembler(start) {}

    /// Bytes that came at that instant.
    void feed(std::string_view bytes, Instant at, InstrumentListener& listener);
    void restart(StreamStart start) { m_assembler.restart(start); }

  private:
    LineDecoder m_decoder;
    LineAssembler m_assembler;
};

} // namespace ringhold
