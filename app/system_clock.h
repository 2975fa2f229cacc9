// The computer's clock.
#pragma once

#include "core/base/clock.h"

namespace ringhold {

class SystemClock final : public Clock {
  public:
    Instant now() const override {
        return std::chrono::floor<std::chrono::milliseconds>(std::chrono::system_clock::now());
    }
};

} // namespace ringhold
