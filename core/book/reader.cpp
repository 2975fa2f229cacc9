#include "core/book/reader.h"

#include "core/book/book.h"
#include "core/book/rows.h"

#include <algorithm>

namespace ringhold {

namespace {

/// Runs a query in one view of the book.
template <class Query>
auto read(const Book& book, Query&& query) -> Result<std::invoke_result_t<Query, SQLite::Database&>> {
    using Answer = Result<std::invoke_result_t<Query, SQLite::Database&>>;
    return sql::guarded(book.file(), [&]() -> Answer {
        sql::Savepoint view(book.database());
        Answer answer = query(book.database());
        view.release();
        return answer;
    });
}

template <class Record, class... Values>
Result<std::vector<Record>> readAll(const Book& book, const rows::Form<Record>& form, const char* where,
                                    const Values&... values) {
    return read(book, [&](SQLite::Database& d) { return rows::all(d, form, where, values...); });
}

template <class Record, class... Values>
Result<std::optional<Record>> readFirst(const Book& book, const rows::Form<Record>& form, const char* where,
                                        const Values&... values) {
    return read(book, [&](SQLite::Database& d) { return rows::first(d, form, where, values...); });
}

Error noFiring(const Book& book, FiringId id) {
    return {ErrorKind::notFound,
            "there is no firing " + std::to_string(static_cast<std::int64_t>(id)) + " in this book",
            book.file().string()};
}

std::vector<Pack> packsOf(SQLite::Database& database, FiringId firing) {
    auto packs = rows::all(database, rows::pack, "WHERE firing = ? ORDER BY id", firing);
    for (auto& pack : packs) {
        SQLite::Statement cones(database, "SELECT cone FROM pack_cone WHERE pack = ? ORDER BY position");
        sql::bindAll(cones, pack.id);
        while (cones.executeStep())
            pack.cones.push_back(cones.getColumn(0).getString());
    }
    return packs;
}

constexpr const char* ofChannel = "WHERE channel = ? ORDER BY at_ms, seq";

/// Channel after channel, as they lie in the book, then put in order of time.
std::vector<Reading> readingsOf(SQLite::Database& database, const std::vector<Channel>& channels) {
    std::vector<Reading> readings;
    for (const auto& channel : channels) {
        const auto some = rows::all(database, rows::reading, ofChannel, channel.id);
        readings.insert(readings.end(), some.begin(), some.end());
    }
    if (channels.size() > 1)
        std::stable_sort(readings.begin(), readings.end(),
                         [](const Reading& a, const Reading& b) { return a.at < b.at; });
    return readings;
}

constexpr const char* piecesOfFiring = "WHERE firing = ? ORDER BY id";
constexpr const char* outcomesOfFiring =
    "WHERE piece IN (SELECT id FROM piece WHERE firing = ?) ORDER BY piece";

FiringRecord wholeFrom(SQLite::Database& database, const Firing& firing) {
    const FiringId id = firing.id;
    FiringRecord whole;
    whole.firing = firing;
    whole.kiln = rows::all(database, rows::kiln, "WHERE id = ?", firing.kiln).at(0);
    whole.probes = rows::all(database, rows::probe,
                             "WHERE id IN (SELECT probe FROM channel WHERE firing = ?) ORDER BY id", id);
    whole.channels = rows::all(database, rows::channel, "WHERE firing = ? ORDER BY id", id);
    whole.readings = readingsOf(database, whole.channels);
    whole.packs = packsOf(database, id);
    whole.looks = rows::all(database, rows::look,
                            "WHERE pack IN (SELECT id FROM pack WHERE firing = ?) ORDER BY at_ms, id", id);
    whole.settings = rows::all(database, rows::setting, "WHERE firing = ? ORDER BY at_ms, id", id);
    whole.notes = rows::all(database, rows::note, "WHERE firing = ? ORDER BY at_ms, id", id);
    whole.pieces = rows::all(database, rows::piece, piecesOfFiring, id);
    whole.outcomes = rows::all(database, rows::outcome, outcomesOfFiring, id);
    whole.filedOffsets =
        rows::all(database, rows::filedOffset, "WHERE firing = ? ORDER BY at_ms, probe, place", id);
    return whole;
}

// The sums stand in the channels; a peak that is missing there has to be looked for, see the schema.
constexpr const char* summaries = R"sql(
    SELECT firing.id, firing.kiln, kiln.name, title, began_ms, ended_ms,
        (SELECT max(last) FROM (SELECT (SELECT max(at_ms) FROM reading WHERE channel = channel.id) AS last
            FROM channel WHERE channel.firing = firing.id)),
        (SELECT ifnull(sum(readings), 0) FROM channel WHERE channel.firing = firing.id),
        (SELECT ifnull(peak, (SELECT max(value) FROM reading WHERE channel = channel.id AND NOT struck))
            FROM channel WHERE channel.firing = firing.id AND quantity = 'temperature' AND readings > 0
            ORDER BY id LIMIT 1)
    FROM firing JOIN kiln ON kiln.id = firing.kiln ORDER BY began_ms, firing.id)sql";

FiringSummary makeSummary(SQLite::Statement& row) {
    FiringSummary made{sql::idIn<FiringId>(row.getColumn(0)),
                       sql::idIn<KilnId>(row.getColumn(1)),
                       row.getColumn(2).getString(),
                       row.getColumn(3).getString(),
                       sql::instantIn(row.getColumn(4)),
                       sql::maybeInstantIn(row.getColumn(5)),
                       sql::maybeInstantIn(row.getColumn(6)),
                       row.getColumn(7).getInt64(),
                       std::nullopt};
    if (const auto peak = sql::maybeDoubleIn(row.getColumn(8)))
        made.peak = Temperature::fromCelsius(*peak);
    return made;
}

} // namespace

