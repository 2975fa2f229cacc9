// The part of BookWriter that writes what stands in the kiln and what came out of it.
#include "core/book/record_text.h"
#include "core/book/write_sql.h"
#include "core/book/writer.h"

namespace ringhold {

namespace {

void writeCones(SQLite::Database& database, PackId pack, const std::vector<std::string>& cones) {
    int position = 0;
    for (const auto& cone : cones)
        sql::run(database, "INSERT INTO pack_cone (pack, position, cone) VALUES (?, ?, ?)", pack, position++,
                 cone);
}

std::optional<double> across(const std::optional<MapSpot>& spot) {
    return spot ? std::optional(spot->x) : std::nullopt;
}

std::optional<double> inward(const std::optional<MapSpot>& spot) {
    return spot ? std::optional(spot->y) : std::nullopt;
}

/// With the id given, or the next free one.
Result<PieceId> insertPiece(const Book& book, const Piece& piece, std::optional<PieceId> id) {
    return sql::together(book, [&](SQLite::Database& database) {
        auto added = sql::insert<PieceId>(
            book, R"sql(
            INSERT INTO piece (id, firing, name, glaze, shelf, catcher, sagger, form, clay,
                application_g_per_cm2, spot_x, spot_y)
            VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?))sql",
            id, piece.firing, piece.name, piece.glaze, piece.shelf, piece.catcher, piece.sagger, piece.form,
            piece.clay, piece.application_g_per_cm2, across(piece.spot), inward(piece.spot));
        if (added)
            sql::reword(database, piece.firing);
        return added;
    });
}

Status writeOutcome(const Book& book, const Outcome& o) {
    const auto crystals = o.crystals ? std::optional(bookText(*o.crystals)) : std::nullopt;
    return sql::update(book, R"sql(
        INSERT INTO outcome (piece, crystals, largest_mm, rings, faults, grade, note, typical_mm,
            crystal_colour, crystal_picked, ground_colour, ground_picked, run_off, run_off_mm, catcher_clean)
        VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
        ON CONFLICT (piece) DO UPDATE SET crystals = excluded.crystals, largest_mm = excluded.largest_mm,
            rings = excluded.rings, faults = excluded.faults, grade = excluded.grade, note = excluded.note,
            typical_mm = excluded.typical_mm, crystal_colour = excluded.crystal_colour,
            crystal_picked = excluded.crystal_picked, ground_colour = excluded.ground_colour,
            ground_picked = excluded.ground_picked, run_off = excluded.run_off,
            run_off_mm = excluded.run_off_mm, catcher_clean = excluded.catcher_clean)sql",
                       o.piece, crystals, o.largest_mm, o.rings, o.faults, o.grade, o.note, o.typical_mm,
                       o.crystalColour, o.crystalPicked, o.groundColour, o.groundPicked, o.runOff,
                       o.runOff_mm, o.catcherClean);
}

} // namespace

Result<PackId> BookWriter::add(const Pack& pack) {
    return sql::guarded(m_book->file(), [&]() -> Result<PackId> {
        auto& database = m_book->database();
        sql::Savepoint savepoint(database);
        sql::run(database, R"sql(
            INSERT INTO pack (firing, place, cone_type, leans_left, shelf, spot_x, spot_y)
            VALUES (?, ?, ?, ?, ?, ?, ?))sql",
                 pack.firing, pack.place, name(pack.type), pack.leansLeft, pack.shelf, across(pack.spot),
                 inward(pack.spot));
        const auto id = static_cast<PackId>(database.getLastInsertRowid());
        writeCones(database, id, pack.cones);
        savepoint.release();
        return id;
    });
}

Status BookWriter::alter(const Pack& pack) {
    return sql::guarded(m_book->file(), [&]() -> Status {
        auto& database = m_book->database();
        sql::Savepoint savepoint(database);
        if (Status found =
                sql::update(*m_book,
                            "UPDATE pack SET firing = ?2, place = ?3, cone_type = ?4, leans_left = ?5, "
                            "shelf = ?6, spot_x = ?7, spot_y = ?8 WHERE id = ?1",
                            pack.id, pack.firing, pack.place, name(pack.type), pack.leansLeft, pack.shelf,
                            across(pack.spot), inward(pack.spot));
            !found)
            return found;
        // A look may name a cone that is taken out and put in again: judged at the end.
        database.exec("PRAGMA defer_foreign_keys = ON");
        sql::run(database, "DELETE FROM pack_cone WHERE pack = ?", pack.id);
        writeCones(database, pack.id, pack.cones);
        savepoint.release();
        return {};
    });
}

Result<PieceId> BookWriter::add(const Piece& piece) {
    return insertPiece(*m_book, piece, std::nullopt);
}

Status BookWriter::restore(const Piece& piece) {
    const auto restored = insertPiece(*m_book, piece, piece.id);
    return restored ? Status() : Status(restored.error());
}

Status BookWriter::alter(const Piece& piece) {
    return sql::together(*m_book, [&](SQLite::Database& database) {
        const auto before = sql::firingOf(database, piece.id);
        Status altered = sql::update(*m_book, R"sql(
            UPDATE piece SET firing = ?2, name = ?3, glaze = ?4, shelf = ?5, catcher = ?6, sagger = ?7,
                form = ?8, clay = ?9, application_g_per_cm2 = ?10, spot_x = ?11, spot_y = ?12
            WHERE id = ?1)sql",
                                     piece.id, piece.firing, piece.name, piece.glaze, piece.shelf,
                                     piece.catcher, piece.sagger, piece.form, piece.clay,
                                     piece.application_g_per_cm2, across(piece.spot), inward(piece.spot));
        sql::reword(database, before);
        sql::reword(database, piece.firing);
        return altered;
    });
}

Status BookWriter::add(std::span<const Piece> pieces) {
    return sql::guarded(m_book->file(), [&]() -> Status {
        sql::Savepoint savepoint(m_book->database());
        for (const auto& piece : pieces)
            if (const auto added = add(piece); !added)
                return added.error();
        savepoint.release();
        return {};
    });
}

Status BookWriter::remove(PieceId piece) {
    return sql::together(*m_book, [&](SQLite::Database& database) -> Status {
        const auto firing = sql::firingOf(database, piece);
        if (!firing)
            return sql::missing(*m_book, "the book has no such line");
        for (const char* text : {"DELETE FROM outcome WHERE piece = ?", "DELETE FROM photo WHERE piece = ?",
                                 "DELETE FROM ring_radius WHERE piece = ?",
                                 "DELETE FROM sag_seen WHERE piece = ?", "DELETE FROM piece WHERE id = ?"})
            sql::run(database, text, piece);
        sql::reword(database, firing);
        return {};
    });
}

Status BookWriter::set(const Outcome& outcome) {
    return sql::together(*m_book, [&](SQLite::Database& database) {
        Status written = writeOutcome(*m_book, outcome);
        sql::run(database, "DELETE FROM outcome_fault WHERE piece = ?", outcome.piece);
        for (const WareFault fault : outcome.knownFaults)
            sql::run(database, "INSERT INTO outcome_fault (piece, fault) VALUES (?, ?)", outcome.piece,
                     bookText(fault));
        sql::reword(database, sql::firingOf(database, outcome.piece));
        return written;
    });
}

Status BookWriter::removeOutcome(PieceId piece) {
    return sql::together(*m_book, [&](SQLite::Database& database) {
        Status removed = sql::update(*m_book, "DELETE FROM outcome WHERE piece = ?", piece);
        sql::reword(database, sql::firingOf(database, piece));
        return removed;
    });
}

} // namespace ringhold
