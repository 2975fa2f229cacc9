#include "core/book/ware_finds.h"

#include "core/book/read_sql.h"
#include "core/book/record_text.h"
#include "core/book/whole_firing.h"
#include "core/book/write_sql.h"
#include "core/book/writer.h"

#include <nlohmann/json.hpp>

namespace ringhold {

namespace {

template <class Id>
Status statusOf(const Result<Id>& result) {
    return result ? Status() : Status(result.error());
}

/// Every JPEG begins and ends with these (ITU-T T.81, table B.1: SOI, EOI).
Status checkPicture(const std::string& jpeg) {
    if (jpeg.size() > largestJpeg)
        return Error{ErrorKind::badInput, "the photo is too large: " + std::to_string(jpeg.size() / 1000) +
                                              " kB, the book takes " + std::to_string(largestJpeg / 1000)};
    if (jpeg.size() < 4 || !jpeg.starts_with("\xFF\xD8") || !jpeg.ends_with("\xFF\xD9"))
        return Error{ErrorKind::badInput, "the photo is no whole JPEG picture"};
    return {};
}

std::string endsText(const PhotoMeasure& measure) {
    if (!measure.ends)
        return {};
    auto list = nlohmann::json::array();
    for (const auto& point : *measure.ends)
        list.push_back({point.x, point.y});
    return list.dump();
}

/// With the id given, or the next free one.
Result<PhotoId> insertPhoto(const Book& book, const Photo& photo, std::optional<PhotoId> id) {
    if (const Status fine = checkPicture(photo.jpeg); !fine)
        return fine.error();
    return sql::together(book, [&](SQLite::Database& database) {
        auto added = sql::insert<PhotoId>(book, R"sql(
            INSERT INTO photo (id, piece, taken_ms, width, height, caption, jpeg)
            VALUES (?, ?, ?, ?, ?, ?, ?))sql",
                                          id, photo.piece, photo.taken, photo.width, photo.height,
                                          photo.caption, sql::Blob{photo.jpeg});
        sql::reword(database, sql::firingOf(database, photo.piece));
        return added;
    });
}

Result<PhotoMeasureId> insertMeasure(const Book& book, const PhotoMeasure& measure,
                                     std::optional<PhotoMeasureId> id) {
    return sql::insert<PhotoMeasureId>(book, R"sql(
        INSERT INTO photo_measure (id, photo, what, known_mm, measured_mm, error_mm, ends)
        VALUES (?, ?, ?, ?, ?, ?, ?))sql",
                                       id, measure.photo, measure.what, measure.known_mm, measure.measured_mm,
                                       measure.error_mm, endsText(measure));
}

/// Runs the call for each record, up to the first that fails.
template <class Record, class Call>
Status each(const std::vector<Record>& records, const Call& call) {
    for (const auto& record : records)
        if (Status done = call(record); !done)
            return done;
    return {};
}

std::optional<WholePiece> wholePiece(SQLite::Database& database, PieceId id) {
    const auto piece = rows::first(database, rows::piece, "WHERE id = ?", id);
    if (!piece)
        return std::nullopt;
    WholePiece whole{*piece};
    for (const auto& outcome : outcomesOf(database, piece->firing))
        if (outcome.piece == id)
            whole.outcome = outcome;
    whole.photos = rows::all(database, rows::photoWithPicture, "WHERE piece = ? ORDER BY id", id);
    whole.measures = rows::all(database, rows::photoMeasure,
                               "WHERE photo IN (SELECT id FROM photo WHERE piece = ?) ORDER BY id", id);
    whole.rings = rows::all(database, rows::ringRadius, "WHERE piece = ? ORDER BY ring", id);
    whole.sags = rows::all(database, rows::sagSeen, "WHERE piece = ? ORDER BY at_ms", id);
    return whole;
}

} // namespace

Result<WholePiece> WareFinds::whole(PieceId piece) const {
    auto found = sql::read(*m_book, [&](SQLite::Database& d) { return wholePiece(d, piece); });
    if (!found)
        return found.error();
    if (!*found)
        return sql::missing(*m_book, "the book has no such piece");
    return std::move(**found);
}

Status WareFinds::restore(const WholePiece& whole) {
    return sql::together(*m_book, [&](SQLite::Database&) -> Status {
        BookWriter writer(*m_book);
        if (Status done = writer.restore(whole.piece); !done)
            return done;
        if (whole.outcome)
            if (Status done = writer.set(*whole.outcome); !done)
                return done;
        const auto putBack = [this](const auto& record) { return restore(record); };
        const auto setAgain = [this](const auto& record) { return set(record); };
        if (Status done = each(whole.photos, putBack); !done)
            return done;
        if (Status done = each(whole.measures, putBack); !done)
            return done;
        if (Status done = each(whole.rings, setAgain); !done)
            return done;
        return each(whole.sags, setAgain);
    });
}

