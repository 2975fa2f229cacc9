#include "app/verbs/csv_arguments.h"

#include <CLI/CLI.hpp>

namespace ringhold {

void CsvArguments::declare(CLI::App& command) {
    command.add_option("FILE", m_file, "Readings: CSV with a header, a time and a temperature column")
        ->required();
    command.add_option("--zone", m_zone, "Zone of times that have none, Europe/Lisbon for instance")
        ->type_name("NAME");
    command.add_option("--began", m_began, "When elapsed times begin, 2026-03-01T06:30 for instance")
        ->type_name("TIME");
    command.add_option("--unit", m_unit, "C or F, for temperature columns that do not say theirs");
    command.add_option("--column", m_column, "The control probe's column, if it is not the first")
        ->type_name("NAME");
}

std::string CsvArguments::zone() const {
    return m_zone.empty() ? localZone() : m_zone;
}

Result<CsvOptions> CsvArguments::options() const {
    CsvOptions options{.zone = zone(), .began = {}, .unit = {}, .control = m_column};
    if (!m_began.empty()) {
        const auto began = parseIso8601(m_began, zone());
        if (!began)
            return Error{began.error().kind, "--began: " + began.error().what};
        options.began = *began;
    }
    if (m_unit == "C" || m_unit == "c")
        options.unit = TemperatureUnit::celsius;
    else if (m_unit == "F" || m_unit == "f")
        options.unit = TemperatureUnit::fahrenheit;
    else if (!m_unit.empty())
        return Error{ErrorKind::badInput, "--unit is C or F, not \"" + m_unit + "\""};
    return options;
}

Result<CsvReadings> CsvArguments::read() const {
    const auto given = options();
    return given ? readCsv(m_file, *given) : given.error();
}

} // namespace ringhold
