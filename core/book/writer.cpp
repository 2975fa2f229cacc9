#include "core/book/writer.h"

#include "core/book/record_text.h"
#include "core/book/write_sql.h"
#include "core/plan/plan_file.h"

#include <nlohmann/json.hpp>

namespace ringhold {

namespace {

std::optional<double> watts(const std::optional<Power>& power) {
    return power ? std::optional(power->watts) : std::nullopt;
}

std::optional<double> volts(const std::optional<Volts>& volts) {
    return volts ? std::optional(volts->volts) : std::nullopt;
}

Status checkModel(const Firing& firing) {
    if (firing.modelJson.empty() || nlohmann::json::accept(firing.modelJson))
        return {};
    return Error{ErrorKind::badInput, "the parameters of a model are JSON"};
}

/// The plan as the book keeps it, if there is one; badInput when it could not be read again.
Result<std::optional<std::string>> planText(const Firing& firing) {
    if (!firing.plan)
        return std::optional<std::string>();
    std::string text = formatPlan(*firing.plan);
    if (const auto back = parsePlan(text, "plan"); !back)
        return back.error();
    return std::optional(std::move(text));
}

void writeCones(SQLite::Database& database, PackId pack, const std::vector<std::string>& cones) {
    int position = 0;
    for (const auto& cone : cones)
        sql::run(database, "INSERT INTO pack_cone (pack, position, cone) VALUES (?, ?, ?)", pack, position++,
                 cone);
}

} // namespace

Result<KilnId> BookWriter::add(const Kiln& kiln) {
    return sql::insert<KilnId>(*m_book, R"sql(
        INSERT INTO kiln (name, fuel, volume_L, rated_W, rated_V, price_per_kWh, note)
        VALUES (?, ?, ?, ?, ?, ?, ?))sql",
                               kiln.name, bookText(kiln.fuel), kiln.volume_L, watts(kiln.ratedPower),
                               volts(kiln.ratedVolts), kiln.pricePerKilowattHour, kiln.note);
}

Status BookWriter::alter(const Kiln& kiln) {
    return sql::update(*m_book, R"sql(
        UPDATE kiln SET name = ?2, fuel = ?3, volume_L = ?4, rated_W = ?5, rated_V = ?6, price_per_kWh = ?7,
            note = ?8 WHERE id = ?1)sql",
                       kiln.id, kiln.name, bookText(kiln.fuel), kiln.volume_L, watts(kiln.ratedPower),
                       volts(kiln.ratedVolts), kiln.pricePerKilowattHour, kiln.note);
}

Result<ProbeId> BookWriter::add(const Probe& probe) {
    return sql::insert<ProbeId>(*m_book, R"sql(
        INSERT INTO probe (kiln, label, type, position, fitted_ms, retired_ms) VALUES (?, ?, ?, ?, ?, ?))sql",
                                probe.kiln, probe.label, name(probe.type), probe.position, probe.fitted,
                                probe.retired);
}

Status BookWriter::alter(const Probe& probe) {
    return sql::update(*m_book, R"sql(
        UPDATE probe SET kiln = ?2, label = ?3, type = ?4, position = ?5, fitted_ms = ?6, retired_ms = ?7
        WHERE id = ?1)sql",
                       probe.id, probe.kiln, probe.label, name(probe.type), probe.position, probe.fitted,
                       probe.retired);
}

Result<FiringId> BookWriter::add(const Firing& firing) {
    if (const Status model = checkModel(firing); !model)
        return model.error();
    const auto plan = planText(firing);
    if (!plan)
        return plan.error();
    return sql::insert<FiringId>(*m_book, R"sql(
        INSERT INTO firing (kiln, title, began_ms, ended_ms, plan, model) VALUES (?, ?, ?, ?, ?, ?))sql",
                                 firing.kiln, firing.title, firing.began, firing.ended, *plan,
                                 firing.modelJson);
}

Status BookWriter::alter(const Firing& firing) {
    if (const Status model = checkModel(firing); !model)
        return model.error();
    const auto plan = planText(firing);
    if (!plan)
        return plan.error();
    return sql::update(*m_book, R"sql(
        UPDATE firing SET kiln = ?2, title = ?3, began_ms = ?4, ended_ms = ?5, plan = ?6, model = ?7
        WHERE id = ?1)sql",
                       firing.id, firing.kiln, firing.title, firing.began, firing.ended, *plan,
                       firing.modelJson);
}

Status BookWriter::end(FiringId firing, Instant at) {
    return sql::update(*m_book, "UPDATE firing SET ended_ms = ?2 WHERE id = ?1", firing, at);
}

Result<ChannelId> BookWriter::add(const Channel& channel) {
    return sql::insert<ChannelId>(*m_book,
                                  "INSERT INTO channel (firing, quantity, label, probe) VALUES (?, ?, ?, ?)",
                                  channel.firing, bookText(channel.quantity), channel.label, channel.probe);
}

