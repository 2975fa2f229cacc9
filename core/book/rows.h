// One row of the book as a record, for BookReader alone. All throw: SQLite::Exception, or std::runtime_error
// for a text that stands for nothing.
#pragma once

#include "core/book/log_records.h"
#include "core/book/sql.h"
#include "core/firing/firing_record.h"

#include <vector>

namespace ringhold::rows {

/// A query whose rows make a record: the columns in the order that `make` reads them.
template <class Record>
struct Form {
    const char* select; ///< "SELECT ... FROM ..."
    Record (*make)(SQLite::Statement& row);
};

extern const Form<Kiln> kiln;
extern const Form<Probe> probe;
extern const Form<Firing> firing;
extern const Form<Channel> channel;
extern const Form<Pack> pack; ///< without its cones
extern const Form<Look> look;
extern const Form<Setting> setting;
extern const Form<Note> note;
extern const Form<Piece> piece;
extern const Form<Outcome> outcome; ///< without its known faults
extern const Form<FiledOffset> filedOffset;
extern const Form<AlarmEvent> alarmEvent;
extern const Form<StepCorrection> stepCorrection;
extern const Form<MeterStand> meterStand;
extern const Form<ServiceEntry> service;
extern const Form<ChecklistItem> checklistItem;
extern const Form<GlazeCard> glazeCard; ///< without its habits and recipe
extern const Form<HabitBand> habit;
extern const Form<RecipeLine> recipeLine;
extern const Form<Photo> photo; ///< without its picture
extern const Form<Photo> photoWithPicture;
extern const Form<PhotoMeasure> photoMeasure;
extern const Form<RingRadius> ringRadius;
extern const Form<SagSeen> sagSeen;
extern const Form<LogEvent> event;

/// All rows of that form; `where` goes on from the SELECT and its parameters are bound to the values.
template <class Record, class... Values>
std::vector<Record> all(SQLite::Database& database, const Form<Record>& form, const char* where,
                        const Values&... values) {
    SQLite::Statement statement(database, std::string(form.select) + " " + where);
    sql::bindAll(statement, values...);
    std::vector<Record> records;
    while (statement.executeStep())
        records.push_back(form.make(statement));
    return records;
}

/// The first row, if there is one.
template <class Record, class... Values>
std::optional<Record> first(SQLite::Database& database, const Form<Record>& form, const char* where,
                            const Values&... values) {
    auto records = all(database, form, where, values...);
    return records.empty() ? std::nullopt : std::optional(std::move(records.front()));
}

} // namespace ringhold::rows
