// The CSV file that a verb reads, with what a person has to say about it.
#pragma once

#include "core/exchange/csv_readings.h"

#include <CLI/App.hpp>

#include <optional>
#include <string>

namespace ringhold {

class CsvArguments {
  public:
    /// FILE, --zone, --began, --unit and --column.
    void declare(CLI::App& command);

    const std::string& file() const { return m_file; }
    /// The zone named, or this computer's.
    std::string zone() const;
    Result<CsvReadings> read() const;

  private:
    Result<CsvOptions> options() const;

    std::string m_file;
    std::string m_zone;
    std::string m_began;
    std::string m_unit;
    std::string m_column;
};

} // namespace ringhold
