// What a person beside the practice kiln can see and do. The program's own parts never use it: it is how a
// practice potter takes the place of a real one.
#pragma once

#include "core/units/temperature.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace ringhold {

/// Where a cone's tip truly points: 0 standing to 6 down.
struct ConeSeen {
    std::string cone;
    double hour = 0;
};

class PracticeSpyhole {
  public:
    virtual ~PracticeSpyhole() = default;
    /// The pack as it stands now, in its own order.
    virtual std::vector<ConeSeen> pack() const = 0;
    /// What the controller's display shows; nothing when the probe is open.
    virtual std::optional<Temperature> display() const = 0;
    /// Tells the controller that this cone is down. False when its plan waits for no such cone any more.
    virtual bool coneDown(std::string_view cone) = 0;
};

} // namespace ringhold
