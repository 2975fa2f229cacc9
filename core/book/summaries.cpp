// The part of BookReader that lists and finds firings, without touching a reading.
#include "core/book/read_sql.h"
#include "core/book/reader.h"

#include <cctype>

namespace ringhold {

namespace {

// The sums stand in the channels; a peak that is missing there has to be looked for, see the schema.
constexpr const char* summaries = R"sql(
    SELECT firing.id, firing.kiln, kiln.name, title, began_ms, ended_ms,
        (SELECT max(last_ms) FROM channel WHERE channel.firing = firing.id),
        (SELECT ifnull(sum(readings), 0) FROM channel WHERE channel.firing = firing.id),
        (SELECT ifnull(peak, (SELECT max(value) FROM reading WHERE channel = channel.id AND NOT struck))
            FROM channel WHERE channel.firing = firing.id AND quantity = 'temperature' AND readings > 0
            ORDER BY id LIMIT 1)
    FROM firing JOIN kiln ON kiln.id = firing.kiln)sql";

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

/// What was typed, as the index wants it: every word, or its beginning, must be there.
std::string queryFrom(std::string_view typed) {
    std::string query;
    std::string word;
    const auto finish = [&] {
        if (!word.empty())
            query += (query.empty() ? "\"" : " AND \"") + word + "\" *";
        word.clear();
    };
    for (const char c : typed) {
        const bool separates =
            static_cast<unsigned char>(c) < 0x80 && !std::isalnum(static_cast<unsigned char>(c));
        if (separates)
            finish();
        else
            word += c;
    }
    finish();
    return query;
}

// Each parameter that is NULL lets every firing through.
constexpr const char* filtered = R"sql(
    WHERE (?1 IS NULL OR firing.kiln = ?1)
    AND (?2 IS NULL OR began_ms >= ?2)
    AND (?3 IS NULL OR began_ms < ?3)
    AND (?4 IS NULL OR EXISTS (SELECT 1 FROM piece WHERE piece.firing = firing.id
        AND instr(lower(piece.glaze), lower(?4)) > 0))
    AND (?5 IS NULL OR CASE WHEN EXISTS (SELECT 1 FROM json_tree(plan) WHERE key = 'cone')
        THEN EXISTS (SELECT 1 FROM json_tree(plan) WHERE key = 'cone' AND value = ?5)
        ELSE EXISTS (SELECT 1 FROM pack JOIN pack_cone ON pack_cone.pack = pack.id
            WHERE pack.firing = firing.id AND cone = ?5 AND position =
                (SELECT (count(*) - 1) / 2 FROM pack_cone AS same WHERE same.pack = pack.id)) END)
    AND (?6 IS NULL OR EXISTS (SELECT 1 FROM piece JOIN outcome ON outcome.piece = piece.id
        WHERE piece.firing = firing.id AND outcome.grade = ?6 COLLATE NOCASE))
    AND (?7 IS NULL OR firing.id IN (SELECT rowid FROM words WHERE words MATCH ?7)))sql";

std::optional<std::string> unlessEmpty(const std::string& text) {
    return text.empty() ? std::nullopt : std::optional(text);
}

Result<std::vector<FiringSummary>> list(const Book& book, const FiringFilter& filter) {
    std::string ordered(filtered);
    ordered += " ORDER BY began_ms, firing.id";
    return sql::readAll(book, rows::Form<FiringSummary>{summaries, makeSummary}, ordered.c_str(), filter.kiln,
                        filter.from, filter.before, unlessEmpty(filter.glaze), unlessEmpty(filter.cone),
                        unlessEmpty(filter.grade), unlessEmpty(queryFrom(filter.words)));
}

} // namespace

Result<std::vector<FiringSummary>> BookReader::firings() const {
    return list(*m_book, {});
}

Result<std::vector<FiringSummary>> BookReader::firings(const FiringFilter& filter) const {
    if (!filter.words.empty() && queryFrom(filter.words).empty())
        return std::vector<FiringSummary>();
    return list(*m_book, filter);
}

} // namespace ringhold
