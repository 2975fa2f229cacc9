// The beginning of a CSV file as it stands there, and how it would be taken: to be looked at before anything
// is written.
#pragma once

#include "core/base/result.h"
#include "core/exchange/csv_options.h"
#include "core/firing/records.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace ringhold {

/// How one column of the file would be taken.
struct PreviewColumn {
    std::string header;
    enum class Role { time, control, value, notTaken } role = Role::notTaken;
    std::optional<ColumnMeaning> meaning{}; ///< of a value
};

struct CsvPreview {
    char separator = ',';
    std::vector<PreviewColumn> columns;
    std::vector<std::vector<std::string>> rows; ///< below the header, each as wide as the header or wider
    /// Why it cannot be taken with these options; then no column has a role.
    std::optional<Error> fault{};
};

/// Looks at the first `rows` rows. badInput when there is no header to show at all: empty, no text, broken
/// quotes.
Result<CsvPreview> previewCsv(std::string bytes, const CsvOptions& options = {}, std::size_t rows = 12);

} // namespace ringhold
