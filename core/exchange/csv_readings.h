// Readings out of a CSV file, whoever wrote it.
#pragma once

#include "core/base/result.h"
#include "core/exchange/csv_options.h"
#include "core/firing/records.h"
#include "core/units/curve.h"

#include <cstddef>
#include <filesystem>
#include <string>
#include <vector>

namespace ringhold {

struct TimedValue {
    Instant at;
    double value = 0;
    bool operator==(const TimedValue&) const = default;
};

/// One column: its values in time order, none twice at the same instant. An empty cell is no value.
struct CsvChannel {
    Quantity quantity = Quantity::temperature;
    std::string label;              ///< the header without its unit: "probe" for "probe_C"
    std::string header;             ///< as the file has it
    std::vector<TimedValue> values; ///< in the quantity's unit
};

struct CsvReadings {
    std::vector<CsvChannel> channels; ///< the control probe's first; it has at least one value
    std::size_t rows = 0;             ///< that gave a value
    std::size_t skipped = 0;          ///< that gave none: empty, or the row above once more
    bool absolute = true; ///< false: elapsed times without a beginning, counted from 1970-01-01T00:00Z
    std::vector<std::string> ignored; ///< headers of columns that hold nothing Ringhold keeps

    const CsvChannel& control() const { return channels.front(); }
    /// The control probe's readings.
    Curve curve() const;
};

/// Readings outside these are no kiln's.
constexpr Temperature coldestReading = Temperature::fromCelsius(-50.0);
constexpr Temperature hottestReading = Temperature::fromCelsius(1800.0);

/// Reads a file: a header, a time column (ISO 8601, or elapsed), temperatures in °C or °F, volts, amps;
/// comma, semicolon or tab, decimal point or comma. Errors as readFile(); badInput names the line of whatever
/// makes no sense, and nothing is taken from such a file.
Result<CsvReadings> readCsv(const std::filesystem::path& path, const CsvOptions& options = {});

/// The same from the bytes of a file; errors have the line but no file.
Result<CsvReadings> parseCsv(std::string bytes, const CsvOptions& options = {});

} // namespace ringhold
