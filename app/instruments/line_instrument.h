// What the instruments that send lines of text have in common: bytes to samples, and coming back by
// themselves after the link was lost.
#pragma once

#include "core/base/clock.h"
#include "core/instrument/instrument.h"
#include "core/instrument/line_feed.h"

#include <QObject>
#include <QTimer>

#include <string>
#include <string_view>

namespace ringhold {

/// Lives in a thread with an event loop and wakes itself. A line is heard at the instant at which its end
/// arrives.
class LineInstrument : public QObject, public Instrument, private InstrumentListener {
  public:
    Status open(InstrumentListener& listener) final;
    void close() final;
    std::optional<Instant> advance(Instant) final { return std::nullopt; }
    /// How long a lost device is left alone before it is tried again; 2 s unless set.
    void setRetryAfter(std::chrono::milliseconds pause) { m_retry.setInterval(pause); }

  protected:
    /// The clock must outlive the instrument.
    LineInstrument(const LineFormat& format, const Clock& clock);

    /// Tries to get hold of the device; ends, now or later, in opened() or lost().
    virtual void connectDevice() = 0;
    /// Lets go of it. Called before each connectDevice() and by close(); may find nothing to let go of.
    virtual void disconnectDevice() = 0;

    /// After StreamStart::midLine a silence, too, shows that the next byte begins a line.
    void opened(StreamStart start);
    void received(std::string_view bytes);
    void lost(const std::string& why);

  private:
    void onSample(const Sample& sample) final;
    void onLine(const std::string& line, bool understood) final;
    void onLink(LinkState state, const std::string& detail) final;
    void tryDevice();

    LineFeed m_feed;
    const Clock& m_clock;
    Instant m_last; ///< of the last line; the next one is later
    InstrumentListener* m_listener = nullptr;
    std::optional<LinkState> m_link;
    std::string m_linkDetail;
    QTimer m_retry;
    QTimer m_silence; ///< runs while bytes that arrive may be the rest of a line
};

} // namespace ringhold
