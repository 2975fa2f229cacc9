// How sure a figure is: its 5, 50 and 95 % points.
#pragma once

#include "core/units/time.h"

#include <optional>

namespace ringhold {

/// The 5 %, 50 % and 95 % points of a quantity.
template <class T>
struct Interval {
    T p05;
    T median;
    T p95;
};

/// A point is nothing when it lies more than 24 h ahead, or never comes in this future.
using TimeInterval = Interval<std::optional<Instant>>;

} // namespace ringhold
