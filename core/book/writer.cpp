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

} // namespace

Result<KilnId> BookWriter::add(const Kiln& kiln) {
    return sql::insert<KilnId>(*m_book, R"sql(
        INSERT INTO kiln (name, fuel, volume_L, rated_W, rated_V, price_per_kWh, note, gas_price)
        VALUES (?, ?, ?, ?, ?, ?, ?, ?))sql",
                               kiln.name, bookText(kiln.fuel), kiln.volume_L, watts(kiln.ratedPower),
                               volts(kiln.ratedVolts), kiln.pricePerKilowattHour, kiln.note, kiln.gasPrice);
}

Status BookWriter::alter(const Kiln& kiln) {
    return sql::update(*m_book, R"sql(
        UPDATE kiln SET name = ?2, fuel = ?3, volume_L = ?4, rated_W = ?5, rated_V = ?6, price_per_kWh = ?7,
            note = ?8, gas_price = ?9 WHERE id = ?1)sql",
                       kiln.id, kiln.name, bookText(kiln.fuel), kiln.volume_L, watts(kiln.ratedPower),
                       volts(kiln.ratedVolts), kiln.pricePerKilowattHour, kiln.note, kiln.gasPrice);
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
    return sql::together(*m_book, [&](SQLite::Database& database) {
        auto id = sql::insert<FiringId>(*m_book, R"sql(
            INSERT INTO firing (kiln, title, began_ms, ended_ms, plan, model) VALUES (?, ?, ?, ?, ?, ?))sql",
                                        firing.kiln, firing.title, firing.began, firing.ended, *plan,
                                        firing.modelJson);
        if (id)
            sql::reword(database, *id);
        return id;
    });
}

Status BookWriter::alter(const Firing& firing) {
    if (const Status model = checkModel(firing); !model)
        return model.error();
    const auto plan = planText(firing);
    if (!plan)
        return plan.error();
    return sql::together(*m_book, [&](SQLite::Database& database) {
        Status altered = sql::update(*m_book, R"sql(
            UPDATE firing SET kiln = ?2, title = ?3, began_ms = ?4, ended_ms = ?5, plan = ?6, model = ?7
            WHERE id = ?1)sql",
                                     firing.id, firing.kiln, firing.title, firing.began, firing.ended, *plan,
                                     firing.modelJson);
        sql::reword(database, firing.id);
        return altered;
    });
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

Status BookWriter::add(const AlarmEvent& event) {
    return sql::update(*m_book, R"sql(
        INSERT INTO alarm_event (firing, at_ms, cause, change, level, words, who)
        VALUES (?, ?, ?, ?, ?, ?, ?))sql",
                       event.firing, event.at, event.cause, bookText(event.change), bookText(event.level),
                       event.words, event.who);
}

Status BookWriter::add(const LogEvent& event) {
    return sql::update(*m_book, "INSERT INTO event (firing, at_ms, kind, detail) VALUES (?, ?, ?, ?)",
                       event.firing, event.at, event.kind, event.detail);
}

} // namespace ringhold
