// What a person may have to say about a CSV that it does not say itself.
#pragma once

#include "core/units/temperature.h"
#include "core/units/time.h"

#include <map>
#include <optional>
#include <string>

namespace ringhold {

/// What a column holds, where a person says so.
enum class ColumnMeaning {
    leftOut,
    celsius,
    fahrenheit,
    volts,
    amps,
    oxygenMillivolts,
    dutyShare,  ///< of full power, 0 to 1
    dutyPercent ///< 0 to 100
};

struct CsvOptions {
    std::string zone{};                    ///< IANA name, for times without one; empty: this computer's zone
    std::optional<Instant> began{};        ///< what elapsed times are counted from
    std::optional<TemperatureUnit> unit{}; ///< of temperature columns that do not say theirs
    std::string control{};                 ///< control probe's column, by header or label; empty: the first
    std::string time{};                    ///< the time's column, by header; empty: it is found
    std::optional<Duration> timeUnit{};    ///< of elapsed numbers, where the header does not say it; above 0
    std::map<std::string, ColumnMeaning>
        columns{}; ///< by header; said here, it goes before what the header says
};

} // namespace ringhold
