// A firing taken out of the book to be drawn and compared: curves instead of tens of thousands of readings.
#pragma once

#include "core/base/result.h"
#include "core/firing/firing_record.h"
#include "core/units/curve.h"

#include <optional>
#include <vector>

namespace ringhold {

/// What is read besides the control curve. Less is quicker: the readings are nearly all that a firing has.
struct DrawnParts {
    bool others = true; ///< the curves of the other temperature channels
    bool power = true;  ///< the readings of all channels that are not temperatures
};

struct DrawnFiring {
    /// Of its readings those by hand of the curves that were read and, if asked for, those of power.
    FiringRecord record;
    std::optional<ChannelId> controlChannel; ///< nothing without a reading of a temperature
    Curve control;                           ///< as controlChannel() and curveOf() of the whole record say
    std::optional<Probe> probe;              ///< of the control curve, if the book knows it
    std::vector<Curve> others;               ///< as otherCurves() says, without the names
};

class Book;

/// Some times as quick as the whole record; photos come without their pictures. Errors are those of
/// BookReader.
Result<DrawnFiring> drawnFiring(const Book& book, FiringId firing, const DrawnParts& parts = {});

} // namespace ringhold
