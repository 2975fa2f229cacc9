#include "core/exchange/brought_file.h"

#include "core/exchange/file.h"
#include "core/exchange/firing_json.h"

#include <algorithm>

namespace ringhold {

namespace {

Result<BroughtFile> fromJson(std::string_view text, const std::filesystem::path& path, const BroughtAs& as) {
    auto record = parseFiring(text, path.string());
    if (!record)
        return record.error();
    BroughtFile brought{.record = std::move(*record), .isJson = true};
    if (!as.kiln.empty())
        brought.record.kiln.name = as.kiln;
    if (!as.title.empty())
        brought.record.firing.title = as.title;
    if (as.plan)
        brought.record.firing.plan = as.plan;
    return brought;
}

/// Each column as a channel, all readings in time order.
void takeChannels(const CsvReadings& readings, FiringRecord& record) {
    for (const auto& column : readings.channels) {
        const auto id = static_cast<ChannelId>(record.channels.size() + 1);
        record.channels.push_back(
            {.id = id, .firing = {}, .quantity = column.quantity, .label = column.label, .probe = {}});
        for (const auto& [at, value] : column.values)
            record.readings.push_back({.channel = id, .at = at, .value = value});
    }
    std::ranges::stable_sort(record.readings, {}, &Reading::at);
}

Result<BroughtFile> fromCsv(std::string bytes, const std::filesystem::path& path, const CsvOptions& options,
                            const BroughtAs& as) {
    auto readings = parseCsv(std::move(bytes), options);
    if (!readings) {
        Error error = readings.error();
        error.file = path.string();
        return error;
    }
    if (!readings->absolute)
        return Error{ErrorKind::badInput, "its times have no date; say when it began (--began)",
                     path.string()};
    if (as.kiln.empty())
        return Error{ErrorKind::badInput, "it does not say which kiln it is of", path.string()};
    BroughtFile brought{.record = {}, .rowsSkipped = readings->skipped, .notTaken = readings->ignored};
    takeChannels(*readings, brought.record);
    brought.record.kiln.name = as.kiln;
    brought.record.kiln.fuel = as.fuel.value_or(Fuel::electric);
    auto& firing = brought.record.firing;
    firing.title = as.title.empty() ? path.stem().string() : as.title;
    firing.began = brought.record.readings.front().at;
    firing.ended = brought.record.readings.back().at;
    firing.plan = as.plan;
    return brought;
}

} // namespace

bool looksLikeJson(std::string_view bytes) {
    if (bytes.starts_with("\uFEFF"))
        bytes.remove_prefix(3);
    const auto first = bytes.find_first_not_of(" \t\r\n");
    return first != std::string_view::npos && bytes[first] == '{';
}

Result<BroughtFile> broughtFrom(std::string bytes, const std::filesystem::path& path,
                                const CsvOptions& options, const BroughtAs& as) {
    return looksLikeJson(bytes) ? fromJson(bytes, path, as) : fromCsv(std::move(bytes), path, options, as);
}

Result<BroughtFile> bringFile(const std::filesystem::path& path, const CsvOptions& options,
                              const BroughtAs& as) {
    auto bytes = readFile(path);
    return bytes ? broughtFrom(std::move(*bytes), path, options, as) : bytes.error();
}

} // namespace ringhold
