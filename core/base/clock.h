// The time of day behind an interface, so that core never asks the computer itself.
#pragma once

#include "core/units/time.h"

namespace ringhold {

/// Gives the present instant. Implementations are safe to call from any thread.
class Clock {
  public:
    virtual ~Clock() = default;
    virtual Instant now() const = 0;
};

} // namespace ringhold