Result<std::vector<Kiln>> BookReader::kilns() const {
    return readAll(*m_book, rows::kiln, "ORDER BY name");
}

Result<std::optional<Kiln>> BookReader::kilnNamed(std::string_view name) const {
    return readFirst(*m_book, rows::kiln, "WHERE name = ?", name);
}

Result<std::vector<Probe>> BookReader::probes(KilnId kiln) const {
    return readAll(*m_book, rows::probe, "WHERE kiln = ? ORDER BY id", kiln);
}

Result<std::vector<FiledOffset>> BookReader::filedOffsets(KilnId kiln) const {
    return readAll(*m_book, rows::filedOffset, "WHERE kiln = ? ORDER BY at_ms, firing, probe, place", kiln);
}

Result<std::vector<FiringSummary>> BookReader::firings() const {
    return readAll(*m_book, rows::Form<FiringSummary>{summaries, makeSummary}, "");
}

Result<std::optional<Firing>> BookReader::openFiring(KilnId kiln) const {
    return readFirst(*m_book, rows::firing, "WHERE kiln = ? AND ended_ms IS NULL", kiln);
}

Result<Firing> BookReader::firing(FiringId id) const {
    auto found = readFirst(*m_book, rows::firing, "WHERE id = ?", id);
    if (!found)
        return found.error();
    if (!*found)
        return noFiring(*m_book, id);
    return std::move(**found);
}

Result<FiringRecord> BookReader::whole(FiringId id) const {
    auto found = read(*m_book, [&](SQLite::Database& database) {
        const auto firing = rows::first(database, rows::firing, "WHERE id = ?", id);
        return firing ? std::optional(wholeFrom(database, *firing)) : std::nullopt;
    });
    if (!found)
        return found.error();
    if (!*found)
        return noFiring(*m_book, id);
    return std::move(**found);
}

Result<std::vector<Channel>> BookReader::channels(FiringId firing) const {
    return readAll(*m_book, rows::channel, "WHERE firing = ? ORDER BY id", firing);
}

Result<std::vector<Reading>> BookReader::readings(ChannelId channel) const {
    return readAll(*m_book, rows::reading, ofChannel, channel);
}

Result<Curve> BookReader::curve(ChannelId channel) const {
    return read(*m_book, [&](SQLite::Database& database) {
        SQLite::Statement statement(database,
                                    "SELECT at_ms, value FROM reading WHERE channel = ? AND NOT struck "
                                    "ORDER BY at_ms, seq");
        sql::bindAll(statement, channel);
        Curve curve;
        while (statement.executeStep()) {
            const CurvePoint point{sql::instantIn(statement.getColumn(0)),
                                   Temperature::fromCelsius(statement.getColumn(1).getDouble())};
            if (!curve.empty() && curve.back().at == point.at)
                curve.back() = point;
            else
                curve.push_back(point);
        }
        return curve;
    });
}

Result<std::vector<Piece>> BookReader::pieces(FiringId firing) const {
    return readAll(*m_book, rows::piece, piecesOfFiring, firing);
}

Result<std::vector<Outcome>> BookReader::outcomes(FiringId firing) const {
    return readAll(*m_book, rows::outcome, outcomesOfFiring, firing);
}

Result<std::vector<AlarmRecord>> BookReader::alarms(FiringId firing) const {
    return readAll(*m_book, rows::alarm, "WHERE firing = ? ORDER BY first_ms, id", firing);
}

Result<std::vector<LogEvent>> BookReader::events(FiringId firing) const {
    return readAll(*m_book, rows::event, "WHERE firing = ? ORDER BY at_ms, id", firing);
}

Result<std::optional<std::string>> BookReader::preference(std::string_view name) const {
    const rows::Form<std::string> value{"SELECT value FROM preference",
                                        [](SQLite::Statement& row) { return row.getColumn(0).getString(); }};
    return readFirst(*m_book, value, "WHERE name = ?", name);
}

} // namespace ringhold
