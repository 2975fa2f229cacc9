#include "app/verbs/csv_arguments.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <array>

namespace ringhold {

namespace {

constexpr std::array<std::pair<std::string_view, ColumnMeaning>, 8> meanings{{
    {"C", ColumnMeaning::celsius},
    {"F", ColumnMeaning::fahrenheit},
    {"V", ColumnMeaning::volts},
    {"A", ColumnMeaning::amps},
    {"mV", ColumnMeaning::oxygenMillivolts},
    {"share", ColumnMeaning::dutyShare},
    {"percent", ColumnMeaning::dutyPercent},
    {"nothing", ColumnMeaning::leftOut},
}};

constexpr std::array<std::pair<std::string_view, Duration>, 3> timeUnits{{
    {"s", std::chrono::seconds(1)},
    {"min", std::chrono::minutes(1)},
    {"h", std::chrono::hours(1)},
}};

template <class Named>
auto valueNamed(const Named& all, std::string_view name) {
    const auto found = std::ranges::find(all, name, [](const auto& each) { return each.first; });
    return found == all.end() ? std::nullopt : std::optional(found->second);
}

} // namespace

void CsvArguments::declare(CLI::App& command, const std::string& file) {
    command.add_option("FILE", m_file, file)->required();
    command.add_option("--zone", m_zone, "Zone of times that have none, Europe/Lisbon for instance")
        ->type_name("NAME");
    command.add_option("--began", m_began, "When elapsed times begin, 2026-03-01T06:30 for instance")
        ->type_name("TIME");
    command.add_option("--unit", m_unit, "C or F, for temperature columns that do not say theirs");
    command.add_option("--column", m_column, "The control probe's column, if it is not the first")
        ->type_name("NAME");
    command.add_option("--time", m_time, "The time's column, if it is not found by itself")
        ->type_name("NAME");
    command.add_option("--time-unit", m_timeUnit, "s, min or h, for elapsed times that do not say theirs");
    command
        .add_option("--take", m_take,
                    "What a column holds, against its header: NAME=C, F, V, A, mV, share, percent (of full "
                    "power) or nothing")
        ->type_name("NAME=WHAT");
}

std::string CsvArguments::zone() const {
    return m_zone.empty() ? localZone() : m_zone;
}

Result<CsvOptions> CsvArguments::options() const {
    CsvOptions options;
    options.zone = zone();
    options.control = m_column;
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
    if (const Status times = takeTimes(options); !times)
        return times.error();
    if (const Status columns = takeColumns(options); !columns)
        return columns.error();
    return options;
}

Status CsvArguments::takeTimes(CsvOptions& options) const {
    options.time = m_time;
    if (m_timeUnit.empty())
        return {};
    options.timeUnit = valueNamed(timeUnits, m_timeUnit);
    if (options.timeUnit)
        return {};
    return Error{ErrorKind::badInput, "--time-unit is s, min or h, not \"" + m_timeUnit + "\""};
}

Status CsvArguments::takeColumns(CsvOptions& options) const {
    for (const auto& text : m_take) {
        const auto equals = text.rfind('=');
        const auto meaning = equals == std::string::npos
                                 ? std::nullopt
                                 : valueNamed(meanings, std::string_view(text).substr(equals + 1));
        if (!meaning)
            return Error{ErrorKind::badInput,
                         "--take is NAME=C, F, V, A, mV, share, percent or nothing, not \"" + text + "\""};
        options.columns[text.substr(0, equals)] = *meaning;
    }
    return {};
}

Result<CsvReadings> CsvArguments::read() const {
    const auto given = options();
    return given ? readCsv(m_file, *given) : given.error();
}

} // namespace ringhold
