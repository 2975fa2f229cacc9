#include "core/exchange/csv_export.h"

#include "core/exchange/csv_text.h"
#include "core/exchange/csv_vocabulary.h"
#include "core/exchange/file.h"
#include "core/exchange/stamp.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <map>
#include <set>

namespace ringhold {

namespace {

std::string nameOf(Quantity quantity) {
    switch (quantity) {
    case Quantity::temperature:
        return "probe";
    case Quantity::lineVolts:
    case Quantity::lineAmps:
        return "line";
    case Quantity::oxygenMillivolts:
        return "flue";
    case Quantity::duty:
        return "power";
    }
    return "value";
}

std::string labelOf(const Channel& channel, const std::vector<Probe>& probes) {
    if (!channel.label.empty())
        return channel.label;
    const auto probe = std::find_if(probes.begin(), probes.end(),
                                    [&](const Probe& each) { return channel.probe == each.id; });
    return probe != probes.end() && !probe->label.empty() ? probe->label : nameOf(channel.quantity);
}

std::vector<std::string> headersOf(const FiringRecord& record) {
    std::vector<std::string> headers;
    std::set<std::string> taken;
    for (const auto& channel : record.channels) {
        const std::string label = labelOf(channel, record.probes);
        std::string header = csvHeaderFor(channel.quantity, label);
        for (int number = 2; !taken.insert(header).second; ++number)
            header = csvHeaderFor(channel.quantity, label + " " + std::to_string(number));
        headers.push_back(header);
    }
    return headers;
}

using Columns = std::map<ChannelId, std::size_t>;

/// What counts, in time order; readings of one instant in the order of the record.
std::vector<const Reading*> readingsInOrder(const std::vector<Reading>& all, const Columns& columns) {
    std::vector<const Reading*> readings;
    readings.reserve(all.size());
    for (const auto& reading : all)
        if (!reading.struck && std::isfinite(reading.value) && columns.contains(reading.channel))
            readings.push_back(&reading);
    std::stable_sort(readings.begin(), readings.end(),
                     [](const Reading* a, const Reading* b) { return a->at < b->at; });
    return readings;
}

void appendNumber(std::string& out, double value) {
    char digits[32]; // the shortest form of a double has at most 24 characters
    const auto end = std::to_chars(std::begin(digits), std::end(digits), value).ptr;
    out.append(digits, static_cast<std::size_t>(end - digits));
}

void appendRow(std::string& out, Instant at, std::vector<std::optional<double>>& values) {
    appendStamp(out, at);
    for (auto& value : values) {
        out += ',';
        if (value)
            appendNumber(out, *value);
        value.reset();
    }
    out += '\n';
}

} // namespace

std::string formatCsv(const FiringRecord& record) {
    std::string out = "time_utc";
    for (const auto& header : headersOf(record))
        out += "," + textCell(header);
    out += '\n';

    Columns columns;
    for (const auto& channel : record.channels)
        columns.emplace(channel.id, columns.size());
    std::vector<std::optional<double>> values(record.channels.size());
    const auto readings = readingsInOrder(record.readings, columns);
    for (std::size_t i = 0; i < readings.size(); ++i) {
        values[columns.at(readings[i]->channel)] = readings[i]->value;
        if (i + 1 == readings.size() || readings[i + 1]->at != readings[i]->at)
            appendRow(out, readings[i]->at, values);
    }
    return out;
}

Status writeCsv(const std::filesystem::path& path, const FiringRecord& record) {
    return writeFile(path, formatCsv(record));
}

} // namespace ringhold
