// The part of firing_intake.h that recognises a firing.
#include "core/book/firing_intake.h"
#include "core/book/read_sql.h"

#include <algorithm>
#include <cmath>

namespace ringhold {

namespace {

struct Sample {
    Instant at;
    double celsius = 0;
};

constexpr double sameWithin_C = 0.05;
constexpr double shareOfTheSame = 0.9;

bool earlier(const Sample& a, const Sample& b) {
    return a.at != b.at ? a.at < b.at : a.celsius < b.celsius;
}

/// Of all temperature channels, struck or not, in order.
std::vector<Sample> temperaturesOf(const FiringRecord& record) {
    std::vector<ChannelId> channels;
    for (const auto& channel : record.channels)
        if (channel.quantity == Quantity::temperature)
            channels.push_back(channel.id);
    std::vector<Sample> samples;
    for (const auto& reading : record.readings)
        if (std::ranges::count(channels, reading.channel) > 0)
            samples.push_back({reading.at, reading.value});
    std::ranges::sort(samples, earlier);
    return samples;
}

std::vector<Sample> temperaturesOf(SQLite::Database& database, FiringId firing) {
    SQLite::Statement statement(database,
                                "SELECT at_ms, value FROM reading WHERE channel IN (SELECT id FROM channel "
                                "WHERE firing = ? AND quantity = 'temperature') ORDER BY at_ms, value");
    sql::bindAll(statement, firing);
    std::vector<Sample> samples;
    while (statement.executeStep())
        samples.push_back({sql::instantIn(statement.getColumn(0)), statement.getColumn(1).getDouble()});
    return samples;
}

/// How many of one are among the other, each counted once.
std::size_t shared(const std::vector<Sample>& one, const std::vector<Sample>& other) {
    std::size_t count = 0;
    std::size_t next = 0;
    for (const auto& sample : one) {
        while (next < other.size() &&
               (other[next].at < sample.at ||
                (other[next].at == sample.at && other[next].celsius < sample.celsius - sameWithin_C)))
            ++next;
        if (next < other.size() && other[next].at == sample.at &&
            std::abs(other[next].celsius - sample.celsius) <= sameWithin_C) {
            ++count;
            ++next;
        }
    }
    return count;
}

bool areTheSame(const std::vector<Sample>& one, const std::vector<Sample>& other) {
    const std::size_t smaller = std::min(one.size(), other.size());
    return smaller > 0 &&
           static_cast<double>(shared(one, other)) >= shareOfTheSame * static_cast<double>(smaller);
}

} // namespace

Result<std::optional<FiringSummary>> sameFiring(const Book& book, const FiringRecord& record) {
    const auto samples = temperaturesOf(record);
    FiringFilter filter;
    if (!samples.empty())
        filter.before = samples.back().at + std::chrono::milliseconds(1);
    const auto firings = BookReader(book).firings(filter);
    if (!firings)
        return firings.error();
    return sql::read(book, [&](SQLite::Database& database) -> std::optional<FiringSummary> {
        for (const auto& firing : *firings) {
            const bool quiet = samples.empty() && firing.began == record.firing.began &&
                               firing.title == record.firing.title && firing.kilnName == record.kiln.name;
            const bool overlaps =
                !samples.empty() && firing.lastReading && *firing.lastReading >= samples.front().at;
            if (quiet || (overlaps && areTheSame(samples, temperaturesOf(database, firing.id))))
                return firing;
        }
        return std::nullopt;
    });
}

} // namespace ringhold
