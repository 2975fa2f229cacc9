#include "core/exchange/csv_number.h"

#include "core/exchange/csv_text.h"

#include <charconv>
#include <cmath>
#include <optional>
#include <string>

namespace ringhold {

namespace {

std::optional<double> parsed(std::string_view cell) {
    if (cell.starts_with('+') && !cell.starts_with("+-"))
        cell.remove_prefix(1);
    double value = 0;
    const char* end = cell.data() + cell.size();
    const auto [stop, error] = std::from_chars(cell.data(), end, value);
    return error == std::errc() && stop == end ? std::optional(value) : std::nullopt;
}

Error bad(std::string_view cell, const std::string& why) {
    return {ErrorKind::badInput, shownCell(cell) + " " + why};
}

} // namespace

Result<double> CsvNumbers::read(std::string_view cell) {
    const auto value = parsed(cell);
    if (!value)
        return readWithComma(cell);
    if (!std::isfinite(*value))
        return bad(cell, "is no reading");
    if (cell.find('.') == std::string_view::npos)
        return *value;
    if (m_decimal == ',')
        return bad(cell, "has a decimal point where the lines above have decimal commas");
    m_decimal = '.';
    return *value;
}

Result<double> CsvNumbers::readWithComma(std::string_view cell) {
    const auto comma = cell.find(',');
    std::string withPoint(cell);
    if (comma != std::string_view::npos)
        withPoint[comma] = '.';
    const auto value = parsed(withPoint);
    if (!value || comma == std::string_view::npos)
        return bad(cell, "is not a number");
    const bool thousands = cell.size() - comma == 4 && m_decimal != ',';
    if (m_commaSeparated && thousands)
        return bad(cell, "may be a decimal or a thousand: write it without the comma");
    if (m_decimal == '.')
        return bad(cell, "has a decimal comma where the lines above have decimal points");
    m_decimal = ',';
    return *value;
}

} // namespace ringhold
