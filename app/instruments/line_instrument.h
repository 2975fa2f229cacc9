// What the instruments that send lines of text have in common: bytes to samples.
#pragma once

#include "app/instruments/linked_instrument.h"
#include "core/instrument/line_feed.h"

#include <string_view>

namespace ringhold {

/// A line is heard at the instant at which its end arrives.
class LineInstrument : public LinkedInstrument, private InstrumentListener {
  protected:
    /// The clock must outlive the instrument.
    LineInstrument(const LineFormat& format, const Clock& clock);

    /// After StreamStart::midLine a silence, too, shows that the next byte begins a line.
    void opened(StreamStart start);
    void received(std::string_view bytes);

  private:
    void onSample(const Sample& sample) final;
    void onLine(const std::string& line, bool understood) final;
    void onLink(LinkState state, const std::string& detail) final { tell(state, detail); }

    LineFeed m_feed;
    QTimer m_silence; ///< runs while bytes that arrive may be the rest of a line
};

} // namespace ringhold
