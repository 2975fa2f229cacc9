#include "core/book/reader.h"

#include "core/book/book.h"
#include "core/book/channel_rows.h"
#include "core/book/read_sql.h"
#include "core/book/whole_firing.h"

namespace ringhold {

namespace {

Error noFiring(const Book& book, FiringId id) {
    return {ErrorKind::notFound,
            "there is no firing " + std::to_string(static_cast<std::int64_t>(id)) + " in this book",
            book.file().string()};
}

} // namespace

Result<std::vector<Kiln>> BookReader::kilns() const {
    return sql::readAll(*m_book, rows::kiln, "ORDER BY name");
}

Result<std::optional<Kiln>> BookReader::kilnNamed(std::string_view name) const {
    return sql::readFirst(*m_book, rows::kiln, "WHERE name = ?", name);
}

Result<std::vector<Probe>> BookReader::probes(KilnId kiln) const {
    return sql::readAll(*m_book, rows::probe, "WHERE kiln = ? ORDER BY id", kiln);
}

Result<std::vector<FiledOffset>> BookReader::filedOffsets(KilnId kiln) const {
    return sql::readAll(*m_book, rows::filedOffset, "WHERE kiln = ? ORDER BY at_ms, firing, probe, place",
                        kiln);
}

Result<std::optional<Firing>> BookReader::openFiring(KilnId kiln) const {
    return sql::readFirst(*m_book, rows::firing, "WHERE kiln = ? AND ended_ms IS NULL", kiln);
}

Result<Firing> BookReader::firing(FiringId id) const {
    auto found = sql::readFirst(*m_book, rows::firing, "WHERE id = ?", id);
    if (!found)
        return found.error();
    if (!*found)
        return noFiring(*m_book, id);
    return std::move(**found);
}

Result<FiringRecord> BookReader::whole(FiringId id, Pictures pictures) const {
    auto found = sql::read(*m_book, [&](SQLite::Database& database) {
        const auto firing = rows::first(database, rows::firing, "WHERE id = ?", id);
        return firing ? std::optional(wholeFiring(database, *firing, pictures)) : std::nullopt;
    });
    if (!found)
        return found.error();
    if (!*found)
        return noFiring(*m_book, id);
    return std::move(**found);
}

Result<std::vector<Channel>> BookReader::channels(FiringId firing) const {
    return sql::readAll(*m_book, rows::channel, "WHERE firing = ? ORDER BY id", firing);
}

Result<std::vector<Reading>> BookReader::readings(ChannelId channel) const {
    return sql::read(*m_book, [&](SQLite::Database& database) { return readingsOf(database, channel); });
}

Result<Curve> BookReader::curve(ChannelId channel) const {
    return sql::read(*m_book,
                     [&](SQLite::Database& database) { return drawnChannel(database, channel).curve; });
}

Result<std::vector<Piece>> BookReader::pieces(FiringId firing) const {
    return sql::readAll(*m_book, rows::piece, "WHERE firing = ? ORDER BY id", firing);
}

Result<std::vector<Outcome>> BookReader::outcomes(FiringId firing) const {
    return sql::read(*m_book, [&](SQLite::Database& database) { return outcomesOf(database, firing); });
}

Result<std::vector<Pack>> BookReader::packs(FiringId firing) const {
    return sql::read(*m_book, [&](SQLite::Database& database) { return packsOf(database, firing); });
}

Result<std::vector<AlarmEvent>> BookReader::alarmEvents(FiringId firing) const {
    return sql::readAll(*m_book, rows::alarmEvent, "WHERE firing = ? ORDER BY id", firing);
}

Result<std::vector<AlarmRecord>> BookReader::alarms(FiringId firing) const {
    const auto events = alarmEvents(firing);
    if (!events)
        return events.error();
    return alarmsTold(*events);
}

Result<std::vector<StepCorrection>> BookReader::stepCorrections(FiringId firing) const {
    return sql::readAll(*m_book, rows::stepCorrection, "WHERE firing = ? ORDER BY at_ms, id", firing);
}

Result<std::vector<MeterStand>> BookReader::meterStands(FiringId firing) const {
    return sql::readAll(*m_book, rows::meterStand, "WHERE firing = ? ORDER BY at_ms, id", firing);
}

Result<std::vector<LogEvent>> BookReader::events(FiringId firing) const {
    return sql::readAll(*m_book, rows::event, "WHERE firing = ? ORDER BY at_ms, id", firing);
}

Result<std::optional<std::string>> BookReader::preference(std::string_view name) const {
    const rows::Form<std::string> value{"SELECT value FROM preference",
                                        [](SQLite::Statement& row) { return row.getColumn(0).getString(); }};
    return sql::readFirst(*m_book, value, "WHERE name = ?", name);
}

} // namespace ringhold
