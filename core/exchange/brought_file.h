// A file that somebody brings, whatever it is: the readings of a past firing as CSV, or a whole firing as
// JSON.
#pragma once

#include "core/base/result.h"
#include "core/exchange/csv_readings.h"
#include "core/firing/firing_record.h"

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace ringhold {

/// What is said about a firing that comes as a CSV, which tells only its readings.
struct BroughtAs {
    std::string kiln{};  ///< JSON has its own, which this goes before when it is not empty
    std::string title{}; ///< likewise; empty for a CSV: the file's name
    std::optional<Plan> plan{};
    std::optional<Fuel> fuel{}; ///< of a kiln that the book does not have yet
};

struct BroughtFile {
    FiringRecord record;
    bool isJson = false;
    std::size_t rowsSkipped = 0;         ///< of a CSV
    std::vector<std::string> notTaken{}; ///< headers of a CSV's columns that hold nothing Ringhold keeps
};

/// True for the text of a JSON file: it begins with a brace, as no header of a CSV does.
bool looksLikeJson(std::string_view bytes);

/// The firing in these bytes, `path` naming the file. Errors as parseCsv() and parseFiring(); badInput too
/// when a CSV comes without a kiln, or its times without a date.
Result<BroughtFile> broughtFrom(std::string bytes, const std::filesystem::path& path,
                                const CsvOptions& options, const BroughtAs& as);

/// The same from the file; errors as readFile() besides.
Result<BroughtFile> bringFile(const std::filesystem::path& path, const CsvOptions& options,
                              const BroughtAs& as);

} // namespace ringhold
