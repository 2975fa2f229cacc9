// A meter's stand as it is written on the line: the setting "meter".
#pragma once

#include "core/base/result.h"
#include "core/firing/kiln_records.h"
#include "core/firing/written_line.h"

#include <optional>

namespace ringhold {

struct WrittenMeter {
    double stand = 0; ///< at least 0
    MeterUnit unit = MeterUnit::kilowattHours;
};

/// Whether the setting is meant as a meter's stand.
bool isMeter(const WrittenSetting& setting);

/// "meter: 41234.5", "meter: 41 234,5 kWh", "meter: 812.3 m³" (or m3); `usual` is the unit of a figure
/// without one. badInput says what a stand is.
Result<WrittenMeter> readMeter(const WrittenSetting& setting, MeterUnit usual);

} // namespace ringhold
