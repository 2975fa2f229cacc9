// Time at a kiln that does not run at the pace of the wall clock: a replayed or a practised firing.
#pragma once

#include "core/base/result.h"
#include "core/units/time.h"

#include <optional>

namespace ringhold {

class KilnPace {
  public:
    static constexpr double fastest = 1e6;

    /// `speed`: kiln seconds in a second.
    explicit KilnPace(double speed) : m_speed(speed) {}
    /// badInput unless the speed is above 0 and at most the fastest.
    Status check() const;

    double speed() const { return m_speed; }
    bool started() const { return m_wallStart.has_value(); }
    /// From now on: when the wall clock says `wall` it is `kiln` at the kiln.
    void start(Instant wall, Instant kiln);
    void stop() { m_wallStart.reset(); }

    /// The wall clock's own time while not started.
    Instant kilnTime(Instant wall) const;
    /// The earliest wall instant by which it is that time at the kiln. Only when started.
    Instant wallTime(Instant kiln) const;

  private:
    double m_speed;
    std::optional<Instant> m_wallStart;
    Instant m_kilnStart;
};

} // namespace ringhold
