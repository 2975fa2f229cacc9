#include "core/exchange/csv_header.h"

#include "core/exchange/csv_heading.h"
#include "core/exchange/csv_text.h"
#include "core/exchange/csv_vocabulary.h"
#include "core/exchange/stamp.h"

#include <algorithm>
#include <charconv>

namespace ringhold {

namespace {

bool isNumber(std::string_view cell) {
    double value = 0;
    const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
    return !cell.empty() && error == std::errc() && end == cell.data() + cell.size();
}

/// A first row of numbers or with a date in it is data.
bool isData(const std::vector<ColumnHeading>& headings) {
    const auto stamp = [](const ColumnHeading& h) { return looksLikeStamp(h.text()); };
    const auto value = [](const ColumnHeading& h) {
        return h.text().empty() || h.text().find_first_not_of("0123456789.,:+-") == std::string::npos ||
               isNumber(h.text());
    };
    return std::any_of(headings.begin(), headings.end(), stamp) ||
           std::all_of(headings.begin(), headings.end(), value);
}

/// Sorts the columns into time, values and the rest.
class HeaderReader {
  public:
    HeaderReader(const std::vector<std::string_view>& cells, const std::vector<std::string_view>& first,
                 const CsvOptions& options)
        : m_first(first), m_options(options) {
        for (const auto cell : cells)
            m_headings.emplace_back(std::string(plainText(trimmedCell(cell))));
    }

    Result<CsvHeader> read() {
        if (isData(m_headings))
            return bad("the file has no header: its first line is data already");
        if (const Status known = checkNames(); !known)
            return known.error();
        const auto time = findTime();
        if (!time)
            return bad(
                "the header has no time column (such as time_utc, or elapsed_s with seconds from the start)");
        m_header.columns = m_headings.size();
        m_header.time = timeColumn(m_headings[*time]);
        m_header.time.index = *time;
        if (m_options.timeUnit && !m_header.time.unit)
            m_header.time.unit = m_options.timeUnit;
        for (std::size_t i = 0; i < m_headings.size(); ++i)
            if (i != *time)
                if (const Status sorted = sortIn(i); !sorted.ok())
                    return sorted.error();
        if (const Status control = putControlFirst(); !control.ok())
            return control.error();
        return std::move(m_header);
    }

  private:
    static Error bad(std::string what) { return {ErrorKind::badInput, std::move(what)}; }

    bool startsWithStamp(std::size_t column) const {
        return column < m_first.size() && looksLikeStamp(trimmedCell(m_first[column]));
    }

    static bool isNamed(const ColumnHeading& heading, const std::string& name) {
        return lowered(heading.text()) == lowered(trimmedCell(name));
    }

    Status checkName(const std::string& name) const {
        if (std::ranges::any_of(m_headings, [&](const auto& each) { return isNamed(each, name); }))
            return {};
        return bad("there is no column " + shownCell(name));
    }

    /// Whoever names a column that is not there means another file.
    Status checkNames() const {
        if (!m_options.time.empty())
            if (Status known = checkName(m_options.time); !known)
                return known;
        for (const auto& [name, meaning] : m_options.columns)
            if (Status known = checkName(name); !known)
                return known;
        return {};
    }

    /// What a person said of the column.
    std::optional<ColumnMeaning> saidOf(const ColumnHeading& heading) const {
        for (const auto& [name, meaning] : m_options.columns)
            if (isNamed(heading, name))
                return meaning;
        return std::nullopt;
    }

    /// A column of dates before one that counts from the beginning, what is named a time before what only
    /// looks like one.
    std::optional<std::size_t> findTime() const {
        if (!m_options.time.empty())
            return static_cast<std::size_t>(
                std::ranges::find_if(m_headings,
                                     [&](const auto& each) { return isNamed(each, m_options.time); }) -
                m_headings.begin());
        std::optional<std::size_t> named;
        std::optional<std::size_t> dated;
        for (std::size_t i = 0; i < m_headings.size(); ++i) {
            const bool time = !valueColumn(m_headings[i]) && isTime(m_headings[i]);
            if (time && startsWithStamp(i))
                return i;
            if (time && !named)
                named = i;
            if (startsWithStamp(i) && !dated)
                dated = i;
        }
        return dated ? dated : named;
    }

    bool isControl(const ColumnHeading& heading, const std::string& label) const {
        const std::string wanted = lowered(trimmedCell(m_options.control));
        return !wanted.empty() && (wanted == lowered(heading.text()) || wanted == lowered(label));
    }

    Status sortIn(std::size_t column) {
        const ColumnHeading& heading = m_headings[column];
        const auto said = saidOf(heading);
        auto value = said ? columnMeaning(heading, *said) : valueColumn(heading);
        const bool control = isControl(heading, value ? value->label : heading.text());
        if (!value && !said && ((isBareTemperature(heading) && !isTime(heading)) || control)) {
            if (!m_options.unit)
                return bad("the column " + shownCell(heading.text()) +
                           " does not say whether it is °C or °F");
            value = bareColumn(heading, *m_options.unit);
        }
        if (!value) {
            m_header.ignored.push_back(heading.text());
            return {};
        }
        value->index = column;
        m_header.values.push_back(std::move(*value));
        return {};
    }

    std::string temperatureNames() const {
        std::string names;
        for (const auto& value : m_header.values)
            if (value.quantity == Quantity::temperature)
                names += (names.empty() ? "" : ", ") + shownCell(value.header);
        return names;
    }

    std::vector<ValueColumn>::iterator findControl() {
        auto& values = m_header.values;
        const auto first = [&](const auto& test) {
            return std::find_if(values.begin(), values.end(), [&](const ValueColumn& value) {
                return value.quantity == Quantity::temperature && test(value);
            });
        };
        if (!m_options.control.empty())
            return first(
                [&](const auto& value) { return isControl(ColumnHeading(value.header), value.label); });
        const auto measured = first([](const auto& value) { return !isSetPoint(value); });
        return measured != values.end() ? measured : first([](const auto&) { return true; });
    }

    Status putControlFirst() {
        auto& values = m_header.values;
        const std::string temperatures = temperatureNames();
        if (temperatures.empty())
            return bad("the header has no temperature column (such as probe_C or temp (°F))");
        const auto control = findControl();
        if (control == values.end())
            return bad("there is no temperature column " + shownCell(m_options.control) + ", only " +
                       temperatures);
        std::rotate(values.begin(), control, control + 1);
        return {};
    }

    std::vector<ColumnHeading> m_headings;
    const std::vector<std::string_view>& m_first;
    const CsvOptions& m_options;
    CsvHeader m_header;
};

} // namespace

Result<CsvHeader> readCsvHeader(const std::vector<std::string_view>& cells,
                                const std::vector<std::string_view>& first, const CsvOptions& options) {
    return HeaderReader(cells, first, options).read();
}

} // namespace ringhold
