// The CSV file that a verb reads, with what a person has to say about it.
#pragma once

#include "core/exchange/csv_readings.h"

#include <CLI/App.hpp>

#include <optional>
#include <string>
#include <vector>

namespace ringhold {

class CsvArguments {
  public:
    /// FILE, --zone, --began, --unit, --column, --time, --time-unit and --take; `file` is the help of FILE.
    void declare(CLI::App& command,
                 const std::string& file = "Readings: CSV with a header, a time and a temperature column");

    const std::string& file() const { return m_file; }
    /// The zone named, or this computer's.
    std::string zone() const;
    Result<CsvReadings> read() const;
    Result<CsvOptions> options() const;

  private:
    Status takeTimes(CsvOptions& options) const;
    Status takeColumns(CsvOptions& options) const;

    std::string m_file;
    std::string m_zone;
    std::string m_began;
    std::string m_unit;
    std::string m_column;
    std::string m_time;
    std::string m_timeUnit;
    std::vector<std::string> m_take;
};

} // namespace ringhold
