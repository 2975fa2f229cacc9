// What the header of a readings CSV says: which column is the time, which hold values, in what units.
#pragma once

#include "core/base/result.h"
#include "core/exchange/csv_options.h"
#include "core/exchange/csv_vocabulary.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace ringhold {

struct CsvHeader {
    TimeColumn time;
    std::vector<ValueColumn> values;  ///< the control probe's first
    std::vector<std::string> ignored; ///< headers of all other columns
    std::size_t columns = 0;
};

/// Reads a header row; `first` is the row below it (empty when there is none), for telling a header from data
/// and one time column from another. badInput when there is no header, no time, no temperature column, a
/// temperature without unit, or no column of the name that the options give. Unless they name it, the control
/// probe's column is the first of temperature that is no set point.
Result<CsvHeader> readCsvHeader(const std::vector<std::string_view>& cells,
                                const std::vector<std::string_view>& first, const CsvOptions& options);

} // namespace ringhold
