// The words of CSV headers: what makes a column a time, a temperature, volts or amps, and in what unit.
#pragma once

#include "core/exchange/csv_heading.h"
#include "core/exchange/csv_options.h"
#include "core/firing/records.h"

#include <cstddef>
#include <optional>
#include <string>

namespace ringhold {

/// How "12:30" is to be read.
enum class ColonForm { unsaid, hoursMinutes, minutesSeconds };

struct TimeColumn {
    std::size_t index = 0;
    std::string header{};
    std::optional<Duration> unit{}; ///< of elapsed numbers, where the header says one
    ColonForm colons = ColonForm::unsaid;
    bool elapsed = false; ///< the header says that it counts from the beginning
    bool utc = false;     ///< the header says that it is UTC
};

enum class Scale { asIs, fahrenheit, percent };

struct ValueColumn {
    std::size_t index = 0;
    std::string header{};
    std::string label{}; ///< the header without its unit
    Quantity quantity = Quantity::temperature;
    Scale scale = Scale::asIs; ///< from the cell to the quantity's own unit
};

/// "Time", "elapsed (min)", "t_h", "hours"; but "T" and "T1" are temperatures.
bool isTime(const ColumnHeading& heading);
TimeColumn timeColumn(const ColumnHeading& heading);

/// By its unit: "probe_C", "temp (°F)", "line_V", "amps (A)", "duty"; nothing where it gives none that
/// Ringhold keeps.
std::optional<ValueColumn> valueColumn(const ColumnHeading& heading);

/// A temperature by its name, without a unit: "temp", "T1", "Probe 2".
bool isBareTemperature(const ColumnHeading& heading);
ValueColumn bareColumn(const ColumnHeading& heading, TemperatureUnit unit);

/// The column as a person says it is; nothing for one that is left out. Its label is without the unit that
/// the header gives for that quantity.
std::optional<ValueColumn> columnMeaning(const ColumnHeading& heading, ColumnMeaning meaning);

/// What the kiln should do and not what it does: "set point (°C)", "target_C".
bool isSetPoint(const ValueColumn& column);

/// The header that valueColumn() takes back as the same quantity and label, which must not be empty.
std::string csvHeaderFor(Quantity quantity, const std::string& label);

} // namespace ringhold
