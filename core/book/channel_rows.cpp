#include "core/book/channel_rows.h"

#include <sqlite3.h>

#include <algorithm>
#include <memory>

namespace ringhold {

namespace {

constexpr const char* rowsOfChannel = "SELECT at_ms, value, by_hand, struck FROM reading WHERE channel = ? "
                                      "ORDER BY at_ms, seq";

/// Steps through a channel's rows. SQLiteCpp's own statement counts references at every column of every row.
class ChannelRows {
  public:
    ChannelRows(SQLite::Database& database, ChannelId channel)
        : m_database(database.getHandle()), m_channel(channel) {
        sqlite3_stmt* made = nullptr;
        demand(sqlite3_prepare_v2(m_database, rowsOfChannel, -1, &made, nullptr), SQLITE_OK);
        m_statement.reset(made);
        demand(sqlite3_bind_int64(made, 1, static_cast<sqlite3_int64>(channel)), SQLITE_OK);
    }

    bool next() {
        const int code = sqlite3_step(m_statement.get());
        if (code != SQLITE_DONE)
            demand(code, SQLITE_ROW);
        return code == SQLITE_ROW;
    }

    Instant at() const { return Instant(Duration(sqlite3_column_int64(m_statement.get(), 0))); }
    double value() const { return sqlite3_column_double(m_statement.get(), 1); }
    bool byHand() const { return sqlite3_column_int(m_statement.get(), 2) != 0; }
    bool struck() const { return sqlite3_column_int(m_statement.get(), 3) != 0; }
    Reading reading() const {
        return {m_channel, at(), value(), byHand() ? Origin::hand : Origin::instrument, struck()};
    }

  private:
    struct Finalize {
        void operator()(sqlite3_stmt* statement) const { sqlite3_finalize(statement); }
    };

    void demand(int code, int wanted) const {
        if (code != wanted)
            throw SQLite::Exception(m_database, code);
    }

    sqlite3* m_database;
    ChannelId m_channel;
    std::unique_ptr<sqlite3_stmt, Finalize> m_statement;
};

/// How many count, as the channel's triggers keep it: enough room for all but a few struck ones.
std::size_t roomFor(SQLite::Database& database, ChannelId channel) {
    SQLite::Statement count(database, "SELECT readings FROM channel WHERE id = ?");
    sql::bindAll(count, channel);
    return count.executeStep() ? static_cast<std::size_t>(count.getColumn(0).getInt64()) : 0;
}

void appendReadings(SQLite::Database& database, ChannelId channel, std::vector<Reading>& readings) {
    for (ChannelRows rows(database, channel); rows.next();)
        readings.push_back(rows.reading());
}

} // namespace

std::vector<Reading> readingsOf(SQLite::Database& database, ChannelId channel) {
    std::vector<Reading> readings;
    readings.reserve(roomFor(database, channel));
    appendReadings(database, channel, readings);
    return readings;
}

std::vector<Reading> readingsOf(SQLite::Database& database, const std::vector<Channel>& channels) {
    std::size_t room = 0;
    for (const auto& channel : channels)
        room += roomFor(database, channel.id);
    std::vector<Reading> readings;
    readings.reserve(room);
    for (const auto& channel : channels) {
        const auto before = static_cast<std::ptrdiff_t>(readings.size());
        appendReadings(database, channel.id, readings);
        std::ranges::inplace_merge(readings, readings.begin() + before, {}, &Reading::at);
    }
    return readings;
}

DrawnChannel drawnChannel(SQLite::Database& database, ChannelId channel) {
    DrawnChannel drawn;
    drawn.curve.reserve(roomFor(database, channel));
    for (ChannelRows rows(database, channel); rows.next();) {
        if (rows.byHand())
            drawn.byHand.push_back(rows.reading());
        if (rows.struck())
            continue;
        const CurvePoint point{rows.at(), Temperature::fromCelsius(rows.value())};
        if (!drawn.curve.empty() && drawn.curve.back().at == point.at)
            drawn.curve.back() = point;
        else
            drawn.curve.push_back(point);
    }
    return drawn;
}

} // namespace ringhold
