#include "core/firing/paper_log.h"

#include <algorithm>

namespace ringhold {

namespace {

constexpr Duration day = std::chrono::hours(24);

bool isBlank(const std::string& text) {
    return text.find_first_not_of(" \t") == std::string::npos;
}

Instant wholeMinute(Instant at) {
    return std::chrono::floor<std::chrono::minutes>(at);
}

/// The first such clock time that is not before `after`.
std::optional<Instant> nextClockTime(const std::string& text, Instant after, const std::string& zone) {
    return readClockTime(text, after + day - std::chrono::seconds(1), zone);
}

/// When the row was, or what is wrong with its time.
Result<Instant> timeOf(const PaperRow& row, std::optional<Instant> above, const PaperContext& context) {
    if (isBlank(row.time)) {
        if (above)
            return *above;
        return Error{ErrorKind::badInput, "when was it? a time like 21:14"};
    }
    const auto at = nextClockTime(row.time, above.value_or(wholeMinute(context.from)), context.zone);
    if (!at)
        return Error{ErrorKind::badInput, "a time is like 21:14"};
    if (*at > context.until)
        return Error{ErrorKind::badInput, "that time is still to come, or long after the firing"};
    return std::max(*at, context.from);
}

/// A cell read as that kind of line at the row's time.
Status take(const std::string& cell, LineKind kind, Instant at, const PaperContext& context,
            PaperRowRead& read) {
    if (isBlank(cell))
        return {};
    auto line = readWrittenLine(cell, kind, {at, context.zone, context.fahrenheit, context.cones});
    if (!line)
        return line.error();
    line->at = at; // whatever the words seem to say
    read.lines.push_back(std::move(*line));
    return {};
}

PaperRowRead readRow(const PaperRow& row, std::optional<Instant> above, const PaperContext& context) {
    PaperRowRead read;
    if (isBlank(row.time) && isBlank(row.reading) && isBlank(row.line))
        return read;
    const auto at = timeOf(row, above, context);
    if (!at) {
        read.fault = at.error().what;
        return read;
    }
    read.at = *at;
    Status taken = take(row.reading, LineKind::reading, *at, context, read);
    if (taken)
        taken = take(row.line, LineKind::open, *at, context, read);
    if (!taken) {
        read.lines.clear();
        read.fault = taken.error().what;
    }
    return read;
}

} // namespace

std::vector<PaperRowRead> readPaperLog(std::span<const PaperRow> rows, const PaperContext& context) {
    std::vector<PaperRowRead> all;
    std::optional<Instant> above;
    for (const auto& row : rows) {
        all.push_back(readRow(row, above, context));
        if (all.back().at)
            above = all.back().at;
    }
    return all;
}

} // namespace ringhold
