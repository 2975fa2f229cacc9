// How steadily a hold was held, in the classes of furnace practice.
#pragma once

#include "core/units/curve.h"
#include "core/watch/curve_parts.h"

#include <array>
#include <optional>

namespace ringhold {

/// Half widths of the furnace uniformity classes 1 to 6 (AMS2750), °C either way.
inline constexpr std::array<double, 6> uniformityClasses_C{3, 6, 8, 10, 14, 28};

struct Uniformity {
    int furnaceClass = 0; ///< 1 to 6, 1 the narrowest
    TemperatureDifference eitherWay;
    Stretch stay; ///< when the curve was within it without a break: arrival and departure left out
};

/// The narrowest class that a hold kept. As in furnace practice the soak begins once within tolerance, and
/// one reading outside breaks it: of all stays within target +- class the longest must leave out no more than
/// 20 min, nor a fifth, of the hold (our own rule, no source). Absent when even the widest class was not
/// kept. The classes are meant for many probes across a furnace; this is the steadiness of one.
std::optional<Uniformity> uniformityOf(const Curve& curve, Temperature target, Stretch hold);

} // namespace ringhold
