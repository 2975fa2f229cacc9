// The computer's clock.
#pragma once

#include "core/base/clock.h"

#include <mutex>

namespace ringhold {

/// Follows the computer's time of day, but never runs backwards: when that is set back, it goes on at its own
/// pace from where it was, so that the lines of a firing stay in order.
class SystemClock final : public Clock {
  public:
    Instant now() const override;

  private:
    mutable std::mutex m_mutex;
    mutable Instant m_last{};
    mutable std::chrono::steady_clock::time_point m_lastSteady;
};

} // namespace ringhold
