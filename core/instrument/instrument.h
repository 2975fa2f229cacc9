// What an instrument is. Hardware, a followed file, a replayed file and the practice kiln are peers behind
// this interface; nothing above it knows which one it has.
#pragma once

#include "core/base/result.h"
#include "core/firing/records.h"
#include "core/units/time.h"

#include <optional>
#include <string>

namespace ringhold {

/// One value that came from an instrument.
struct Sample {
    Instant at;
    std::string label; ///< the instrument's own name for the channel; empty when it has only one
    Quantity quantity = Quantity::temperature;
    std::optional<double> value; ///< in the unit of the quantity; nothing when the probe is open
};

enum class LinkState {
    waiting,   ///< opened, nothing heard yet
    connected, ///< hearing
    lost,      ///< unplugged or closed by the peer; the instrument keeps trying by itself
    ended      ///< will never say more: a replay at its end
};

/// Hears what an instrument says. Called in the thread that calls open() and advance(), or that runs its
/// event loop.
class InstrumentListener {
  public:
    virtual ~InstrumentListener() = default;
    virtual void onSample(const Sample& sample) = 0;
    /// Every raw line, whether it could be read or not: counted and shown, never guessed at.
    virtual void onLine(const std::string& line, bool understood) = 0;
    virtual void onLink(LinkState state, const std::string& detail) = 0;
};

/// A source of samples. Not thread-safe: one thread owns it from open() to close().
class Instrument {
  public:
    virtual ~Instrument() = default;

    /// Begins to listen. The listener must outlive the instrument or be released by close(). Unplugged
    /// hardware is no failure (it is reported as LinkState::lost and tried again); a specification that can
    /// never work is badInput.
    virtual Status open(InstrumentListener& listener) = 0;
    virtual void close() = 0;

    /// Does whatever is due by this wall-clock instant and says when to call again; nothing when the
    /// instrument wakes itself (hardware in an event loop) or has ended.
    virtual std::optional<Instant> advance(Instant wall) = 0;

    /// What time it is at the kiln when the wall clock says `wall`: the same, but for a replay or practice
    /// kiln that runs faster.
    virtual Instant kilnTime(Instant wall) const { return wall; }

    /// "practice kiln, seed 1", "/dev/ttyUSB0 at 9600 baud".
    virtual std::string description() const = 0;
};

} // namespace ringhold
