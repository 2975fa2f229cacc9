// What goes wrong in a practice firing, at a set time.
#pragma once

#include "core/units/time.h"

#include <optional>
#include <vector>

namespace ringhold {

enum class FaultKind {
    sag,           ///< line volts lower by `size` V
    openDoor,      ///< door or damper open: the chamber loses `size` W/K more
    stuckRelay,    ///< full power, whatever the controller asks
    openProbe,     ///< the probe has no value; the controller cuts its power
    silence,       ///< nothing is sent
    frozenValue,   ///< the temperature last sent is sent again and again
    wornElements,  ///< the elements' resistance is `size` times that of new ones
    ageingProbe,   ///< the probe reads lower and lower, by `size` °C an hour
    noisyProbe,    ///< the probe's noise is `size` times as great
    reversedProbe, ///< wired the wrong way round: it falls as the kiln heats
};

struct TimedFault {
    FaultKind kind = FaultKind::sag;
    Duration from{};                ///< since the firing began
    std::optional<Duration> length; ///< for good when there is none
    double size = 0;                ///< as its kind says; unused by the others

    bool activeAt(Duration elapsed) const { return elapsed >= from && (!length || elapsed < from + *length); }
};

using TimedFaults = std::vector<TimedFault>;

/// Hours since the first such fault began, while it is active; nothing when there is none.
inline std::optional<double> activeHours(const TimedFaults& faults, FaultKind kind, Duration elapsed) {
    for (const auto& fault : faults)
        if (fault.kind == kind && fault.activeAt(elapsed))
            return inHours(elapsed - fault.from);
    return std::nullopt;
}

/// The size of the first such fault active then; nothing when there is none.
inline std::optional<double> activeSize(const TimedFaults& faults, FaultKind kind, Duration elapsed) {
    for (const auto& fault : faults)
        if (fault.kind == kind && fault.activeAt(elapsed))
            return fault.size;
    return std::nullopt;
}

} // namespace ringhold
