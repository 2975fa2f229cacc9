#include "core/exchange/csv_preview.h"

#include "core/exchange/csv_header.h"
#include "core/exchange/csv_rows.h"
#include "core/exchange/csv_text.h"
#include "core/exchange/text_decoding.h"

#include <algorithm>

namespace ringhold {

namespace {

using Texts = std::vector<std::string>;
using Cells = std::vector<std::string_view>;

bool isBlank(const Texts& row) {
    return std::ranges::all_of(row, [](const auto& cell) { return trimmedCell(cell).empty(); });
}

ColumnMeaning meaningOf(const ValueColumn& column) {
    switch (column.quantity) {
    case Quantity::lineVolts:
        return ColumnMeaning::volts;
    case Quantity::lineAmps:
        return ColumnMeaning::amps;
    case Quantity::oxygenMillivolts:
        return ColumnMeaning::oxygenMillivolts;
    case Quantity::duty:
        return column.scale == Scale::percent ? ColumnMeaning::dutyPercent : ColumnMeaning::dutyShare;
    case Quantity::temperature:
        break;
    }
    return column.scale == Scale::fahrenheit ? ColumnMeaning::fahrenheit : ColumnMeaning::celsius;
}

/// Puts down how each column would be taken, or why none can be.
void tellRoles(CsvPreview& preview, const Texts& header, const CsvOptions& options) {
    const auto filled = std::ranges::find_if_not(preview.rows, isBlank);
    const Texts none;
    const Texts& first = filled == preview.rows.end() ? none : *filled;
    const auto read =
        readCsvHeader(Cells(header.begin(), header.end()), Cells(first.begin(), first.end()), options);
    if (!read) {
        preview.fault = read.error();
        return;
    }
    preview.columns[read->time.index].role = PreviewColumn::Role::time;
    for (const auto& value : read->values) {
        const bool control = &value == &read->values.front();
        auto& column = preview.columns[value.index];
        column.role = control ? PreviewColumn::Role::control : PreviewColumn::Role::value;
        column.meaning = meaningOf(value);
    }
}

} // namespace

Result<CsvPreview> previewCsv(std::string bytes, const CsvOptions& options, std::size_t most) {
    const auto text = decodeText(std::move(bytes));
    if (!text)
        return text.error();
    const CsvLayout layout = layoutOf(*text);
    CsvRows rows(layout.text, layout.separator, layout.line);
    Cells cells;
    if (!rows.next(cells))
        return rows.error() ? *rows.error() : Error{ErrorKind::badInput, "is empty", "", 1};
    CsvPreview preview{.separator = layout.separator, .columns = {}, .rows = {}};
    const Texts header(cells.begin(), cells.end());
    for (const auto& cell : header)
        preview.columns.push_back({std::string(plainText(trimmedCell(cell)))});
    while (preview.rows.size() < most && rows.next(cells)) {
        preview.rows.emplace_back(cells.begin(), cells.end());
        preview.rows.back().resize(std::max(cells.size(), header.size()));
    }
    if (rows.error())
        return *rows.error();
    tellRoles(preview, header, options);
    return preview;
}

} // namespace ringhold