Status BookWriter::alter(const Channel& channel) {
    return sql::update(*m_book,
                       "UPDATE channel SET firing = ?2, quantity = ?3, label = ?4, probe = ?5 WHERE id = ?1",
                       channel.id, channel.firing, bookText(channel.quantity), channel.label, channel.probe);
}

Result<PackId> BookWriter::add(const Pack& pack) {
    return sql::guarded(m_book->file(), [&]() -> Result<PackId> {
        auto& database = m_book->database();
        sql::Savepoint savepoint(database);
        sql::run(database, "INSERT INTO pack (firing, place, cone_type, leans_left) VALUES (?, ?, ?, ?)",
                 pack.firing, pack.place, name(pack.type), pack.leansLeft);
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
                            "UPDATE pack SET firing = ?2, place = ?3, cone_type = ?4, leans_left = ?5 "
                            "WHERE id = ?1",
                            pack.id, pack.firing, pack.place, name(pack.type), pack.leansLeft);
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
    return sql::insert<PieceId>(*m_book, R"sql(
        INSERT INTO piece (firing, name, glaze, shelf, catcher, sagger) VALUES (?, ?, ?, ?, ?, ?))sql",
                                piece.firing, piece.name, piece.glaze, piece.shelf, piece.catcher,
                                piece.sagger);
}

Status BookWriter::alter(const Piece& piece) {
    return sql::update(*m_book, R"sql(
        UPDATE piece SET firing = ?2, name = ?3, glaze = ?4, shelf = ?5, catcher = ?6, sagger = ?7
        WHERE id = ?1)sql",
                       piece.id, piece.firing, piece.name, piece.glaze, piece.shelf, piece.catcher,
                       piece.sagger);
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
    return sql::guarded(m_book->file(), [&]() -> Status {
        sql::Savepoint savepoint(m_book->database());
        sql::run(m_book->database(), "DELETE FROM outcome WHERE piece = ?", piece);
        if (Status removed = sql::update(*m_book, "DELETE FROM piece WHERE id = ?", piece); !removed)
            return removed;
        savepoint.release();
        return {};
    });
}

Status BookWriter::set(const Outcome& outcome) {
    const auto crystals =
        outcome.crystals ? std::optional(bookText(*outcome.crystals)) : std::optional<std::string_view>();
    return sql::update(*m_book, R"sql(
        INSERT INTO outcome (piece, crystals, largest_mm, rings, faults, grade, note)
        VALUES (?, ?, ?, ?, ?, ?, ?)
        ON CONFLICT (piece) DO UPDATE SET crystals = excluded.crystals, largest_mm = excluded.largest_mm,
            rings = excluded.rings, faults = excluded.faults, grade = excluded.grade, note = excluded.note)sql",
                       outcome.piece, crystals, outcome.largest_mm, outcome.rings, outcome.faults,
                       outcome.grade, outcome.note);
}

Status BookWriter::file(const FiledOffset& offset) {
    return sql::update(*m_book, R"sql(
        INSERT INTO filed_offset (firing, probe, place, kiln, at_ms, mean_C, sd_C)
        VALUES (?, ?, ?, ?, ?, ?, ?)
        ON CONFLICT (firing, probe, place) DO UPDATE SET kiln = excluded.kiln, at_ms = excluded.at_ms,
            mean_C = excluded.mean_C, sd_C = excluded.sd_C)sql",
                       offset.firing, offset.probe, offset.place, offset.kiln, offset.at,
                       offset.mean.celsius(), offset.sd.celsius());
}

Status BookWriter::setPreference(std::string_view name, std::string_view value) {
    return sql::update(*m_book, "INSERT OR REPLACE INTO preference (name, value) VALUES (?, ?)", name, value);
}

Result<AlarmId> BookWriter::add(const AlarmRecord& alarm) {
    const auto& known = alarm.acknowledged;
    return sql::insert<AlarmId>(*m_book, R"sql(
        INSERT INTO alarm (firing, level, cause, detail, first_ms, acknowledged_ms, acknowledged_by, ended_ms)
        VALUES (?, ?, ?, ?, ?, ?, ?, ?))sql",
                                alarm.firing, alarm.level, alarm.cause, alarm.detail, alarm.first,
                                known ? std::optional(known->at) : std::nullopt,
                                known ? std::optional(known->by) : std::nullopt, alarm.ended);
}

Status BookWriter::acknowledge(AlarmId alarm, const Acknowledgement& acknowledgement) {
    return sql::update(*m_book, "UPDATE alarm SET acknowledged_ms = ?2, acknowledged_by = ?3 WHERE id = ?1",
                       alarm, acknowledgement.at, acknowledgement.by);
}

Status BookWriter::end(AlarmId alarm, Instant at) {
    return sql::update(*m_book, "UPDATE alarm SET ended_ms = ?2 WHERE id = ?1", alarm, at);
}

Status BookWriter::add(const LogEvent& event) {
    return sql::update(*m_book, "INSERT INTO event (firing, at_ms, kind, detail) VALUES (?, ?, ?, ?)",
                       event.firing, event.at, event.kind, event.detail);
}

} // namespace ringhold
