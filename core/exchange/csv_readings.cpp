#include "core/exchange/csv_readings.h"

#include "core/exchange/csv_clock.h"
#include "core/exchange/csv_header.h"
#include "core/exchange/csv_number.h"
#include "core/exchange/csv_rows.h"
#include "core/exchange/csv_text.h"
#include "core/exchange/file.h"
#include "core/exchange/text_decoding.h"

#include <algorithm>

namespace ringhold {

namespace {

using Cells = std::vector<std::string_view>;

Error at(long line, Error error) {
    error.line = line;
    return error;
}

Error bad(long line, std::string what) {
    return {ErrorKind::badInput, std::move(what), "", line};
}

bool isEmptyRow(const Cells& cells) {
    return std::all_of(cells.begin(), cells.end(), [](auto cell) { return trimmedCell(cell).empty(); });
}

double inOwnUnit(double value, Scale scale) {
    switch (scale) {
    case Scale::fahrenheit:
        return Temperature::fromFahrenheit(value).celsius();
    case Scale::percent:
        return value / 100.0;
    case Scale::asIs:
        break;
    }
    return value;
}

struct Range {
    double lowest;
    double highest;
    const char* tooLow;
    const char* tooHigh;
};

/// What a channel can sensibly hold.
Range rangeOf(Quantity quantity) {
    switch (quantity) {
    case Quantity::temperature:
        return {coldestReading.celsius(), hottestReading.celsius(), "is colder than any kiln",
                "is hotter than any kiln"};
    case Quantity::duty:
        return {0.0, 1.0, "is less than no power", "is more than full power"};
    default:
        return {-1e5, 1e5, "is no sensible reading", "is no sensible reading"};
    }
}

const char* unitShown(Quantity quantity, Scale scale) {
    if (quantity != Quantity::temperature)
        return "";
    return scale == Scale::fahrenheit ? " °F" : " °C";
}

/// Takes rows one after the other into the channels.
class RowTaker {
  public:
    RowTaker(const CsvHeader& header, CsvClock clock, char separator)
        : m_header(header), m_clock(std::move(clock)), m_numbers(separator == ','),
          m_values(header.values.size()) {
        for (const auto& column : header.values)
            m_readings.channels.push_back({column.quantity, column.label, column.header, {}});
        m_readings.ignored = header.ignored;
        m_readings.absolute = m_clock.isAbsolute();
    }

    void reserve(std::size_t rows) {
        for (auto& channel : m_readings.channels)
            channel.values.reserve(rows);
    }

    Status take(const Cells& cells, long line) {
        for (std::size_t i = m_header.columns; i < cells.size(); ++i)
            if (!trimmedCell(cells[i]).empty())
                return bad(line, "the row has more cells than the header");
        if (isEmptyRow(cells)) {
            ++m_readings.skipped;
            return {};
        }
        if (Status values = readValues(cells); !values.ok())
            return at(line, values.error());
        const auto instant = m_clock.read(cellAt(cells, m_header.time.index), m_previous);
        if (!instant)
            return at(line, instant.error());
        return store(*instant, line);
    }

    CsvReadings finish() { return std::move(m_readings); }

  private:
    static std::string_view cellAt(const Cells& cells, std::size_t column) {
        return column < cells.size() ? cells[column] : std::string_view();
    }

    /// The row's values, each in its quantity's unit, to m_values.
    Status readValues(const Cells& cells) {
        for (std::size_t i = 0; i < m_values.size(); ++i) {
            m_values[i].reset();
            const std::string_view cell = trimmedCell(cellAt(cells, m_header.values[i].index));
            if (cell.empty())
                continue;
            if (Status value = readValue(cell, i); !value.ok())
                return value;
        }
        return {};
    }

    Status readValue(std::string_view cell, std::size_t i) {
        const ValueColumn& column = m_header.values[i];
        const auto number = m_numbers.read(cell);
        if (!number)
            return refused(number.error().what, column);
        const double value = inOwnUnit(*number, column.scale);
        const Range range = rangeOf(column.quantity);
        if (value < range.lowest || value > range.highest)
            return refused(std::string(cell) + unitShown(column.quantity, column.scale) + " " +
                               (value < range.lowest ? range.tooLow : range.tooHigh),
                           column);
        m_values[i] = value;
        return {};
    }