Result<std::vector<Photo>> WareFinds::photos(PieceId piece) const {
    return sql::readAll(*m_book, rows::photo, "WHERE piece = ? ORDER BY id", piece);
}

Result<std::string> WareFinds::picture(PhotoId photo) const {
    const auto found = sql::readFirst(*m_book, rows::photoWithPicture, "WHERE id = ?", photo);
    if (!found)
        return found.error();
    return *found ? Result<std::string>((*found)->jpeg)
                  : Result<std::string>(sql::missing(*m_book, "the book has no such photo"));
}

Result<std::vector<PhotoMeasure>> WareFinds::measures(PhotoId photo) const {
    return sql::readAll(*m_book, rows::photoMeasure, "WHERE photo = ? ORDER BY id", photo);
}

Result<std::vector<RingRadius>> WareFinds::rings(PieceId piece) const {
    return sql::readAll(*m_book, rows::ringRadius, "WHERE piece = ? ORDER BY ring", piece);
}

Result<std::vector<SagSeen>> WareFinds::sags(PieceId piece) const {
    return sql::readAll(*m_book, rows::sagSeen, "WHERE piece = ? ORDER BY at_ms", piece);
}

Result<std::vector<SagSeen>> WareFinds::sagsOfGlaze(std::string_view glaze) const {
    return sql::readAll(*m_book, rows::sagSeen,
                        "WHERE piece IN (SELECT id FROM piece WHERE glaze = ? COLLATE NOCASE) "
                        "ORDER BY at_ms, piece",
                        glaze);
}

Result<PhotoId> WareFinds::add(const Photo& photo) {
    return insertPhoto(*m_book, photo, std::nullopt);
}

Status WareFinds::restore(const Photo& photo) {
    return statusOf(insertPhoto(*m_book, photo, photo.id));
}

Status WareFinds::alter(const Photo& photo) {
    return sql::together(*m_book, [&](SQLite::Database& database) {
        Status altered =
            sql::update(*m_book, "UPDATE photo SET piece = ?2, taken_ms = ?3, caption = ?4 WHERE id = ?1",
                        photo.id, photo.piece, photo.taken, photo.caption);
        sql::reword(database, sql::firingOf(database, photo.piece));
        return altered;
    });
}

Status WareFinds::remove(PhotoId photo) {
    return sql::together(*m_book, [&](SQLite::Database& database) {
        const auto of = rows::first(database, rows::photo, "WHERE id = ?", photo);
        Status removed = sql::update(*m_book, "DELETE FROM photo WHERE id = ?", photo);
        if (of)
            sql::reword(database, sql::firingOf(database, of->piece));
        return removed;
    });
}

Result<PhotoMeasureId> WareFinds::add(const PhotoMeasure& measure) {
    return insertMeasure(*m_book, measure, std::nullopt);
}

Status WareFinds::restore(const PhotoMeasure& measure) {
    return statusOf(insertMeasure(*m_book, measure, measure.id));
}

Status WareFinds::remove(PhotoMeasureId measure) {
    return sql::update(*m_book, "DELETE FROM photo_measure WHERE id = ?", measure);
}

Status WareFinds::set(const RingRadius& r) {
    return sql::update(*m_book, R"sql(
        INSERT INTO ring_radius (piece, ring, radius_mm, sd_mm) VALUES (?, ?, ?, ?)
        ON CONFLICT (piece, ring) DO UPDATE SET radius_mm = excluded.radius_mm, sd_mm = excluded.sd_mm)sql",
                       r.piece, r.ring, r.radius_mm, r.sd_mm);
}

Status WareFinds::removeRing(PieceId piece, int ring) {
    return sql::update(*m_book, "DELETE FROM ring_radius WHERE piece = ? AND ring = ?", piece, ring);
}

Status WareFinds::set(const SagSeen& answer) {
    return sql::update(*m_book, R"sql(
        INSERT INTO sag_seen (piece, at_ms, seen, radius_mm) VALUES (?, ?, ?, ?)
        ON CONFLICT (piece, at_ms) DO UPDATE SET seen = excluded.seen, radius_mm = excluded.radius_mm)sql",
                       answer.piece, answer.at, bookText(answer.seen), answer.radius_mm);
}

Status WareFinds::removeSag(PieceId piece, Instant at) {
    return sql::update(*m_book, "DELETE FROM sag_seen WHERE piece = ? AND at_ms = ?", piece, at);
}

} // namespace ringhold
