// A clock that goes on only when told to.
#pragma once

#include "core/base/clock.h"

namespace ringhold {

class SteppedClock final : public Clock {
  public:
    explicit SteppedClock(Instant now) : m_now(now) {}
    Instant now() const override { return m_now; }
    void pass(Duration time) { m_now += time; }

  private:
    Instant m_now;
};

} // namespace ringhold
