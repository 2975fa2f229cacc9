// A firing's readings as a CSV file for spreadsheets and for readCsv().
#pragma once

#include "core/base/result.h"
#include "core/firing/firing_record.h"

#include <filesystem>
#include <string>

namespace ringhold {

/// A header "time_utc,probe_C,line_V,..." and a row for each instant: ISO 8601 UTC, a column for each channel
/// in °C, V, A, mV or share of full power, empty where the channel has no value then. Numbers are written so
/// that they come back bit by bit. Struck readings are left out; of two readings of one channel at one
/// instant the later in the record is kept. A channel without a label is named after its probe or quantity,
/// one that shares its name with another is numbered.
std::string formatCsv(const FiringRecord& record);

/// Writes that by writeFile(): whole, or not at all.
Status writeCsv(const std::filesystem::path& path, const FiringRecord& record);

} // namespace ringhold
