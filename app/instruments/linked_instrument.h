// What the instruments behind a cable have in common: they tell of the link, and come back by themselves
// after it was lost.
#pragma once

#include "core/base/clock.h"
#include "core/instrument/instrument.h"

#include <QObject>
#include <QTimer>

#include <algorithm>
#include <chrono>
#include <optional>
#include <string>

namespace ringhold {

/// Lives in a thread with an event loop and wakes itself.
class LinkedInstrument : public QObject, public Instrument {
  public:
    Status open(InstrumentListener& listener) final;
    void close() final;
    std::optional<Instant> advance(Instant) final { return std::nullopt; }
    /// How long a lost device is left alone before it is tried again; 2 s unless set.
    void setRetryAfter(std::chrono::milliseconds pause) { m_retry.setInterval(pause); }

  protected:
    /// The clock must outlive the instrument.
    explicit LinkedInstrument(const Clock& clock);

    /// Tries to get hold of the device; ends, now or later, in tell() or lost().
    virtual void connectDevice() = 0;
    /// Lets go of it. Called before each connectDevice() and by close(); may find nothing to let go of.
    virtual void disconnectDevice() = 0;

    /// Passes on what is new.
    void tell(LinkState state, const std::string& detail = {});
    void lost(const std::string& why);
    /// Null while closed.
    InstrumentListener* listener() const { return m_listener; }
    /// Now, but later than what it said before.
    Instant nextInstant();

  private:
    void tryDevice();

    const Clock& m_clock;
    Instant m_last;
    InstrumentListener* m_listener = nullptr;
    std::optional<LinkState> m_link;
    std::string m_linkDetail;
    QTimer m_retry;
};

} // namespace ringhold