    static Error refused(const std::string& why, const ValueColumn& column) {
        return {ErrorKind::badInput, why + ", in column " + shownCell(column.header)};
    }

    Status store(Instant instant, long line) {
        if (m_previous && instant < *m_previous)
            return bad(line, "the time runs backwards, from " + formatIso8601(*m_previous) + " to " +
                                 formatIso8601(instant));
        bool gave = false;
        for (std::size_t i = 0; i < m_values.size(); ++i) {
            if (!m_values[i])
                continue;
            auto& values = m_readings.channels[i].values;
            if (values.empty() || values.back().at != instant) {
                values.push_back({instant, *m_values[i]});
                gave = true;
            } else if (values.back().value != *m_values[i]) {
                return bad(line, "the column " + shownCell(m_header.values[i].header) +
                                     " has two different values at " + formatIso8601(instant));
            }
        }
        ++(gave ? m_readings.rows : m_readings.skipped);
        m_previous = instant;
        return {};
    }

    const CsvHeader& m_header;
    CsvClock m_clock;
    CsvNumbers m_numbers;
    std::vector<std::optional<double>> m_values;
    std::optional<Instant> m_previous;
    CsvReadings m_readings;
};

/// Header and first row of data; the rest of the rows is still to come.
struct Opening {
    CsvHeader header;
    long headerLine = 1;
    Cells first;
    std::size_t skipped = 0; ///< empty rows between the two
};

Result<Opening> readOpening(CsvRows& rows, const CsvOptions& options) {
    Opening opening;
    Cells cells;
    rows.next(cells);
    if (rows.error())
        return *rows.error();
    opening.headerLine = rows.line();
    // The cells of a row live until the next is read: keep the header's text.
    const std::vector<std::string> texts(cells.begin(), cells.end());
    const Cells headerCells(texts.begin(), texts.end());
    while (rows.next(opening.first) && isEmptyRow(opening.first))
        ++opening.skipped;
    if (rows.error())
        return *rows.error();
    const bool headerOnly = opening.first.empty() || isEmptyRow(opening.first);
    auto header = readCsvHeader(headerCells, headerOnly ? Cells() : opening.first, options);
    if (!header)
        return at(opening.headerLine, header.error());
    if (headerOnly)
        return bad(opening.headerLine, "there is a header and no reading below it");
    opening.header = std::move(*header);
    return opening;
}

} // namespace

Curve CsvReadings::curve() const {
    Curve curve;
    curve.reserve(control().values.size());
    for (const auto& [instant, value] : control().values)
        curve.push_back({instant, Temperature::fromCelsius(value)});
    return curve;
}

Result<CsvReadings> parseCsv(std::string bytes, const CsvOptions& options) {
    const auto text = decodeText(std::move(bytes));
    if (!text)
        return text.error();
    const CsvLayout layout = layoutOf(*text);
    if (layout.text.empty())
        return bad(1, "is empty");
    CsvRows rows(layout.text, layout.separator, layout.line);
    auto opening = readOpening(rows, options);
    if (!opening)
        return opening.error();
    const CsvHeader& header = opening->header;
    Cells cells = opening->first;
    long line = rows.line();
    const std::size_t timeCell = header.time.index;
    auto clock =
        CsvClock::make(header.time, timeCell < cells.size() ? cells[timeCell] : std::string_view(), options);
    if (!clock)
        return at(line, clock.error());

    RowTaker taker(header, std::move(*clock), layout.separator);
    taker.reserve(static_cast<std::size_t>(std::count(layout.text.begin(), layout.text.end(), '\n')));
    do {
        line = rows.line();
        if (const Status taken = taker.take(cells, line); !taken.ok())
            return taken.error();
    } while (rows.next(cells));
    if (rows.error())
        return *rows.error();
    CsvReadings readings = taker.finish();
    readings.skipped += opening->skipped;
    if (readings.control().values.empty())
        return bad(line, "the column " + shownCell(readings.control().header) + " has no value in any row");
    return readings;
}

Result<CsvReadings> readCsv(const std::filesystem::path& path, const CsvOptions& options) {
    auto bytes = readFile(path);
    if (!bytes)
        return bytes.error();
    auto readings = parseCsv(std::move(*bytes), options);
    if (readings)
        return readings;
    Error error = readings.error();
    error.file = path.string();
    return error;
}

} // namespace ringhold
