// The part of BookWriter that writes looks, settings, notes and other lines by hand, and never overwrites
// one.
#include "core/book/record_text.h"
#include "core/book/write_sql.h"
#include "core/book/writer.h"

namespace ringhold {

namespace {

/// A table of lines that can be struck, and how to come by the firing of one.
struct LineTable {
    const char* name;
    const char* mark;     ///< sets struck to ?2 where it is not
    const char* firingOf; ///< of line ?1
};

constexpr LineTable looks{"look", "UPDATE look SET struck = ?2 WHERE id = ?1 AND struck <> ?2",
                          "SELECT firing FROM pack WHERE id = (SELECT pack FROM look WHERE id = ?1)"};
constexpr LineTable settings{"setting", "UPDATE setting SET struck = ?2 WHERE id = ?1 AND struck <> ?2",
                             "SELECT firing FROM setting WHERE id = ?1"};
constexpr LineTable notes{"note", "UPDATE note SET struck = ?2 WHERE id = ?1 AND struck <> ?2",
                          "SELECT firing FROM note WHERE id = ?1"};

constexpr LineTable corrections{"step_correction",
                                "UPDATE step_correction SET struck = ?2 WHERE id = ?1 AND struck <> ?2",
                                "SELECT firing FROM step_correction WHERE id = ?1"};
constexpr LineTable stands{"meter_stand", "UPDATE meter_stand SET struck = ?2 WHERE id = ?1 AND struck <> ?2",
                           "SELECT firing FROM meter_stand WHERE id = ?1"};

std::string nameOf(const LineTable& table, std::int64_t id) {
    return std::string(table.name) + " " + std::to_string(id);
}

std::optional<FiringId> firingOf(SQLite::Database& database, const LineTable& table, std::int64_t id) {
    SQLite::Statement statement(database, table.firingOf);
    sql::bindAll(statement, id);
    return statement.executeStep() ? std::optional(sql::idIn<FiringId>(statement.getColumn(0)))
                                   : std::nullopt;
}

/// Notes are among the words that are searched.
void rewordFor(SQLite::Database& database, const LineTable& table, std::optional<FiringId> firing) {
    if (&table == &notes && firing)
        sql::reword(database, *firing);
}

/// Strikes or restores one line.
Status mark(BookWriter& writer, const Book& book, const LineTable& table, std::int64_t id, bool struck,
            Instant when) {
    return sql::guarded(book.file(), [&]() -> Status {
        auto& database = book.database();
        sql::Savepoint savepoint(database);
        if (sql::run(database, table.mark, id, struck) == 0)
            return sql::missing(book, nameOf(table, id) + (struck ? " is not there or struck already"
                                                                  : " is not there or not struck"));
        const auto firing = firingOf(database, table, id);
        if (Status told =
                writer.add(LogEvent{firing, when, struck ? "struck" : "restored", nameOf(table, id)});
            !told)
            return told;
        rewordFor(database, table, firing);
        savepoint.release();
        return {};
    });
}

/// Strikes a line and adds another in its place.
template <class Id, class Line>
Result<Id> replace(BookWriter& writer, const Book& book, const LineTable& table, const Line& now,
                   Instant when) {
    return sql::guarded(book.file(), [&]() -> Result<Id> {
        auto& database = book.database();
        sql::Savepoint savepoint(database);
        const auto old = static_cast<std::int64_t>(now.id);
        if (sql::run(database, table.mark, old, true) == 0)
            return sql::missing(book, nameOf(table, old) + " is not there or struck already");
        Line line = now;
        line.struck = false;
        Result<Id> added = writer.add(line);
        if (!added)
            return added;
        const std::string detail =
            nameOf(table, old) + " by " + nameOf(table, static_cast<std::int64_t>(*added));
        if (Status told = writer.add(LogEvent{firingOf(database, table, old), when, "corrected", detail});
            !told)
            return told.error();
        savepoint.release();
        return added;
    });
}

} // namespace

Result<LookId> BookWriter::add(const Look& look) {
    return sql::insert<LookId>(
        *m_book, "INSERT INTO look (pack, at_ms, cone, hour, cold, struck) VALUES (?, ?, ?, ?, ?, ?)",
        look.pack, look.at, look.cone, look.hour, look.cold, look.struck);
}

Result<SettingId> BookWriter::add(const Setting& setting) {
    return sql::insert<SettingId>(
        *m_book, "INSERT INTO setting (firing, at_ms, what, value, struck) VALUES (?, ?, ?, ?, ?)",
        setting.firing, setting.at, setting.what, setting.value, setting.struck);
}

Result<NoteId> BookWriter::add(const Note& note) {
    return sql::together(*m_book, [&](SQLite::Database& database) {
        auto added =
            sql::insert<NoteId>(*m_book, "INSERT INTO note (firing, at_ms, text, struck) VALUES (?, ?, ?, ?)",
                                note.firing, note.at, note.text, note.struck);
        if (added)
            sql::reword(database, note.firing);
        return added;
    });
}

Result<StepCorrectionId> BookWriter::add(const StepCorrection& correction) {
    return sql::insert<StepCorrectionId>(
        *m_book, "INSERT INTO step_correction (firing, at_ms, step, struck) VALUES (?, ?, ?, ?)",
        correction.firing, correction.at, static_cast<std::int64_t>(correction.step), correction.struck);
}

Result<MeterStandId> BookWriter::add(const MeterStand& stand) {
    return sql::insert<MeterStandId>(
        *m_book, "INSERT INTO meter_stand (firing, at_ms, stand, unit, struck) VALUES (?, ?, ?, ?, ?)",
        stand.firing, stand.at, stand.stand, bookText(stand.unit), stand.struck);
}

Status BookWriter::strike(LookId look, Instant when) {
    return mark(*this, *m_book, looks, static_cast<std::int64_t>(look), true, when);
}
Status BookWriter::strike(SettingId setting, Instant when) {
    return mark(*this, *m_book, settings, static_cast<std::int64_t>(setting), true, when);
}
Status BookWriter::strike(NoteId note, Instant when) {
    return mark(*this, *m_book, notes, static_cast<std::int64_t>(note), true, when);
}
Status BookWriter::restore(LookId look, Instant when) {
    return mark(*this, *m_book, looks, static_cast<std::int64_t>(look), false, when);
}
Status BookWriter::restore(SettingId setting, Instant when) {
    return mark(*this, *m_book, settings, static_cast<std::int64_t>(setting), false, when);
}
Status BookWriter::restore(NoteId note, Instant when) {
    return mark(*this, *m_book, notes, static_cast<std::int64_t>(note), false, when);
}
Status BookWriter::strike(StepCorrectionId correction, Instant when) {
    return mark(*this, *m_book, corrections, static_cast<std::int64_t>(correction), true, when);
}
Status BookWriter::strike(MeterStandId stand, Instant when) {
    return mark(*this, *m_book, stands, static_cast<std::int64_t>(stand), true, when);
}
Status BookWriter::restore(StepCorrectionId correction, Instant when) {
    return mark(*this, *m_book, corrections, static_cast<std::int64_t>(correction), false, when);
}
Status BookWriter::restore(MeterStandId stand, Instant when) {
    return mark(*this, *m_book, stands, static_cast<std::int64_t>(stand), false, when);
}

Result<LookId> BookWriter::correct(const Look& now, Instant when) {
    return replace<LookId>(*this, *m_book, looks, now, when);
}
Result<SettingId> BookWriter::correct(const Setting& now, Instant when) {
    return replace<SettingId>(*this, *m_book, settings, now, when);
}
Result<NoteId> BookWriter::correct(const Note& now, Instant when) {
    return replace<NoteId>(*this, *m_book, notes, now, when);
}
Result<MeterStandId> BookWriter::correct(const MeterStand& now, Instant when) {
    return replace<MeterStandId>(*this, *m_book, stands, now, when);
}

} // namespace ringhold
