// What a person may have to say about a CSV that it does not say itself.
#pragma once

#include "core/units/temperature.h"
#include "core/units/time.h"

#include <optional>
#include <string>

namespace ringhold {

struct CsvOptions {
    std::string zone{};                    ///< IANA name, for times without one; empty: this computer's zone
    std::optional<Instant> began{};        ///< what elapsed times are counted from
    std::optional<TemperatureUnit> unit{}; ///< of temperature columns that do not say theirs
    std::string control{};                 ///< control probe's column, by header or label; empty: the first
};

} // namespace ringhold
